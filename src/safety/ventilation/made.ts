/** The gas of a charge, how it comes, and the room air that it would take under the limit chosen. */
import { ranged } from '../../chemistry/constants';
import { exact, type Figure, given } from '../../quantities/figure';
import { quantity } from '../../quantities/quantity';
import { nitrousGas } from '../../reference/nitrous-gas-tables';
import { airflowNeeded, type NoAirflow } from './airflow';
import { type GasMade, gasMade, type NoGas } from './gas-made';
import { type ChosenLimit, limitOf } from './limit';
import { type NoRelease, type Release, releaseOf } from './release';
import type { GassingCharge } from './station-schema';

/** Gas of the charge, and the room air that it would take: shown to say why room air is no answer. */
export type Made = {
  readonly gas: GasMade;
  readonly release: Release;
  readonly limit: ChosenLimit;
  readonly mixing: Figure<'1'>;
  readonly airNeeded: { readonly mean: Figure<'m³/h'>; readonly peak: Figure<'m³/h'> };
};

function mixingOf({ mixing }: GassingCharge): Figure<'1'> {
  if (!mixing) return ranged('mixing-usual', 'Mixing factor, usual', nitrousGas.mixing.usual, '1');
  const value = quantity(mixing.value, '1');
  return given({
    origin: 'charge/mixing',
    sentence: 'Mixing factor',
    value,
    unit: '1',
    how: 'assumed',
    spread: exact,
    decimals: value.decimalPlaces(),
  });
}

/** Why a charge cannot be worked out. */
export type NotMade = NoGas['code'] | NoRelease['code'] | NoAirflow['code'];

type Worked = { readonly ok: true; readonly value: Made } | { readonly ok: false; readonly reason: NotMade };

/** Fails with the first thing that is missing or cannot be. */
export function madeBy(charge: GassingCharge): Worked {
  const failed = ({ failure }: { readonly failure: { readonly code: NotMade } }): Worked => ({
    ok: false,
    reason: failure.code,
  });
  const gas = gasMade(charge);
  if (!gas.ok) return failed(gas);
  const release = releaseOf(gas.value.all, charge);
  if (!release.ok) return failed(release);
  const [limit, mixing] = [limitOf(charge.limit), mixingOf(charge)];
  const needed = (of: string, rate: Figure<'L/min'>) => airflowNeeded({ of, rate, limit: limit.at, mixing });
  const mean = needed('mean', release.value.mean);
  if (!mean.ok) return failed(mean);
  const peak = needed('at the peak', release.value.peak);
  if (!peak.ok) return failed(peak);
  const airNeeded = { mean: mean.value, peak: peak.value };
  return { ok: true, value: { gas: gas.value, release: release.value, limit, mixing, airNeeded } };
}
