/** Print as cells have it: typographic signs are for eyes, a program wants plain ones. */

/** Narrow, thin and unbreakable spaces become spaces, the unbreakable hyphen of codes a hyphen. */
export const plainText = (printed: string): string =>
  printed.replace(/[\u00a0\u2009\u202f]/g, ' ').replaceAll('\u2011', '-');

/**
 * A number as printed, with either decimal sign, as digits with a decimal point.
 * @throws where it is more than a number
 * @example plainNumber('−12\u202f345,6') // '-12345.6'
 */
export function plainNumber(printed: string): string {
  const digits = printed.replaceAll('\u202f', '').replace('\u2212', '-').replace(',', '.');
  if (!/^-?\d+(\.\d+)?$/.test(digits)) throw new Error(`"${printed}" is more than a number`);
  return digits;
}
