/**
 * What a species feels of all the others. Coefficients and water follow from a few numbers, not from every species: the ionic
 * strength, ln of the water activity, and for each hub (an ion such as nitrate that nearly every interaction has a part in) its
 * own molality and the pull of all the others on it, Σ ε m. Beside them stands ln of the kilograms of free water. Newton's steps take these
 * numbers as unknowns, so that coefficients need not be followed step after step.
 */
import { type Sparse, sparse } from './sparse';

/** Places of the numbers that are always there; ln kg is the last of all. */
export const strengthAt = 0;
export const waterAt = 1;
const hubsAt = 2;

/** Two species and the coefficient between them, kg/mol, natural logarithm. */
export type Pair = { readonly a: number; readonly b: number; readonly epsilon: number };

export type Feeling = {
  /** How many numbers there are. */
  readonly size: number;
  /** What 1 mol/kg of each species adds to them. */
  readonly adds: Sparse;
  /** What each adds to ln γ of a species, beside what the ionic strength does. */
  readonly pull: Sparse;
};

/** Those that have a part in every pair, the busiest first. */
function hubsAmong(pairs: readonly Pair[]): number[] {
  const hubs: number[] = [];
  let left = pairs;
  while (left.length > 0) {
    const count = new Map<number, number>();
    for (const { a, b } of left) for (const j of [a, b]) count.set(j, (count.get(j) ?? 0) + 1);
    const [hub] = [...count].reduce((most, one) => (one[1] > most[1] ? one : most));
    hubs.push(hub);
    left = left.filter(({ a, b }) => a !== hub && b !== hub);
  }
  return hubs;
}

export function feelingOf(charge: Float64Array, pairs: readonly Pair[]): Feeling {
  const hubs = hubsAmong(pairs);
  const size = hubsAt + 2 * hubs.length + 1;
  const adds = Array.from(charge, (z) => row(size, [strengthAt, (z * z) / 2]));
  const pull = Array.from(charge, () => row(size));
  const set = (rows: number[][], j: number, place: number, x: number) => {
    const of = rows[j];
    if (of) of[place] = x;
  };
  for (const [h, hub] of hubs.entries()) {
    const [molality, pulled] = [hubsAt + h, hubsAt + hubs.length + h];
    set(adds, hub, molality, 1);
    set(pull, hub, pulled, 1);
    for (const { a, b, epsilon } of pairs) {
      if (a !== hub && b !== hub) continue;
      const other = a === hub ? b : a;
      set(adds, other, pulled, epsilon);
      // A hub feels another hub by its own pull.
      if (!hubs.includes(other)) set(pull, other, molality, epsilon);
    }
  }
  return { size, adds: sparse(adds), pull: sparse(pull) };
}

function row(size: number, ...entries: readonly (readonly [number, number])[]): number[] {
  const of = new Array<number>(size).fill(0);
  for (const [place, x] of entries) of[place] = x;
  return of;
}
