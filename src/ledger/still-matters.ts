/**
 * Which older entries still matter to what stands, runs or is awaited now. The others are of things that are over: they stay
 * in the record, and are not needed to go on with it.
 */
import { isNothing } from './amounts';
import { awaited } from './due';
import type { Body, PlainBody } from './entries/body';
import type { ContainerMarked } from './entries/containers';
import type { Entry } from './entries/entry';
import { brings } from './entries-about';
import { type Flag, flags } from './flags';
import { type Reference, referencesOf } from './references';
import { namedBy } from './standing';
import type { ContainerState, HistoryLine, State } from './state';

type Kind = Reference['to'];
type Live = ReadonlySet<string>;

const nameOf = (to: Kind, id: string): string => `${to} ${id}`;

/** What the workshop is and how it works: few entries, and all of them may be asked for at any time. */
const ofTheWorkshop: ReadonlySet<PlainBody['kind']> = new Set([
  'workshop-described',
  'person-added',
  'person-left',
  'local-rule-stated',
  'base-described',
  'list-changed',
  'station-described',
  'station-given-up',
  'price-stated',
]);

/** A container is over when it is gone and no proof of it is awaited. */
const standsOrIsAwaited = ({ goneSince }: ContainerState, from: string): boolean =>
  goneSince === null || goneSince >= from;

/** What is wrong is not put away before it is put right. */
const flagged = (state: State, about: keyof Flag['about']): readonly string[] =>
  flags(state).flatMap((flag) => flag.about[about] ?? []);

function liveStreams(state: State, containers: Live, from: string): ReadonlySet<string> {
  const live = new Set<string>();
  const take = (streamId: string | null): void => {
    const stream = streamId === null ? undefined : state.streams.get(streamId);
    if (streamId === null || !stream || live.has(streamId)) return;
    live.add(streamId);
    const liquor = stream.body.solid?.holds.liquor;
    if (liquor && liquor !== 'not-determined') take(liquor);
  };
  for (const { streamId } of [...state.containers.values()].flatMap(({ body, contents }) =>
    containers.has(nameOf('container', body.containerId)) ? contents : [],
  ))
    take(streamId);
  for (const id of flagged(state, 'streamId')) take(id);
  for (const { at, body, unplaced } of state.streams.values())
    if (at >= from || !isNothing(unplaced)) take(body.streamId);
  for (const { ended, treated, at } of state.treatments.values())
    if (ended === null || at >= from) for (const { streamId } of treated ?? []) take(streamId);
  return live;
}

/** Everything that stands, runs, is awaited, or is younger than `from`, by kind and id. */
function liveThings(state: State, from: string): Set<string> {
  const live = new Set<string>();
  const containers = new Set<string>();
  for (const handOver of state.handOvers.values()) {
    const waiting = awaited(state, handOver);
    for (const id of waiting) containers.add(nameOf('container', id));
    if (waiting.length > 0 || handOver.at >= from) live.add(nameOf('hand-over', handOver.body.handOverId));
  }
  for (const container of state.containers.values())
    if (standsOrIsAwaited(container, from)) containers.add(nameOf('container', container.body.containerId));
  for (const id of flagged(state, 'containerId')) containers.add(nameOf('container', id));
  for (const name of containers) live.add(name);
  for (const id of flagged(state, 'treatmentId')) live.add(nameOf('treatment', id));
  for (const id of flagged(state, 'handOverId')) live.add(nameOf('hand-over', id));
  for (const id of flagged(state, 'entryId')) live.add(nameOf('entry', id));
  const batches = new Set<string>();
  for (const id of liveStreams(state, containers, from)) {
    live.add(nameOf('stream', id));
    const batchId = state.streams.get(id)?.body.batchId ?? null;
    if (batchId !== null) batches.add(batchId);
  }
  for (const { at, body, endedAt } of state.steps.values())
    if (body.batchId !== null && (at >= from || endedAt === null)) batches.add(body.batchId);
  for (const { at, body } of state.batches.values()) if (at >= from) batches.add(body.batchId);
  for (const id of flagged(state, 'stepId')) {
    const batchId = state.steps.get(id)?.body.batchId;
    if (batchId) batches.add(batchId);
  }
  for (const id of batches) {
    live.add(nameOf('batch', id));
    // Its account asks for all that came of it.
    for (const streamId of state.batches.get(id)?.streamIds ?? []) live.add(nameOf('stream', streamId));
    for (const stepId of state.batches.get(id)?.steps ?? []) live.add(nameOf('step', stepId));
  }
  for (const [id, { contents, treatmentIds }] of state.containers)
    if (containers.has(nameOf('container', id)))
      for (const treatmentId of [
        ...contents.flatMap(({ treatedBy }) => treatedBy),
        ...treatmentIds.slice(-1),
      ])
        live.add(nameOf('treatment', treatmentId));
  for (const { at, body, ended } of state.treatments.values())
    if (ended === null || at >= from) live.add(nameOf('treatment', body.treatmentId));
  for (const { body, stopped } of state.clocks.values())
    if (stopped === null) live.add(nameOf('clock', body.clockId));
  for (const { entryId, found, closed } of state.findings.values())
    if (closed === null) live.add(nameOf('finding', found.findingId)).add(nameOf('entry', entryId));
  for (const entryId of lastOfEach(state)) live.add(nameOf('entry', entryId));
  return live;
}

/** The last list of each kind that each person went through, the last walk, look at a hood and paper. */
function lastOfEach(state: State): readonly string[] {
  const lists = [...state.checklists.values()].map(({ entryId, who, body }) => ({
    key: `${body.checklist.id} ${who}`,
    entryId,
  }));
  const hoods = [...state.ventilationChecks.values()].map(({ entryId, body }) => ({
    key: `hood ${body.stationId}`,
    entryId,
  }));
  const walks = [...state.walks.values()].flatMap(({ finished }) =>
    finished ? [{ key: `walk ${finished.who}`, entryId: finished.entryId }] : [],
  );
  const papers = [...state.papers.values()].map(({ entryId }) => ({ key: 'paper', entryId }));
  return [
    ...new Map([...lists, ...hoods, ...walks, ...papers].map(({ key, entryId }) => [key, entryId])).values(),
  ];
}

/** Things of which nothing may be missing once anything of them is at hand. */
const toldOfLater: ReadonlySet<Kind> = new Set([
  'step',
  'checklist',
  'clock',
  'finding',
  'treatment',
  'hand-over',
]);

/** Pairs of marks of which the second undoes the first. */
const undone: readonly (readonly [ContainerMarked['mark'], ContainerMarked['mark']])[] = [
  ['closed', 'reopened'],
  ['held', 'let-go'],
  ['leaving', 'staying'],
  ['gone', 'came-back'],
  ['damaged', 'mended'],
  ['contents-doubtful', 'contents-known'],
];

/** Marks that still hold, and the last emptying, which may have ended a doubt. */
function marksThatHold(marks: ContainerState['marks']): readonly string[] {
  const holding = undone.flatMap(([as, undo]) => {
    const ended = marks.findLastIndex(({ body }) => body.mark === undo);
    return marks.slice(ended + 1).find(({ body }) => body.mark === as)?.entryId ?? [];
  });
  return [
    ...holding,
    ...marks
      .filter(({ body }) => body.mark === 'emptied')
      .slice(-1)
      .map(({ entryId }) => entryId),
  ];
}

/**
 * When a container was last empty before `from`: what was in it until then is in no container now, so that what befell it
 * until then is over. Null where it was not.
 */
export const lastEmpty = ({ movements }: Pick<ContainerState, 'movements'>, from: string): string | null =>
  movements.findLast(({ at, after }) => at < from && isNothing(after))?.at ?? null;

/** Things that an entry speaks of, but for those that are always known. */
const thingsIn = (id: string, body: Body): readonly Reference[] => [
  ...brings(id, body).map((named) => ({ ...named, field: '' })),
  ...referencesOf(body).filter(({ to }) => to !== 'person' && to !== 'station' && to !== 'list'),
];

const alwaysOfContainer: ReadonlySet<PlainBody['kind']> = new Set(['container-opened', 'container-changed']);

/**
 * Entries of the log, in order, that are younger than `from` or matter to what stands, runs or is awaited, with all that
 * corrects or withdraws them.
 */
export function stillMatter(state: State, from: string): readonly Entry[] {
  const live = liveThings(state, from);
  const empty = new Map(
    [...state.containers].flatMap(([id, container]) => {
      const at = lastEmpty(container, from);
      return at === null ? [] : [[id, at]];
    }),
  );
  const kept = new Set(
    [...state.containers.values()].flatMap(({ body, marks, inspections }) =>
      live.has(nameOf('container', body.containerId))
        ? [...marksThatHold(marks), ...inspections.slice(-1).map(({ entryId }) => entryId)]
        : [],
    ),
  );
  const isOfLive = (body: PlainBody, at: string, { to, id }: Reference): boolean =>
    live.has(nameOf(to, id)) &&
    (to !== 'container' || alwaysOfContainer.has(body.kind) || at >= (empty.get(id) ?? ''));
  const matters = ({ entry, body, at }: HistoryLine): boolean => {
    if (entry.writtenAt >= from || at >= from || kept.has(entry.id) || live.has(nameOf('entry', entry.id)))
      return true;
    const plain = body ?? entry.body;
    if (plain.kind === 'entry-corrected' || plain.kind === 'entry-withdrawn') return false;
    return (
      ofTheWorkshop.has(plain.kind) || thingsIn(entry.id, plain).some((thing) => isOfLive(plain, at, thing))
    );
  };
  const ids = new Set<string>();
  // What is kept keeps what it was begun on and what was told of it later: its list, how a step ended, what came of a finding.
  for (let before = -1; before < ids.size; ) {
    before = ids.size;
    for (const line of state.history) {
      const { id, body } = line.entry;
      if (ids.has(id) || !matters(line)) continue;
      ids.add(id);
      for (const thing of thingsIn(id, line.body ?? body))
        if (toldOfLater.has(thing.to)) live.add(nameOf(thing.to, thing.id));
    }
  }
  const named = new Map(state.log.map((entry) => [entry.id, namedBy(entry)]));
  // What changes an entry goes with it, and the other way round.
  for (const { entry, changedBy } of state.history)
    if (ids.has(entry.id)) for (const id of changedBy) ids.add(id);
  for (const { id } of state.log.toReversed()) {
    const target = named.get(id) ?? null;
    if (ids.has(id) && target !== null) ids.add(target);
  }
  for (const { entry, changedBy } of state.history)
    if (ids.has(entry.id)) for (const id of changedBy) ids.add(id);
  return state.log.filter(({ id }) => ids.has(id));
}
