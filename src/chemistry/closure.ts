/** What went into a batch against what came out of it: the two sums, and what is unaccounted for. */
import { minus, plus, times } from '../quantities/expression';
import { between, type Figure, given, workedOut } from '../quantities/figure';
import type { Unit } from '../quantities/unit';

export type Side<U extends Unit, P extends { readonly figure: Figure<U> }> = {
  readonly parts: readonly P[];
  /** Sum of what is known; absent where nothing is. */
  readonly sum?: Figure<U>;
};

/** `more-in`: some is not found again; `more-out`: something that went in is not written down. */
export type Verdict = 'closes' | 'more-in' | 'more-out' | 'cannot-be-told';

export type Closure<U extends Unit, P extends { readonly figure: Figure<U> }> = {
  readonly in: Side<U, P>;
  readonly out: Side<U, P>;
  /** In less out: negative where more came out. Absent where a part of either side is not known. */
  readonly unaccounted?: Figure<U>;
  readonly verdict: Verdict;
};

const side = <U extends Unit, P extends { readonly figure: Figure<U> }>(
  parts: readonly P[],
  sentence: string,
): Side<U, P> => {
  const [first] = parts;
  if (!first) return { parts };
  const formula = plus(...parts.map(({ figure }) => figure));
  return { parts, sum: workedOut({ sentence, unit: first.figure.unit, formula }) };
};

/** Whether nothing lies within the range of what is unaccounted for. */
export function verdictOf(unaccounted: Figure): Verdict {
  if (unaccounted.low.gt(0)) return 'more-in';
  return unaccounted.high.lt(0) ? 'more-out' : 'closes';
}

/**
 * Two sides of one account. What both rest on, such as one reading of a volume, cancels by its slopes (JCGM 100:2008,
 * equation 10).
 * @param name of what is accounted for: "Copper"
 * @param whole whether every part is known: a part that nobody wrote down is never taken for nothing
 */
export function closed<U extends Unit, P extends { readonly figure: Figure<U> }>(
  name: string,
  ins: readonly P[],
  outs: readonly P[],
  whole: boolean,
): Closure<U, P> {
  const a = side<U, P>(ins, `${name}, in`);
  const b = side<U, P>(outs, `${name}, out`);
  if (!whole || !a.sum || !b.sum) return { in: a, out: b, verdict: 'cannot-be-told' };
  const unaccounted = workedOut({
    sentence: `${name}, unaccounted for`,
    unit: a.sum.unit,
    formula: minus(a.sum, b.sum),
    signed: true,
  });
  return { in: a, out: b, unaccounted, verdict: verdictOf(unaccounted) };
}

/**
 * What a test took along: drops of the liquor and water beside, so between nothing and its own volume of the strongest
 * liquor there was.
 * @param origin of the test waste and the substance
 */
export function inTestWaste<All extends 'g' | 'mol'>(
  all: All,
  volume: Figure<'L'>,
  strongest: Figure<`${All}/L`>,
  origin: string,
): Figure<All> {
  const most = strongest.high;
  const strength = given({
    origin,
    sentence: 'Strength of the test waste, at most that of the liquor',
    value: most.div(2),
    unit: strongest.unit,
    how: 'assumed',
    spread: between(0, most.div(2), most),
  });
  return workedOut({ sentence: 'In the test waste', unit: all, formula: times(volume, strength) });
}
