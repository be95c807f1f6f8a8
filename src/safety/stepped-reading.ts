/** A reading changed by one of its last digit, for a thumb that keys no minus sign. */
import Decimal from 'decimal.js';
import { readNumber } from '../quantities/written';

/** @example stepped('0.34', 1) // '0.35' @example stepped('0', -1) // '-1' */
export function stepped(typed: string, direction: 1 | -1): string {
  const [, minus = '', digits = ''] = /^([-−]?)(.*)$/s.exec(typed) ?? [];
  const read = readNumber(digits === '' ? '0' : digits);
  if (!read.ok) return typed;
  const value = new Decimal(`${minus === '' ? '' : '-'}${read.value}`);
  const places = read.value.split('.')[1]?.length ?? 0;
  const next = value.plus(new Decimal(10).pow(-places).times(direction)).toFixed(places);
  return typed.includes(',') ? next.replace('.', ',') : next;
}
