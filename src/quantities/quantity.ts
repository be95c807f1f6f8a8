/**
 * A number that carries its unit in its type. The only file that may cast to the brand.
 */
import Decimal from 'decimal.js';
import { meaningOf, sameDimension, type Unit } from './unit';
import type { Written } from './written';

declare const unit: unique symbol;

/** A decimal in the unit `U`. @example const volume: Quantity<'L'> = quantity('2.50', 'L') */
export type Quantity<U extends Unit = Unit> = Decimal & { readonly [unit]: U };

export const quantity = <U extends Unit>(value: Decimal.Value, _unit: U): Quantity<U> =>
  new Decimal(value) as Quantity<U>;

/** The same amount in another unit of the same dimension. Throws on another dimension: a programmer's error. */
export function converted<U extends Unit>(value: Decimal.Value, from: Unit, to: U): Quantity<U> {
  const [a, b] = [meaningOf(from), meaningOf(to)];
  if (!sameDimension(a.dimension, b.dimension)) throw new Error(`${from} is not a kind of ${to}`);
  return quantity(new Decimal(value).times(a.factor).div(b.factor), to);
}

/** What a person wrote, in the unit the computation wants. @example inUnit({ value: '250', unit: 'mL' }, 'L') // 0.25 */
export const inUnit = <U extends Unit>(written: Written<Unit>, to: U): Quantity<U> =>
  converted(written.value, written.unit, to);
