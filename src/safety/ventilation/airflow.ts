/**
 * Airflow against gas, steady: C = G ÷ Q' with the real flow Q = K·Q'. K is the mixing factor, 1 where the air mixes
 * perfectly and more where it does not; some guides have it upside down, as an efficiency of 1 and less.
 * Source: Q = (G ÷ C)·K, university ventilation formulae; K from 1 to 10, CDC 1994 (reference/nitrous-gas.json).
 */
import { constant } from '../../chemistry/constants';
import { over, times } from '../../quantities/expression';
import { type Figure, workedOut } from '../../quantities/figure';
import { nitrousGas } from '../../reference/nitrous-gas-tables';

export type NoAirflow = { readonly code: 'no-limit' | 'mixing-outside' | 'no-airflow' | 'no-room' };

export type Worked<F extends Figure> =
  | { readonly ok: true; readonly value: F }
  | { readonly ok: false; readonly failure: NoAirflow };

const failed = (code: NoAirflow['code']) => ({ ok: false, failure: { code } }) as const;

const least = constant(
  'mixing-least',
  'Mixing factor of air that mixes perfectly',
  nitrousGas.mixing.least,
  '1',
);
const most = constant('mixing-most', 'Mixing factor at the worst', nitrousGas.mixing.most, '1');

/** Neither below 1, which would make less air do, nor above 10. */
export const mixes = (mixing: Figure<'1'>): boolean =>
  mixing.value.gte(least.value) && mixing.value.lte(most.value);

/**
 * The mixing factor that an efficiency of mixing comes to, 1 ÷ efficiency. Fails above 1 and below 0.1.
 * @example 0.2 // 5
 */
export function mixingFromEfficiency(efficiency: Figure<'1'>): Worked<Figure<'1'>> {
  if (!efficiency.value.gt(0)) return failed('mixing-outside');
  const mixing = workedOut({
    sentence: 'Mixing factor, from the efficiency of mixing',
    unit: '1',
    formula: over(1, efficiency),
  });
  return mixes(mixing) ? { ok: true, value: mixing } : failed('mixing-outside');
}

type Needed = {
  /** Names the rate: "the mean". */
  readonly of: string;
  readonly rate: Figure<'L/min'>;
  readonly limit: Figure<'ppm'>;
  readonly mixing: Figure<'1'>;
};

/** Airflow that thins the gas to the limit all over a room, m³/h. */
export function airflowNeeded({ of, rate, limit, mixing }: Needed): Worked<Figure<'m³/h'>> {
  if (!limit.value.gt(0)) return failed('no-limit');
  if (!mixes(mixing)) return failed('mixing-outside');
  const sentence = `Room air that would be needed, ${of}`;
  return {
    ok: true,
    value: workedOut({ sentence, unit: 'm³/h', formula: times(mixing, over(rate, limit)) }),
  };
}

/** What the gas comes to in an airflow that takes all of it up, ppm: that of a duct. */
export const thinnedIn = (sentence: string, rate: Figure<'L/min'>, airflow: Figure<'m³/h'>): Figure<'ppm'> =>
  workedOut({ sentence, unit: 'ppm', formula: over(rate, airflow) });

/** Air changes of a room, each hour. */
export function airChanges(volume: Figure<'m³'>, airflow: Figure<'m³/h'>): Worked<Figure<'1/h'>> {
  if (!volume.value.gt(0)) return failed('no-room');
  return {
    ok: true,
    value: workedOut({ sentence: 'Air changes', unit: '1/h', formula: over(airflow, volume) }),
  };
}
