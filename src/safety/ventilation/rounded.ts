/** Round numbers that a person acts on, on the careful side: what goes in is rounded down, time is rounded up. */
import Decimal from 'decimal.js';
import type { Figure } from '../../quantities/figure';
import type { Unit } from '../../quantities/unit';
import type { Written } from '../../quantities/written';
import type { VentilationResult } from './check';

/** More digits than this nobody weighs out. */
const digits = 3;

/** @example 4.1666 g // { value: '4.16', unit: 'g' } */
export const roundedDown = <U extends Unit>({ value, unit }: Figure<U>): Written<U> => ({
  value: value
    .toSignificantDigits(digits, Decimal.ROUND_DOWN)
    .toDecimalPlaces(6, Decimal.ROUND_DOWN)
    .toFixed(),
  unit,
});

/** One of several lots of the same size. Lots are counted by the largest one rounded down, so none is above that. */
export const eachLot = <U extends Unit>({ value, unit }: Figure<U>): Written<U> => ({
  value: value.toSignificantDigits(digits).toDecimalPlaces(6).toFixed(),
  unit,
});

/** Largest lot; the whole charge where it goes in one lot, to the last digit that was weighed. */
export function portionTaken({ portion, made }: VentilationResult): Written<'g'> | undefined {
  if (!portion) return undefined;
  return portion === made?.gas.metal ? { value: portion.value.toFixed(), unit: 'g' } : roundedDown(portion);
}

/** Whole minutes at the high end of a time. */
export const wholeMinutes = ({ high }: Figure<'min'>): number => high.ceil().toNumber();
