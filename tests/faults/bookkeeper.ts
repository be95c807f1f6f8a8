/**
 * A second set of books over the same entries, kept by whoever knows nothing of chemistry, treatments or marks: totals in
 * litres and grams, one sum after the other. It shares nothing with `src/ledger` but the shape of an entry.
 */
import Decimal from 'decimal.js';
import type { PlainBody } from '../../src/ledger/entries/body';
import type { Amount } from '../../src/ledger/entries/containers';
import type { Entry } from '../../src/ledger/entries/entry';
import type { StreamLogged } from '../../src/ledger/entries/streams';

export type Sum = { readonly L: Decimal; readonly g: Decimal };

/**
 * Litres and grams of a unit. Exact by definition: NIST Handbook 44, appendix C (a US gallon is 231 cubic inches, an inch
 * 2.54 cm, a pound 453.59237 g). Status: memory.
 */
const factors = {
  L: ['L', '1'],
  mL: ['L', '0.001'],
  'US gal': ['L', '3.785411784'],
  g: ['g', '1'],
  kg: ['g', '1000'],
  mg: ['g', '0.001'],
  lb: ['g', '453.59237'],
} as const;

const zero: Sum = { L: new Decimal(0), g: new Decimal(0) };

export const add = (a: Sum, b: Sum): Sum => ({ L: a.L.plus(b.L), g: a.g.plus(b.g) });
const minus = (a: Sum, b: Sum): Sum => ({ L: a.L.minus(b.L), g: a.g.minus(b.g) });
const lesser = (a: Sum, b: Sum): Sum => ({ L: Decimal.min(a.L, b.L), g: Decimal.min(a.g, b.g) });

function sumOf({ value, unit }: Amount): Sum {
  const [dimension, factor] = factors[unit];
  return { ...zero, [dimension]: new Decimal(value).times(factor) };
}

const logged = ({ liquid, solid }: StreamLogged): Sum =>
  add(liquid ? sumOf(liquid.volume) : zero, solid ? sumOf(solid.wetMass) : zero);

/** What went in, in litres where a liquid was weighed and its density is known: V = m/ρ; kg/L and g/mL are the same number. */
function placed(amount: Amount, stream: StreamLogged | undefined, density: string | undefined): Sum {
  const sum = sumOf(amount);
  if (!stream?.liquid || stream.solid || sum.g.isZero() || density === undefined) return sum;
  const gramsPerLitre = new Decimal(density).times(1000);
  return gramsPerLitre.isZero() ? sum : { ...zero, L: sum.g.div(gramsPerLitre) };
}

type Fact = { readonly entryId: string; readonly at: string; readonly body: PlainBody };

const inLog = (a: Entry, b: Entry): number =>
  a.writtenAt.localeCompare(b.writtenAt, 'en') ||
  (a.device < b.device ? -1 : a.device > b.device ? 1 : 0) ||
  a.counter - b.counter;

/**
 * What counts in the end, in the order in which it happened. By the clocks of two phones a withdrawal or a correction may
 * stand before what it is about. The last correction counts; of the time, the last one that told it.
 */
export function facts(entries: readonly Entry[]): readonly Fact[] {
  const log = [...entries].sort(inLog);
  const isWithdrawn = ({ id }: Entry): boolean =>
    log.some((by) => by.body.kind === 'entry-withdrawn' && by.body.withdraws === id && !isWithdrawn(by));
  const counting = log.filter(
    ({ body }) => body.kind === 'entry-withdrawn' || body.kind === 'entry-corrected',
  );
  const withdrawn = new Set(
    counting.flatMap((by) =>
      by.body.kind === 'entry-withdrawn' && !isWithdrawn(by) ? [by.body.withdraws] : [],
    ),
  );
  const told = new Map<string, Fact>();
  for (const { id, body, happenedAt } of log)
    if (body.kind !== 'entry-withdrawn' && body.kind !== 'entry-corrected' && !withdrawn.has(id))
      told.set(id, { entryId: id, at: happenedAt, body });
  for (const { id, body } of counting) {
    if (body.kind !== 'entry-corrected' || withdrawn.has(id)) continue;
    const was = told.get(body.corrects);
    if (was) told.set(body.corrects, { ...was, at: body.happenedAt ?? was.at, body: body.body });
  }
  return [...told.values()].sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
}

export type Books = {
  readonly containers: ReadonlyMap<string, Sum>;
  /** Of each stream what was logged, and what of it was put somewhere. */
  readonly streams: ReadonlyMap<string, { readonly logged: Sum; readonly placed: Sum }>;
  /** Came into a container though no logged waste and no other container had it. */
  readonly fromNowhere: Sum;
  /** Left the shelf, dried up, or was said to be something else. */
  readonly left: Sum;
};

export function keepBooks(entries: readonly Entry[]): Books {
  const told = facts(entries);
  const streams = new Map<string, StreamLogged>();
  const density = new Map<string, string>();
  const holds = new Map<string, Sum>();
  for (const { body } of told) {
    if (body.kind === 'container-opened') holds.set(body.containerId, zero);
    else if (body.kind === 'stream-logged' && !streams.has(body.streamId)) streams.set(body.streamId, body);
  }
  for (const [streamId, { liquid }] of streams)
    if (liquid?.density) density.set(streamId, liquid.density.value);
  for (const { body } of told)
    if (body.kind === 'stream-tested' && body.density) density.set(body.streamId, body.density.value);

  const placedOf = new Map<string, Sum>();
  let [fromNowhere, left] = [zero, zero];
  const change = (containerId: string, sum: Sum): void => {
    holds.set(containerId, add(holds.get(containerId) ?? zero, sum));
  };
  const take = (containerId: string, wanted: Sum): void => {
    const taken = lesser(holds.get(containerId) ?? zero, wanted);
    holds.set(containerId, minus(holds.get(containerId) ?? zero, taken));
    fromNowhere = add(fromNowhere, minus(wanted, taken));
  };
  const notePlaced = (streamId: string, sum: Sum): void => {
    if (streams.has(streamId)) placedOf.set(streamId, add(placedOf.get(streamId) ?? zero, sum));
    else fromNowhere = add(fromNowhere, sum);
  };
  for (const { body } of told) {
    if (body.kind === 'stream-placed' && holds.has(body.containerId)) {
      const sum = placed(body.amount, streams.get(body.streamId), density.get(body.streamId));
      change(body.containerId, sum);
      notePlaced(body.streamId, sum);
    } else if (body.kind === 'contents-moved') {
      const sum = sumOf(body.amount);
      if (holds.has(body.fromContainerId)) take(body.fromContainerId, sum);
      else fromNowhere = add(fromNowhere, sum);
      if (body.toContainerId !== null && holds.has(body.toContainerId)) change(body.toContainerId, sum);
      else left = add(left, sum);
    } else if (body.kind === 'water-lost' && holds.has(body.containerId)) {
      const gone = lesser(holds.get(body.containerId) ?? zero, sumOf(body.amount));
      holds.set(body.containerId, minus(holds.get(body.containerId) ?? zero, gone));
      left = add(left, gone);
    } else if (body.kind === 'contents-determined' && holds.has(body.containerId)) {
      const stream = streams.get(body.streamId);
      if (!stream) continue;
      left = add(left, holds.get(body.containerId) ?? zero);
      holds.set(body.containerId, logged(stream));
      notePlaced(body.streamId, logged(stream));
    }
  }
  return {
    containers: holds,
    streams: new Map(
      [...streams].map(([id, body]) => [id, { logged: logged(body), placed: placedOf.get(id) ?? zero }]),
    ),
    fromNowhere,
    left,
  };
}
