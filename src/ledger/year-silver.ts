/**
 * What silver cost in waste: copper, nickel and mass that the batches of a time left, against the silver that was weighed. A
 * batch belongs to the time in which its silver was first weighed, with all of its wastes, whenever they were logged.
 */
import { over, plus } from '../quantities/expression';
import { type Figure, workedOut } from '../quantities/figure';
import { type Metal, metals } from '../reference/tables';
import { recovered } from './batch-charges';
import { lastLiquors, liquorsOf, metalIn, silentSolids } from './batch-streams';
import { massOfStream } from './generation';
import type { BatchState, State } from './state';
import { cameAs } from './year-arising';
import { type Days, whenIn } from './year-days';

export type ToWaste = 'Cu' | 'Ni' | 'waste';

/** Copper and nickel in g, waste in kg. */
export type PerSilver = {
  readonly what: ToWaste;
  readonly all?: Figure<'g'> | Figure<'kg'>;
  /** A gram for a gram; absent where nothing is known. */
  readonly ratio?: Figure<'1'>;
  /** Wastes that do not tell: what is given is at least. */
  readonly openIn: readonly string[];
};

export type BatchYield = {
  readonly batchId: string;
  readonly silver: Figure<'g'>;
  readonly each: readonly PerSilver[];
};

export type SilverYield = {
  readonly batches: readonly BatchYield[];
  readonly silver?: Figure<'g'>;
  readonly each: readonly PerSilver[];
  /** Batches that left barren liquor in the time and whose silver nobody weighed: nothing of them is in it. */
  readonly notWeighed: readonly string[];
};

export const toWaste: readonly ToWaste[] = ['Cu', 'Ni', 'waste'];

type Told = { readonly parts: readonly (Figure<'g'> | Figure<'kg'>)[]; readonly openIn: readonly string[] };

/** In what the batch ended in, as somebody measured it. */
function metalToWaste(state: State, batch: BatchState, metal: Metal): Told {
  const all = liquorsOf(state, batch);
  const found = lastLiquors(state, batch).map((one) => ({ one, figure: metalIn(all, one, metal) }));
  return {
    parts: found.flatMap(({ figure }) => figure ?? []),
    openIn: [
      ...found.flatMap(({ one, figure }) => (figure ? [] : [one.streamId])),
      ...silentSolids(state, batch),
    ],
  };
}

function massToWaste(state: State, batch: BatchState): Told {
  const streams = batch.streamIds.flatMap((id) => state.streams.get(id) ?? []);
  const wastes = streams.filter((stream) => cameAs(state, stream) === 'arose');
  const found = wastes.map((stream) => ({ id: stream.body.streamId, kg: massOfStream(state, stream) }));
  return {
    parts: found.flatMap(({ kg }) => kg ?? []),
    openIn: found.flatMap(({ id, kg }) => (kg ? [] : [id])),
  };
}

const toldOf = (state: State, batch: BatchState, what: ToWaste): Told =>
  what === 'waste' ? massToWaste(state, batch) : metalToWaste(state, batch, what);

const nameOf = (what: ToWaste): string => (what === 'waste' ? 'Waste' : metals[what].name);

function perSilver(what: ToWaste, told: readonly Told[], silver: Figure<'g'> | undefined): PerSilver {
  const parts = told.flatMap((one) => one.parts);
  const openIn = [...new Set(told.flatMap((one) => one.openIn))];
  if (parts.length === 0 || !silver) return { what, openIn };
  const name = nameOf(what);
  const formula = plus(...parts);
  const all =
    what === 'waste'
      ? workedOut({ sentence: 'Waste of the batches', unit: 'kg', formula })
      : workedOut({ sentence: `In waste of the batches: ${name}`, unit: 'g', formula });
  if (!silver.value.gt(0)) return { what, all, openIn };
  const sentence = `${what === 'waste' ? 'Waste' : `In waste: ${name}`}, grams for a gram of silver`;
  return { what, all, openIn, ratio: workedOut({ sentence, unit: '1', formula: over(all, silver) }) };
}

const silverOf = (all: readonly Figure<'g'>[]): Figure<'g'> | undefined =>
  all.length === 0
    ? undefined
    : workedOut({ sentence: 'Silver got back, weighed dry', unit: 'g', formula: plus(...all) });

export function silverYield(state: State, days: Days, zone: string): SilverYield {
  const when = whenIn(days, zone);
  const firstWeighed = ({ recovered: all }: BatchState): string | undefined =>
    all.find(({ body }) => body.recovery.what === 'silver')?.at;
  const own: { readonly batch: BatchState; readonly silver: Figure<'g'> }[] = [];
  const notWeighed: string[] = [];
  for (const batch of state.batches.values()) {
    const at = firstWeighed(batch);
    const silver = silverOf(recovered(batch, 'silver'));
    if (at !== undefined && silver) {
      if (when(at) === 'in') own.push({ batch, silver });
      continue;
    }
    const barren = batch.streamIds
      .flatMap((id) => state.streams.get(id) ?? [])
      .some((stream) => stream.body.stream === 'barren-liquor' && when(stream.at) === 'in');
    if (barren) notWeighed.push(batch.body.batchId);
  }
  const silver = silverOf(own.map((one) => one.silver));
  return {
    batches: own.map(
      ({ batch, silver: got }): BatchYield => ({
        batchId: batch.body.batchId,
        silver: got,
        each: toWaste.map((what) => perSilver(what, [toldOf(state, batch, what)], got)),
      }),
    ),
    ...(silver ? { silver } : {}),
    each: toWaste.map((what) =>
      perSilver(
        what,
        own.map(({ batch }) => toldOf(state, batch, what)),
        silver,
      ),
    ),
    notWeighed,
  };
}
