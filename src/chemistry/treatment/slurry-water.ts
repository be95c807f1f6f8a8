/** Water that a base is stirred into before it goes in: one rule for the plan, for what comes of it, and for both ways. */
import { minus, over, times } from '../../quantities/expression';
import { type Figure, workedOut } from '../../quantities/figure';
import { dosing } from '../../reference/dosing-tables';
import type { BaseId } from '../../reference/tables';
import { ranged } from '../constants';
import { waterDensity } from './liquid-after';

/** mass × (1 − share) ÷ share. Source: reference/dosing.json. */
export function slurryMass(base: BaseId, mass: Figure<'g'>): Figure<'kg'> {
  const share = ranged(`slurry/${base}`, 'Base in its slurry or solution', dosing.slurry[base], '%');
  return workedOut({
    sentence: 'Water that the base is stirred into',
    unit: 'kg',
    formula: times(mass, minus(over(1, share), 1)),
  });
}

/** The same as a volume, at 20 °C. */
export const slurryWater = <U extends 'L' | 'mL'>(base: BaseId, mass: Figure<'g'>, unit: U): Figure<U> =>
  workedOut({
    sentence: 'Water that the base is stirred into, as a volume',
    unit,
    formula: over(slurryMass(base, mass), waterDensity),
  });
