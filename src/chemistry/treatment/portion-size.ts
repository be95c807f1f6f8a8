/** How portions are cut, in the plan and while it runs. */
import Decimal from 'decimal.js';

/** Parts into which the span between what is needed at the least and at the most is cut: there the pH decides. */
export const lastParts = 4;

/** Down to two digits: what a kitchen balance shows. */
export const weighable = (grams: Decimal): Decimal => grams.toSignificantDigits(2, Decimal.ROUND_DOWN);
