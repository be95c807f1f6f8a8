/**
 * What a person wrote: digits as typed, with the unit. The only form in which a quantity enters the record.
 * A comma or a point is the decimal sign; the record keeps the point and every digit ("2,50" is kept as "2.50").
 */
import Decimal from 'decimal.js';
import * as z from 'zod/mini';

/** Non-negative decimal digits with a point; trailing zeros kept, since they say how fine the reading was. */
export const Digits = z.string().check(z.regex(/^\d{1,9}(\.\d{1,9})?$/));

/** A written quantity in one of `units`. */
export const writtenIn = <const U extends string>(...units: [U, ...U[]]) =>
  z.strictObject({ value: Digits, unit: z.enum(units) });

export const WrittenVolume = writtenIn('L', 'mL', 'US gal');
export const WrittenMass = writtenIn('g', 'kg', 'mg', 'lb');
export const WrittenPerLitre = writtenIn('g/L', 'mg/L');
export const WrittenMolarity = writtenIn('mol/L');
export const WrittenDensity = writtenIn('kg/L', 'g/mL');
export const WrittenPercent = writtenIn('%');
export const WrittenTime = writtenIn('min', 'h', 'days');
export const WrittenLength = writtenIn('cm', 'm', 'in', 'ft');
export const WrittenSpeed = writtenIn('m/s', 'ft/min');
export const WrittenRoom = writtenIn('m³', 'ft³');
export const WrittenAirflow = writtenIn('m³/h', 'L/min', 'ft³/min');

export type Written<U extends string = string> = { readonly value: string; readonly unit: U };

export type NumberFailure =
  | { readonly code: 'empty' }
  | { readonly code: 'not-a-number'; readonly text: string }
  | { readonly code: 'thousands-marks'; readonly text: string }
  | { readonly code: 'negative'; readonly text: string }
  | { readonly code: 'too-long'; readonly text: string };

export type NumberRead =
  | { readonly ok: true; readonly value: string }
  | { readonly ok: false; readonly failure: NumberFailure };

const refused = (failure: NumberFailure): NumberRead => ({ ok: false, failure });

/**
 * Reads a number as a person types it. Spaces around it are ignored, a comma or a point is the decimal sign, ".5" is
 * read as "0.5" and "5." as "5". Thousands marks are refused, since "1.250" and "1,250" mean different things to
 * different people.
 * @example readNumber(' 2,50 ') // { ok: true, value: '2.50' }
 */
export function readNumber(typed: string): NumberRead {
  const text = typed.trim();
  if (text === '') return refused({ code: 'empty' });
  if (/^[-−]\s*\d/.test(text)) return refused({ code: 'negative', text });
  if (/^\d{1,3}([ \u00a0\u202f'.,]\d{3})+([.,]\d*)?$/.test(text) && (text.match(/[^\d]/g) ?? []).length > 1)
    return refused({ code: 'thousands-marks', text });
  if (/^\d{1,3}[ \u00a0\u202f']\d{3}$/.test(text)) return refused({ code: 'thousands-marks', text });
  const match = /^(\d*)(?:[.,](\d*))?$/.exec(text);
  const whole = match?.[1] ?? '';
  const part = match?.[2] ?? '';
  if (!match || (whole === '' && part === '')) return refused({ code: 'not-a-number', text });
  const trimmed = whole.replace(/^0+(?=\d)/, '') || '0';
  if (trimmed.length > 9 || part.length > 9) return refused({ code: 'too-long', text });
  return { ok: true, value: part === '' ? trimmed : `${trimmed}.${part}` };
}

/** Half of the last digit written: what a reading can hide. @example halfLastDigit('2.50') // 0.005 */
export const halfLastDigit = (digits: string): Decimal =>
  new Decimal(10).pow(-(digits.split('.')[1]?.length ?? 0)).div(2);
