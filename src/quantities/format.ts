/**
 * How a figure is printed. Rounding happens here and nowhere else: digits follow the range, never the calculator.
 */
import Decimal from 'decimal.js';
import type { Figure } from './figure';
import type { Written } from './written';

/** The decimal sign of the person who reads. */
export type DecimalSign = '.' | ',';

const thin = '\u202f';

/** Groups of three by thin space from five digits on, a real minus, the reader's decimal sign. */
export function formatNumber(value: Decimal, decimals: number, sign: DecimalSign = '.'): string {
  const [whole = '', part] = value.abs().toFixed(Math.max(0, decimals)).split('.');
  const grouped = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, thin) : whole;
  const text = part === undefined ? grouped : `${grouped}${sign}${part}`;
  return value.isNegative() && !/^[0.,]*$/.test(text) ? `−${text}` : text;
}

/** Digits as a person wrote them, with the reader's decimal sign. */
export const formatWritten = (written: Written, sign: DecimalSign = '.'): string =>
  written.value.replace('.', sign);

/**
 * Decimals to print for a value that is known to ± `half`: two digits of the uncertainty if it begins with 1 or 2, else
 * one, so that a digit shown is a digit known (JCGM 100:2008, 7.2.6: at most two digits). May be negative: tens, hundreds.
 * @example decimalsFor(new Decimal('16')) // 0   @example decimalsFor(new Decimal('0.39')) // 1
 */
export function decimalsFor(half: Decimal): number {
  const rounded = half.toSignificantDigits(2);
  const leading = Number(rounded.toExponential()[0]);
  return -rounded.e + (leading < 3 ? 1 : 0);
}

const significant = (value: Decimal, digits: number): number =>
  value.isZero() ? digits - 1 : digits - 1 - value.e;

const halfWidth = (figure: Figure): Decimal => figure.high.minus(figure.low).div(2);

/** Decimals of a figure's headline: as written if it was written, else by its range; four digits if it is exact. */
export function headlineDecimals(figure: Figure): number {
  if (figure.decimals !== undefined) return figure.decimals;
  const half = halfWidth(figure);
  return half.isZero() ? significant(figure.value, 4) : decimalsFor(half);
}

/** Decimals inside a formula: enough that a hand calculation from the printed numbers meets the printed result. */
export function workingDecimals(figure: Figure): number {
  const written = figure.formulaDecimals ?? figure.decimals;
  if (written !== undefined) return written;
  const enough = Math.max(headlineDecimals(figure) + 1, significant(figure.value, 4));
  return Math.min(enough, significant(figure.value, 6));
}

/** Negative `decimals` round to tens, hundreds. */
const roundedTo = (
  value: Decimal,
  decimals: number,
  mode: Decimal.Rounding = Decimal.ROUND_HALF_UP,
): Decimal => {
  const step = Decimal.pow(10, -decimals);
  // An end of 110.000000000001 is 110: the square root behind it is no finer.
  return value.toSignificantDigits(10).div(step).toDecimalPlaces(0, mode).times(step);
};

/** Text parts of a figure: value, unit, and the ends of its range where it has one. */
export type Printed = {
  readonly value: string;
  readonly unit: string;
  readonly low?: string;
  readonly high?: string;
  /** Share of the value, one or two digits: "13 %". Absent for exact figures and lopsided ranges. */
  readonly percent?: string;
};

const unitText = (unit: string): string => (unit === '1' ? '' : unit);

/** A figure as a page shows it. @example printed(copper) // { value: '118', unit: 'g', low: '102', high: '134', percent: '14' } */
export function printed(figure: Figure, sign: DecimalSign = '.'): Printed {
  const decimals = headlineDecimals(figure);
  const text = (d: Decimal) => formatNumber(roundedTo(d, decimals), decimals, sign);
  const ends = figure.low.eq(figure.high) ? {} : rangeText(figure, sign);
  return { value: text(figure.value), unit: unitText(figure.unit), ...ends };
}

/** Part of the range below which a low end is as good as nothing. */
const asNothing = 1000;

/** Decimals of the low end: by the range, but an end that is not nothing is not printed as nothing. */
function lowDecimals({ low }: Figure, half: Decimal): number {
  const decimals = decimalsFor(half);
  const vanishes = low.gt(0) && roundedTo(low, decimals, Decimal.ROUND_FLOOR).isZero();
  return vanishes && low.times(asNothing).gt(half) ? significant(low, 1) : decimals;
}

function rangeText(figure: Figure, sign: DecimalSign): Partial<Printed> {
  const decimals = decimalsFor(halfWidth(figure));
  // Outwards, so that what is printed holds what was worked out: too little bought is worse than a gram too much.
  const text = (d: Decimal, places: number, mode: Decimal.Rounding) =>
    formatNumber(roundedTo(d, places, mode), places, sign);
  const even = figure.high
    .minus(figure.value)
    .div(figure.value.minus(figure.low).plus(1e-12))
    .minus(1)
    .abs()
    .lt(0.1);
  const share = halfWidth(figure).div(figure.value.abs()).times(100);
  return {
    low: text(figure.low, lowDecimals(figure, halfWidth(figure)), Decimal.ROUND_FLOOR),
    high: text(figure.high, decimals, Decimal.ROUND_CEIL),
    ...(even && !figure.value.isZero()
      ? { percent: formatNumber(share, share.lt(1) ? Math.max(1, significant(share, 1)) : 0, sign) }
      : {}),
  };
}

/** A figure inside a formula, with its unit. */
export function inFormula(figure: Figure, sign: DecimalSign = '.'): string {
  const decimals = workingDecimals(figure);
  const text = formatNumber(roundedTo(figure.value, decimals), decimals, sign);
  return figure.unit === '1' ? text : `${text}${thin}${figure.unit}`;
}
