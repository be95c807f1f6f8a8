/** A figure and the limit it was held against, as one line. */
import type { Figure } from '../quantities/figure';
import { type DecimalSign, formatNumber, printed } from '../quantities/format';
import type { Ground } from '../rules/candidate';
import { between } from './words';

const withUnit = (text: string, unit: string): string => (unit === '' ? text : `${text}\u202f${unit}`);

/** As many digits as it has: a limit is exact. */
export const limitShown = (limit: Figure, sign: DecimalSign) => ({
  value: formatNumber(limit.value, limit.value.decimalPlaces(), sign),
  unit: printed(limit, sign).unit,
});

export function limitText(limit: Figure, sign: DecimalSign): string {
  const { value, unit } = limitShown(limit, sign);
  return withUnit(value, unit);
}

/** @example "0.84 % (0.77 to 0.90)" */
export function rangedText(figure: Figure, sign: DecimalSign): string {
  const { value, unit, low, high } = printed(figure, sign);
  const text = withUnit(value, unit);
  return low === undefined || high === undefined ? text : `${text} (${between(low, high)})`;
}

/** @example "Share of nickel dinitrate by mass = 0.84 % (0.77 to 0.90), limit 0.3 %" */
export const groundText = ({ figure, limit }: Ground, sign: DecimalSign): string =>
  `${figure.sentence} = ${rangedText(figure, sign)}, limit ${limitText(limit, sign)}`;
