/** Where the evidence of a waste contradicts itself: two pieces too far apart, or more acid taken than was charged. */
import { type Disagreement, disagreements } from '../chemistry/disagreement';
import type { Liquor } from '../chemistry/liquor';
import type { Figure } from '../quantities/figure';
import type { Metal } from '../reference/tables';
import { liquorOf } from './container-load';
import type { State } from './state';

export type Contradictions = {
  readonly metals: ReadonlyMap<Metal, readonly Disagreement<'g'>[]>;
  readonly acid: readonly Disagreement<'mol'>[];
  /** By how much the metals took more acid than was charged, where that is beyond its uncertainty. */
  readonly short?: Figure<'mol'>;
};

const nothing: Contradictions = { metals: new Map(), acid: [] };

/** By how much the likely value has the metals take more acid than was charged, contradicted by its range or not. */
export const shortIn = ({ freeAcid }: Liquor): Figure<'mol'> | undefined =>
  freeAcid && [freeAcid.best, ...freeAcid.others].find((one) => one.short)?.short;

export function contradictionsIn(liquor: Liquor): Contradictions {
  const { metals, freeAcid } = liquor;
  const taken = shortIn(liquor);
  const short = taken?.low.gt(0) ? taken : undefined;
  return {
    metals: new Map(
      [...metals].flatMap(([metal, known]) => {
        const found = disagreements<'g'>(known);
        return found.length > 0 ? [[metal, found] as const] : [];
      }),
    ),
    acid: freeAcid ? disagreements<'mol'>(freeAcid) : [],
    ...(short ? { short } : {}),
  };
}

/** One piece of each thing cannot contradict another; most wastes are known in one way. */
function mayContradict(state: State, streamId: string): boolean {
  const { findings = [], freeAcid = [] } = state.streams.get(streamId)?.body.liquid ?? {};
  const told = findings.filter(({ by }) => by !== 'not-determined');
  const twice = new Set(told.map(({ metal }) => metal)).size < told.length;
  return twice || freeAcid.length > 1 || freeAcid.some(({ by }) => by === 'charged-minus-consumed');
}

/** Worked out once for a state. */
const known = new WeakMap<State, Map<string, Contradictions>>();

export function contradictionsOf(state: State, streamId: string): Contradictions {
  const ofState = known.get(state) ?? new Map<string, Contradictions>();
  known.set(state, ofState);
  const before = ofState.get(streamId);
  if (before) return before;
  const liquor = mayContradict(state, streamId) ? liquorOf(state, streamId) : undefined;
  const found = liquor ? contradictionsIn(liquor) : nothing;
  ofState.set(streamId, found);
  return found;
}

/** What of a waste is told in two ways that disagree. */
export const disputedIn = ({ metals, acid }: Contradictions): readonly (Metal | 'acid')[] => [
  ...metals.keys(),
  ...(acid.length > 0 ? (['acid'] as const) : []),
];

/** Wastes in a container that tell of a metal or of the acid in two ways that disagree. */
export function disputesIn(
  state: State,
  containerId: string,
): ReadonlyMap<Metal | 'acid', readonly string[]> {
  const streams = new Set(
    (state.containers.get(containerId)?.contents ?? []).flatMap(({ streamId }) => streamId ?? []),
  );
  const all = new Map<Metal | 'acid', readonly string[]>();
  for (const streamId of streams)
    for (const of of disputedIn(contradictionsOf(state, streamId)))
      all.set(of, [...(all.get(of) ?? []), streamId]);
  return all;
}
