/** Two pieces of evidence that cannot both be true: they lie further apart than their difference is uncertain. */
import Decimal from 'decimal.js';
import { minus } from '../quantities/expression';
import { type Figure, width, workedOut } from '../quantities/figure';
import type { Unit } from '../quantities/unit';
import { type Known, narrowest } from './evidence';

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
export function between<U extends Unit>(a: Told<U>, b: Told<U>): Disagreement<U> | null {
  const [more, less] = a.all.value.gte(b.all.value) ? [a, b] : [b, a];
  if (less.atLeast) return null;
  const difference = workedOut({
    sentence: 'Between the two',
    unit: a.all.unit,
    formula: minus(more.all, less.all),
    signed: true,
  });
  return difference.low.gt(0) ? { more, less, difference } : null;
}

/** Width of the range as a share of its high end: how good a way of knowing is, whatever it came to. */
const looseness = ({ all }: { readonly all: Figure }): Decimal =>
  all.high.isZero() ? new Decimal(0) : width(all).div(all.high.abs());

/**
 * The one to use, and the rest behind it: the narrowest, unless a better way of knowing contradicts it. A coarse strip
 * that came out far too low is narrow in grams; beside a photometer it is not the one to trust.
 * @returns undefined when there is none
 */
export function bestOf<U extends Unit, K extends Told<U> & Known<U, Unit>>(
  known: readonly K[],
): { readonly best: K; readonly others: readonly K[] } | undefined {
  const sorted = narrowest(known);
  if (!sorted) return undefined;
  const all = [sorted.best, ...sorted.others];
  const against = all.filter(
    (one) => !one.atLeast && looseness(one).lt(looseness(sorted.best)) && between<U>(sorted.best, one),
  );
  const [best = sorted.best] = against.sort((a, b) => looseness(a).cmp(looseness(b)));
  return { best, others: all.filter((one) => one !== best) };
}

/** Every pair that disagrees; those with the piece that is used come first. */
export function disagreements<U extends Unit>(known: {
  readonly best: Told<U>;
  readonly others: readonly Told<U>[];
}): readonly Disagreement<U>[] {
  const all = [known.best, ...known.others];
  return all.flatMap((a, i) => all.slice(i + 1).flatMap((b) => between(a, b) ?? []));
}
