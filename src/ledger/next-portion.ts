/** The next portion by what is left to add: full ones while the low end of it lasts, then the pH decides. */
import Decimal from 'decimal.js';
import { lastParts, weighable } from '../chemistry/treatment/portion-size';
import type { Figure } from '../quantities/figure';

export type PortionSize = {
  /** As weighed, g: at most two digits. */
  readonly grams: Decimal;
  /** `full`: below the low end of what is left; `last`: the pH decides whether it goes in. */
  readonly kind: 'full' | 'last';
};

/**
 * @param most g that one portion may have, by its heat and its foam
 * @returns null where nothing is left even at the high end
 */
export function nextPortion(left: Figure<'g'>, most: Decimal): PortionSize | null {
  const low = weighable(left.low);
  const last = weighable(left.high.minus(left.low).div(lastParts));
  // What is left at least goes in first, in portions all alike; a crumb of it is left to the pH.
  if (low.gt(0) && low.times(2).gte(last)) {
    const count = low.div(most).ceil();
    return { grams: weighable(low.div(count)), kind: 'full' };
  }
  const grams = weighable(Decimal.min(most, last));
  return grams.gt(0) ? { grams, kind: 'last' } : null;
}
