/**
 * How fast the gas of one lot comes: its mean over the time of release, its peak at the beginning, and the tail after that.
 * The peak is a share of the gas within so long, where that is faster than the mean.
 */
import { constant, ranged } from '../../chemistry/constants';
import { minus, over, times } from '../../quantities/expression';
import { exact, type Figure, given, workedOut } from '../../quantities/figure';
import { inUnit } from '../../quantities/quantity';
import type { Unit } from '../../quantities/unit';
import type { Written } from '../../quantities/written';
import { nitrousGas } from '../../reference/nitrous-gas-tables';
import type { GassingCharge } from './station-schema';

export type Release = {
  readonly gas: Figure<'L'>;
  readonly over: Figure<'min'>;
  readonly mean: Figure<'L/min'>;
  readonly peak: Figure<'L/min'>;
  /** After the peak; absent where there is nothing after it. */
  readonly tail?: Figure<'L/min'>;
};

export type NoRelease = { readonly code: 'no-release-time' | 'no-peak-time' | 'peak-share-outside' };

export type ReleaseResult =
  | { readonly ok: true; readonly value: Release }
  | { readonly ok: false; readonly failure: NoRelease };

export const gasVolume = constant(
  'gas-volume-25',
  'Volume of one mole of gas at 25 °C',
  nitrousGas.gasVolume,
  'L/mol',
);

/** What a person said of it: a plan, so the number itself is exact. */
const stated = <U extends Unit>(
  written: Written<Unit>,
  unit: U,
  origin: string,
  sentence: string,
): Figure<U> => {
  const value = inUnit(written, unit);
  return given({
    origin,
    sentence,
    value,
    unit,
    how: 'stated',
    spread: exact,
    decimals: value.decimalPlaces(),
  });
};

type First = { readonly share: Figure<'%'>; readonly within: Figure<'min'> };

/** What comes first: as a person measured it, else what is usual. */
function firstOf(peak: GassingCharge['peak']): First {
  if (peak)
    return {
      share: stated(peak.share, '%', 'charge/peak-share', 'Share of the gas that comes first'),
      within: stated(peak.within, 'min', 'charge/peak-within', 'Time in which that comes'),
    };
  const { share, within } = nitrousGas.peak;
  return {
    share: ranged('gas-peak-share', 'Share of the gas that comes first, usual', share, '%'),
    within: constant('gas-peak-within', 'Time in which that comes, usual', within, 'min'),
  };
}

const rate = (sentence: string, formula: ReturnType<typeof over>): Figure<'L/min'> =>
  workedOut({ sentence, unit: 'L/min', formula });

/** Gas in litres, and its rates. Fails where a time is nothing, or the share of the peak is none or more than all. */
export function releaseOf(moles: Figure<'mol'>, charge: GassingCharge): ReleaseResult {
  const failed = (code: NoRelease['code']): ReleaseResult => ({ ok: false, failure: { code } });
  const time = stated(charge.release, 'min', 'charge/release', 'Time in which all of it comes');
  const { share, within } = firstOf(charge.peak);
  if (time.value.isZero()) return failed('no-release-time');
  if (within.value.isZero()) return failed('no-peak-time');
  if (share.value.isZero() || share.value.gt(100)) return failed('peak-share-outside');
  const gas = workedOut({
    sentence: 'Nitrous gas of one lot, counted as nitrogen dioxide',
    unit: 'L',
    formula: times(moles, gasVolume),
  });
  const mean = rate('Gas a minute, mean over the time of release', over(gas, time));
  // What comes faster than evenly is a peak; a share that would be slower than the mean is none.
  if (share.value.div(100).times(time.value).lte(within.value))
    return { ok: true, value: { gas, over: time, mean, peak: mean } };
  return {
    ok: true,
    value: {
      gas,
      over: time,
      mean,
      peak: rate('Gas a minute at the peak', over(times(share, gas), within)),
      tail: rate('Gas a minute after the peak', over(times(minus(1, share), gas), minus(time, within))),
    },
  };
}
