/** Two pieces of evidence that cannot both be true: they lie further apart than their difference is uncertain. */
import { minus } from '../quantities/expression';
import { type Figure, workedOut } from '../quantities/figure';
import type { Unit } from '../quantities/unit';

/** An amount known in one way, as `Piece` of a metal or of free acid. */
type Told<U extends Unit> = {
  readonly by: string;
  readonly index: number;
  readonly atLeast?: true;
  readonly all: Figure<U>;
};

/** `more` and `less` say so much of the same thing; `difference` is what lies between them, with its range above nothing. */
export type Disagreement<U extends Unit> = {
  readonly more: Told<U>;
  readonly less: Told<U>;
  readonly difference: Figure<U>;
};

/**
 * Beyond the expanded uncertainty of the difference (k = 2; JCGM 100:2008, equation 10): what both rest on, such as the
 * one volume, counts in it once and mostly cancels. Evidence that tells only of a part contradicts where it is the more,
 * never where it is the less; two parts say nothing against each other.
 */
function between<U extends Unit>(a: Told<U>, b: Told<U>): Disagreement<U> | null {
  const [more, less] = a.all.value.gte(b.all.value) ? [a, b] : [b, a];
  if (less.atLeast) return null;
  const difference = workedOut({
    sentence: 'Between the two',
    unit: a.all.unit,
    formula: minus(more.all, less.all),
  });
  return difference.low.gt(0) ? { more, less, difference } : null;
}

/** Every pair that disagrees; those with the piece that is used come first. */
export function disagreements<U extends Unit>(known: {
  readonly best: Told<U>;
  readonly others: readonly Told<U>[];
}): readonly Disagreement<U>[] {
  const all = [known.best, ...known.others];
  return all.flatMap((a, i) => all.slice(i + 1).flatMap((b) => between(a, b) ?? []));
}
