/**
 * A number as case files write it: one value, the two ends of a range, or "<0.1", which lies between nothing and that; null is
 * not determined.
 */
import Decimal from 'decimal.js';
import * as z from 'zod/mini';
import { between, exact, type Figure, given } from '../../src/quantities/figure';
import type { Unit } from '../../src/quantities/unit';

const Value = z.union([z.string().check(z.regex(/^[<≤]?\s*[-−]?\d+(\.\d+)?(e[-+]?\d+)?$/i)), z.number()]);
export const Amount = z.union([
  Value,
  z.tuple([Value, Value]),
  z.object({ low: Value, high: Value }),
  z.object({ min: Value, max: Value }),
]);
export type Amount = z.infer<typeof Amount>;

export const Amounts = z.optional(z.nullable(z.record(z.string(), z.nullable(Amount))));
export type Amounts = z.infer<typeof Amounts>;

const decimal = (value: string | number): Decimal =>
  new Decimal(
    String(value)
      .replace(/[<≤\s]/g, '')
      .replace('−', '-'),
  );
const isBelow = (value: string | number): boolean => /^[<≤]/.test(String(value));

/** Low and high end; the same where it is one value. */
export function endsOf(amount: Amount): readonly [Decimal, Decimal] {
  if (typeof amount === 'string' || typeof amount === 'number') {
    const value = decimal(amount);
    return [isBelow(amount) ? Decimal.min(0, value) : value, value];
  }
  const [a, b] = Array.isArray(amount)
    ? amount
    : 'low' in amount
      ? [amount.low, amount.high]
      : [amount.min, amount.max];
  return [Decimal.min(decimal(a), decimal(b)), Decimal.max(decimal(a), decimal(b))];
}

/** `factor` takes it to the unit. */
export function figureOf<U extends Unit>(
  sentence: string,
  amount: Amount,
  unit: U,
  factor: Decimal.Value = 1,
): Figure<U> {
  const [low, high] = endsOf(amount).map((end) => end.times(factor)) as [Decimal, Decimal];
  const value = low.plus(high).div(2);
  const spread = low.eq(high) ? exact : between(low, value, high);
  return given({ origin: `case/${sentence}`, sentence, value, unit, how: 'stated', spread });
}

export const Ph = z.optional(z.nullable(Amount));
export const phOf = (pH: z.infer<typeof Ph>): { readonly pH?: Figure<'1'> } =>
  pH === null || pH === undefined ? {} : { pH: figureOf('pH', pH, '1') };
