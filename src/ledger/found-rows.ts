/**
 * What can be found, each thing as one plain row. Rows of things that the state does not hold any more can be kept and
 * found beside the others.
 */

import * as z from 'zod/mini';
import { Metal } from './entries/findings';
import { Id } from './entries/identity';
import { Instant } from './entries/moments';
import type { PaperMade } from './entries/papers';
import { codeOfBatch, codeOfContainer } from './put-away';
import type { BatchState, ContainerState, HandOverState, State, StreamState, Told } from './state';

export const FoundRow = z.strictObject({
  is: z.enum(['container', 'batch', 'waste', 'hand-over', 'paper']),
  /** As its page is named; of a paper its entry. */
  id: Id,
  /** What stands on it: a code, the number of a collector's paper, the name of a file; '' where nothing does. */
  code: z.string(),
  /** From when to when it lasted, or was told of last; null while it lasts. */
  from: Instant,
  to: z.nullable(Instant),
  metals: z.array(Metal),
  /** Kinds by their names in the record ("barren-liquor"), and what people wrote: places, names, numbers of papers. */
  words: z.array(z.string()),
});

export type FoundRow = Readonly<z.infer<typeof FoundRow>>;

const said = (...words: readonly (string | null | undefined | false)[]): string[] => [
  ...new Set(words.filter((word): word is string => typeof word === 'string' && word !== '')),
];

const nameOf = (state: State, who: string | null): string | undefined =>
  who === null ? undefined : state.people.get(who)?.body.name;

/** Metals that were looked for in a waste, or stand in its liquor; not how much of them there is. */
function metalsOf(state: State, { body }: StreamState, inLiquor = false): readonly Metal[] {
  const own = (body.liquid?.findings ?? []).map(({ metal }) => metal);
  const liquorId = body.solid?.holds.liquor;
  const liquor = liquorId === undefined || inLiquor ? undefined : state.streams.get(liquorId);
  return liquor ? [...own, ...metalsOf(state, liquor, true)] : own;
}

const metalsIn = (state: State, streamIds: Iterable<string>): Metal[] => [
  ...new Set(
    [...streamIds].flatMap((id) => {
      const stream = state.streams.get(id);
      return stream ? metalsOf(state, stream) : [];
    }),
  ),
];

function containerRow(state: State, container: ContainerState): FoundRow {
  const { body, at, goneSince, who, movements, contents, handOverId, marks, reports } = container;
  // What went in counts after it has left, too.
  const streamIds = new Set([...movements, ...contents].flatMap(({ streamId }) => streamId ?? []));
  const streams = [...streamIds].flatMap((id) => state.streams.get(id) ?? []);
  const load = handOverId === null ? undefined : state.handOvers.get(handOverId)?.body;
  return {
    is: 'container',
    id: body.containerId,
    code: body.code,
    from: at,
    to: goneSince,
    metals: metalsIn(state, streamIds),
    words: said(
      ...streams.map((stream) => stream.body.stream),
      body.vessel,
      body.material,
      body.otherMaterial,
      body.place,
      body.tray,
      ...streams.map((stream) => codeOfBatch(state, stream.body.batchId)),
      load?.collector.name,
      load?.document,
      ...marks.flatMap((mark) => [mark.body.to, mark.body.document]),
      ...reports.flatMap((report) => [report.body.laboratory, report.body.document]),
      nameOf(state, who),
    ),
  };
}

function batchRow(state: State, batch: BatchState): FoundRow {
  const { body, at, who, steps, streamIds, charged, recovered } = batch;
  const stepStates = steps.flatMap((id) => state.steps.get(id) ?? []);
  const running = stepStates.some(({ endedAt }) => endedAt === null);
  const moments = [
    at,
    ...stepStates.flatMap((step) => [step.at, step.endedAt ?? step.at]),
    ...[...charged, ...recovered].map((told) => told.at),
    ...streamIds.map((id) => state.streams.get(id)?.at ?? at),
  ].sort();
  const got: readonly Metal[] = recovered.flatMap(({ body: { recovery } }) =>
    recovery.what === 'silver' ? ['Ag' as const] : recovery.what === 'palladium' ? ['Pd' as const] : [],
  );
  return {
    is: 'batch',
    id: body.batchId,
    code: body.code,
    from: at,
    to: running ? null : (moments.at(-1) ?? at),
    metals: [...new Set([...metalsIn(state, streamIds), ...got])],
    words: said(
      body.feed.capacitors,
      ...stepStates.map((step) => step.body.step),
      ...streamIds.map((id) => state.streams.get(id)?.body.stream),
      nameOf(state, who),
      ...stepStates.map((step) => nameOf(state, step.who)),
    ),
  };
}

function wasteRow(state: State, stream: StreamState): FoundRow {
  const { body, at, who, placements } = stream;
  return {
    is: 'waste',
    id: body.streamId,
    code: '',
    from: at,
    to: at,
    metals: [...new Set(metalsOf(state, stream))],
    words: said(
      body.stream,
      codeOfBatch(state, body.batchId),
      ...placements.map(({ containerId }) => codeOfContainer(state, containerId)),
      body.colour,
      nameOf(state, who),
    ),
  };
}

function handOverRow(state: State, handOver: HandOverState): FoundRow {
  const { body, at, who, proofs, rejected, parts } = handOver;
  const codes = parts.map(({ containerId }) => codeOfContainer(state, containerId));
  const told = [...proofs, ...rejected];
  const moments = [at, ...told.map((one) => one.at)].sort();
  return {
    is: 'hand-over',
    id: body.handOverId,
    code: body.document ?? '',
    from: at,
    to: moments.at(-1) ?? at,
    metals: [],
    words: said(
      body.collector.name,
      ...codes,
      body.destination,
      body.driver,
      body.vehicle,
      body.collector.licence,
      ...told.flatMap((one) => [one.body.document, one.body.saidBy]),
      nameOf(state, who),
    ),
  };
}

const paperRow = (state: State, { entryId, body, at, who }: Told<PaperMade>): FoundRow => ({
  is: 'paper',
  id: entryId,
  code: body.fileName,
  from: at,
  to: at,
  metals: [],
  words: said(body.paper, ...body.containerIds.map((id) => codeOfContainer(state, id)), nameOf(state, who)),
});

/** Everything that the state holds and that has a page to be found at, one by one, with how many there are in all. */
export function* foundRows(state: State): Generator<{ readonly row: FoundRow; readonly of: number }> {
  const { containers, batches, streams, handOvers, papers } = state;
  const of = containers.size + batches.size + streams.size + handOvers.size + papers.size;
  for (const container of containers.values()) yield { row: containerRow(state, container), of };
  for (const batch of batches.values()) yield { row: batchRow(state, batch), of };
  for (const stream of streams.values()) yield { row: wasteRow(state, stream), of };
  for (const handOver of handOvers.values()) yield { row: handOverRow(state, handOver), of };
  for (const paper of papers.values()) yield { row: paperRow(state, paper), of };
}
