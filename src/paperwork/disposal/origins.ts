/** What a container holds and how that arose: its wastes, their batches, steps and movements, in sentences. */

import { sinceLastEmpty } from '../../ledger/container-life';
import { codeOfBatch, codeOfContainer } from '../../ledger/put-away';
import type { BatchState, ContainerState, State, StreamState } from '../../ledger/state';
import { namedKind } from '../../ledger/waste-kinds';
import { formatWritten } from '../../quantities/format';
import type { StreamKind } from '../../safety/stream-kind';
import { dayOf, dayText, spanText } from '../dates';
import { capital, notDetermined, streamMeaning, streamWords, unbroken } from '../words';
import { type Asked, amountText, heldText, massText } from './asked';
import { capacitorWords, eraWords, instrumentWords, dataWords as w } from './data-words';
import { treatedColour, treatedPh } from './treatments';

/** "barren liquor, B-17" */
export function streamText(state: State, streamId: string): string {
  const stream = state.streams.get(streamId)?.body;
  if (!stream) return state.treatments.has(streamId) ? streamWords['treated-slurry'] : notDetermined;
  const batch = codeOfBatch(state, stream.batchId);
  return batch === undefined
    ? streamWords[stream.stream]
    : `${streamWords[stream.stream]}, ${unbroken(batch)}`;
}

/** The wastes in it that a log accounts for, each once, treated or not. */
export const streamsIn = (state: State, container: ContainerState): readonly StreamState[] =>
  [...new Set(container.contents.map(({ streamId }) => streamId))].flatMap((streamId) => {
    const stream = streamId === null ? undefined : state.streams.get(streamId);
    return stream ? [stream] : [];
  });

const hasTreated = ({ contents }: ContainerState): boolean =>
  contents.some(({ treatedBy }) => treatedBy.length > 0);

const hasUnaccounted = ({ contents }: ContainerState): boolean =>
  contents.some(({ streamId }) => streamId === null);

type Named = { readonly kind: StreamKind; readonly name: string };

/** Each kind of what is in it with its batches: "Barren liquor of batches B-16 and B-17". */
function namedKinds(state: State, container: ContainerState): readonly Named[] {
  const byKind = new Map<StreamKind, string[]>();
  for (const part of container.contents) {
    const body = part.streamId === null ? undefined : state.streams.get(part.streamId)?.body;
    if (!body) continue;
    const kind = namedKind(body.stream, part);
    const codes = byKind.get(kind) ?? [];
    const batch = codeOfBatch(state, body.batchId);
    if (batch !== undefined && !codes.includes(unbroken(batch))) codes.push(unbroken(batch));
    byKind.set(kind, codes);
  }
  return [...byKind].map(([kind, codes]) => {
    const name = codes.length > 0 ? `${streamWords[kind]} of ${w.ofBatches(codes)}` : streamWords[kind];
    return { kind, name: capital(name) };
  });
}

/** In a few words. */
export function shortName(state: State, container: ContainerState): string {
  if (container.doubtfulSince !== null) return w.doubtedShort;
  const names = namedKinds(state, container).map(({ name }) => name);
  if (hasUnaccounted(container)) names.push(capital(w.notAccounted));
  return names.length === 0 ? w.empty : names.join('; ');
}

/** "Barren liquor of batches B-16 and B-17: nitrate liquor left after …". */
export function whatItIs(state: State, container: ContainerState): string {
  const kinds = namedKinds(state, container).map(({ kind, name }) => w.whatItIs(name, streamMeaning[kind]));
  if (hasUnaccounted(container)) kinds.push(capital(w.notAccounted));
  const told = kinds.length === 0 ? capital(w.holdsNothing) : `${kinds.join('. ')}.`;
  if (container.doubtfulSince === null) return told;
  return kinds.length === 0 ? w.doubtedUntold : w.doubted(told);
}

function stepsBefore({ state, zone }: Asked, batch: BatchState, until: string): string {
  const steps = batch.steps.flatMap((id) => {
    const step = state.steps.get(id);
    if (!step || step.at > until) return [];
    const from = dayOf(step.at, zone);
    const to = step.endedAt === null ? from : dayOf(step.endedAt, zone);
    return [w.step(step.body.step.replaceAll('-', ' '), spanText(from, to))];
  });
  return steps.length === 0 ? w.noSteps : steps.join(', ');
}

function ofBatch(asked: Asked, batch: BatchState, streams: readonly StreamState[]): string {
  const { zone, sign } = asked;
  const { code, feed } = batch.body;
  const last =
    streams
      .map(({ at }) => at)
      .sort()
      .at(-1) ?? asked.now;
  const feedText = w.batch(
    unbroken(code),
    amountText(feed.mass, sign),
    capacitorWords[feed.capacitors],
    eraWords[feed.era],
  );
  const logs = streams.map(({ body, amount, at }) =>
    w.logged(streamWords[body.stream], heldText(amount, sign), dayText(at, zone)),
  );
  return `${feedText}. ${capital(stepsBefore(asked, batch, last))}. ${capital(logs.join('; '))}.`;
}

/** One sentence a batch, then the movements since it was last empty. */
export function howItArose(asked: Asked, container: ContainerState): string[] {
  const { state, zone } = asked;
  const streams = streamsIn(state, container);
  const batchIds = [...new Set(streams.map(({ body }) => body.batchId))];
  const said = batchIds.flatMap((id) => {
    const own = streams.filter(({ body }) => body.batchId === id);
    const batch = id === null ? undefined : state.batches.get(id);
    return batch
      ? [ofBatch(asked, batch, own)]
      : own.map(({ body, at }) => {
          const code = codeOfBatch(state, id);
          const [what, day] = [streamWords[body.stream], dayText(at, zone)];
          return `${capital(code === undefined ? w.noBatch(what, day) : w.batchAway(what, unbroken(code), day))}.`;
        });
  });
  const movements = sinceLastEmpty(container);
  const sources = movements.flatMap(({ way, otherId }) => {
    const other = way === 'in' && otherId !== null ? codeOfContainer(state, otherId) : undefined;
    return other === undefined ? [] : [unbroken(other)];
  });
  const [first, last] = [movements[0], movements.at(-1)];
  if (first && last) {
    const ins = movements.filter(({ way }) => way === 'in').length;
    const when = spanText(dayOf(first.at, zone), dayOf(last.at, zone));
    const emptied = movements.length < container.movements.length;
    said.push(`${w.movements(ins, movements.length - ins, when, emptied)}.`);
  }
  const all = movements.every(({ way, otherId }) => way === 'out' || otherId !== null);
  if (sources.length > 0) said.push(`${w.over([...new Set(sources)], all)}.`);
  return said;
}

/** What was seen of it then is not what it is now. */
const lostWater = ({ contents }: ContainerState, { body }: StreamState): boolean =>
  contents.some(({ streamId, lessWater }) => streamId === body.streamId && lessWater === true);

/** What was logged of each waste in it; with its name where there are several. */
function perStream(
  asked: Asked,
  container: ContainerState,
  of: (stream: StreamState) => string | undefined,
): string {
  const streams = streamsIn(asked.state, container);
  if (streams.length === 0 || hasUnaccounted(container) || hasTreated(container)) return notDetermined;
  const said = streams.map((stream) => {
    const found = of(stream);
    const day = dayText(stream.at, asked.zone);
    const text = found === undefined ? notDetermined : w.asLogged(found, day);
    return {
      stream,
      text: found !== undefined && lostWater(container, stream) ? w.sinceWaterWentOff(text) : text,
    };
  });
  if (said.every(({ text }) => text === notDetermined)) return notDetermined;
  if (said.length === 1) return said[0]?.text ?? notDetermined;
  return said
    .map(({ stream, text }) => w.ofStream(text, streamText(asked.state, stream.body.streamId)))
    .join('; ');
}

export const colourOf = (asked: Asked, container: ContainerState): string =>
  hasTreated(container)
    ? treatedColour(asked, container.body.containerId)
    : perStream(asked, container, ({ body }) => body.colour);

export const layersOf = (asked: Asked, container: ContainerState): string =>
  perStream(asked, container, ({ body }) => body.layers);

/** Liquid, wet solid or both, as held by the record. */
export function stateOf({ sign }: Asked, container: ContainerState): string {
  const { holds, contents } = container;
  if (contents.length === 0) return notDetermined;
  if (hasTreated(container) && holds.mass.isZero()) return capital(w.slurry);
  const liquid = holds.volume.isZero() ? w.liquidNone : hasTreated(container) ? w.slurry : w.liquid;
  const solid = holds.mass.isZero() ? w.solidsNone : w.wetSolid(massText(holds.mass, sign));
  return capital(holds.volume.isZero() ? `${solid}, ${liquid}` : `${liquid}, ${solid}`);
}

type Ph = { readonly value: string; readonly instrument: 'paper' | 'meter' };

function phOfStream({ body }: StreamState): Ph | undefined {
  const logged = body.liquid?.ph;
  if (logged) return { value: logged.value.value, instrument: logged.instrument };
  const acid = body.liquid?.freeAcid.find((found) => found.by === 'ph');
  return acid?.by === 'ph' ? { value: acid.ph.value, instrument: acid.instrument } : undefined;
}

/** The pH logged; of a mixture only the parts have one. */
export function phOf(asked: Asked, container: ContainerState): string {
  if (hasTreated(container)) return treatedPh(asked, container.body.containerId);
  const streams = streamsIn(asked.state, container);
  const said = streams.flatMap((stream) => {
    const ph = phOfStream(stream);
    if (!ph) return [];
    const value = formatWritten({ value: ph.value, unit: '1' }, asked.sign);
    const read = w.phOf(value, instrumentWords[ph.instrument], dayText(stream.at, asked.zone));
    return [{ stream, text: lostWater(container, stream) ? w.sinceWaterWentOff(read) : read }];
  });
  if (said.length === 0) return notDetermined;
  if (streams.length === 1 && !hasUnaccounted(container)) return said[0]?.text ?? notDetermined;
  return w.phMixed(
    said
      .map(({ stream, text }) => w.ofStream(text, streamText(asked.state, stream.body.streamId)))
      .join('; '),
  );
}

/** Whether a kind of test waste is among what is known to be in it. */
export function testWasteOf(state: State, container: ContainerState, kind: StreamKind): string {
  const streams = streamsIn(state, container);
  if (streams.some(({ body }) => body.stream === kind)) return w.loggedUndetermined;
  const doubtful = hasUnaccounted(container) || container.doubtfulSince !== null || streams.length === 0;
  return doubtful ? notDetermined : w.noneLogged;
}
