/** How the values of an axis are written. Places on a drawing only: what is reckoned with is printed as a figure. */
import Decimal from 'decimal.js';
import { type DecimalSign, formatNumber } from '../../quantities/format';
import type { PlotAxis } from './plot-spec';

const raised: Readonly<Record<string, string>> = Object.fromEntries(
  [...'−0123456789'].map((sign, at) => [sign, [...'⁻⁰¹²³⁴⁵⁶⁷⁸⁹'][at] ?? sign]),
);

const powerText = (value: Decimal): string =>
  `10${[...String(value.e).replace('-', '−')].map((sign) => raised[sign]).join('')}`;

/** Beyond a thousandth and below a million. */
const farPower = (value: Decimal): boolean => value.e < -3 || value.e > 5;

/** Three digits in the reader's decimal sign; a very small or large value as a product with a power of ten. */
export function valueText(axis: PlotAxis, value: number, sign: DecimalSign = '.'): string {
  if (axis.format) return axis.format(value);
  const decimal = new Decimal(value).toSignificantDigits(3);
  if (decimal.isZero()) return '0';
  if (decimal.e < -4 || decimal.e > 6) {
    const factor = decimal.div(Decimal.pow(10, decimal.e));
    return `${formatNumber(factor, factor.decimalPlaces(), sign)}\u202f×\u202f${powerText(decimal)}`;
  }
  return formatNumber(decimal, decimal.decimalPlaces(), sign);
}

/**
 * Texts of ticks: all with the decimals of the finest, or as powers of ten where one of them needs it.
 * @param short as powers of ten wherever they are ones
 */
export function tickTexts(
  axis: PlotAxis,
  ticks: readonly number[],
  sign: DecimalSign = '.',
  short = false,
): readonly string[] {
  if (axis.format) return ticks.map(axis.format);
  const values = ticks.map((tick) => new Decimal(tick));
  if (axis.scale === 'log')
    return values.every((value) => value.eq(Decimal.pow(10, value.e))) && (short || values.some(farPower))
      ? values.map(powerText)
      : values.map((value) => formatNumber(value, value.decimalPlaces(), sign));
  const decimals = Math.max(0, ...values.map((value) => value.decimalPlaces()));
  return values.map((value) => formatNumber(value, decimals, sign));
}
