/** The limit that a person chose for the air they breathe, and what is immediately dangerous to life. Of nitrogen dioxide. */
import { constant } from '../../chemistry/constants';
import { exact, type Figure, given } from '../../quantities/figure';
import { quantity } from '../../quantities/quantity';
import { exposureLimits } from '../../reference/exposure-limits-tables';
import type { GassingCharge } from './station-schema';

export type ChosenLimit = {
  readonly name: string;
  /** Absent where the person who stated it did not say. */
  readonly over?: 'ceiling' | '15-min' | '8-h';
  readonly at: Figure<'ppm'>;
};

export function limitOf(chosen: GassingCharge['limit']): ChosenLimit {
  if (typeof chosen !== 'string') {
    const { at, whose } = chosen;
    const value = quantity(at.value, 'ppm');
    const sentence = `Limit for nitrogen dioxide, ${whose}`;
    return {
      name: whose,
      at: given({
        origin: 'charge/limit',
        sentence,
        value,
        unit: 'ppm',
        how: 'stated',
        spread: exact,
        decimals: value.decimalPlaces(),
      }),
    };
  }
  const { name, over, nitrogenDioxide } = exposureLimits.limits[chosen];
  const sentence = `Limit for nitrogen dioxide, ${name}`;
  return { name, over, at: constant(`limit/${chosen}`, sentence, nitrogenDioxide, 'ppm') };
}

const { dangerous: told } = exposureLimits;
export const dangerous = constant('limit/dangerous', told.name, told.nitrogenDioxide, 'ppm');
