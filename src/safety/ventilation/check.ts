/**
 * The ventilation check of a step: the gas that a charge makes against the station where it is to be worked. A ducted hood
 * that holds, and the outdoors, may be enough for a lot; the air of a room never is, nor a hood that blows back into it,
 * whatever the figures say. Nothing here says that a place is free of gas: it is an estimate and no measurement.
 */
import type { Figure } from '../../quantities/figure';
import { type Condition, nitrousGas, type Said } from '../../reference/nitrous-gas-tables';
import { thinnedIn } from './airflow';
import type { GasMade } from './gas-made';
import { type InRoom, inRoom } from './in-room';
import { dangerous } from './limit';
import { type Divided, type Lots, lotsOf, mostInDuct, type TooMuch } from './lots';
import { type Made, madeBy, type NotMade } from './made';
import { type Release, releaseOf } from './release';
import { type HoodFault, hoodFaults, type Station, stationFrom } from './station';
import type { GassingCharge, WrittenCharge, WrittenStation } from './station-schema';

export type Asked = {
  readonly station: WrittenStation;
  readonly charge: WrittenCharge;
  /** The day of the step, "2026-11-29". */
  readonly on: string;
};

/** Why it is not enough as it is. */
export type Reason = 'room-air' | 'ductless-hood' | HoodFault | TooMuch | NotMade;

export type InDuct = {
  readonly mean: Figure<'ppm'>;
  readonly peak: Figure<'ppm'>;
  /** What it may be at the peak, high end. */
  readonly most: Figure<'ppm'>;
};

export type VentilationResult = {
  /** `split`: the station holds, the charge is too much for one lot. `none`: nothing may be worked there. */
  readonly verdict: 'enough' | 'split' | 'none';
  readonly reasons: readonly Reason[];
  /** What has to hold beside the figures for the verdict to stand. */
  readonly conditions: readonly Condition[];
  /** Why a station of this kind is never an answer. */
  readonly refused?: Said;
  readonly station: Station;
  readonly dangerous: Figure<'ppm'>;
  /** Absent where no metal dissolves, and where the charge cannot be worked out. */
  readonly made?: Made;
  readonly duct?: InDuct;
  readonly inRoom?: InRoom;
  /** The largest lot that the station takes: metal of a leach, liquor of cementation. */
  readonly portion?: Figure<'g'>;
  readonly liquorPortion?: Figure<'L'>;
  readonly split?: { readonly count: number; readonly each: Figure<Divided> };
};

/** Why nothing may be worked there, whatever the charge. */
function stationReasons(station: Station, on: string): readonly Reason[] {
  switch (station.is) {
    case 'ducted-hood':
      return hoodFaults(station, on);
    case 'outdoors':
      return [];
    case 'room':
      return ['room-air'];
    case 'ductless-hood':
      return ['ductless-hood'];
  }
}

const refusedFor = ({ is }: Station): { refused?: Said } => {
  if (is === 'room') return { refused: nitrousGas.refused['room-air'] };
  return is === 'ductless-hood' ? { refused: nitrousGas.refused['ductless-hood'] } : {};
};

const conditionsOf = (station: Station, split: boolean): readonly Condition[] =>
  station.is === 'ducted-hood' || station.is === 'outdoors'
    ? [...nitrousGas.conditions[station.is], ...(split ? nitrousGas.conditions.lots : [])]
    : [];

const ductOf = (release: Release, airflow: Figure<'m³/h'>): InDuct => ({
  mean: thinnedIn('In the duct, mean', release.mean, airflow),
  peak: thinnedIn('In the duct at the peak', release.peak, airflow),
  most: mostInDuct,
});

const airflowOf = (station: Station): Figure<'m³/h'> | undefined =>
  station.is === 'ducted-hood' ? station.face?.airflow : undefined;

/** Peak in the duct if all the metal dissolved, as it would with acid to spare. */
function peakToSpare(
  charge: GassingCharge,
  gas: GasMade,
  airflow: Figure<'m³/h'>,
): Figure<'ppm'> | undefined {
  const release = releaseOf(gas.withAcidToSpare ?? gas.all, charge);
  return release.ok ? ductOf(release.value, airflow).peak : undefined;
}

type Divisible = Pick<VentilationResult, 'portion' | 'liquorPortion' | 'split'> & {
  readonly tooMuch: readonly TooMuch[];
};

function dividedOf(
  charge: GassingCharge,
  { gas }: Made,
  station: Station,
  duct: InDuct | undefined,
): Divisible {
  const airflow = airflowOf(station);
  const toSpare = airflow && peakToSpare(charge, gas, airflow);
  const peak = duct && toSpare ? { peak: { asItIs: duct.peak, toSpare } } : {};
  const told = <U extends Divided>({ tooMuch, split }: Lots<U>) => ({ tooMuch, ...(split ? { split } : {}) });
  if (gas.metal) {
    const lots = lotsOf({ whole: gas.metal, metal: gas.metal, ...peak });
    return { ...told(lots), portion: lots.portion };
  }
  if (!gas.copper) return { tooMuch: [] };
  const lots = lotsOf({ whole: gas.volume, metal: gas.copper, ...peak });
  return { ...told(lots), liquorPortion: lots.portion };
}

/** What the gas does to the room of the station, where its volume is known. */
function roomOf(station: Station, { release, limit, mixing }: Made, holds: boolean): { inRoom?: InRoom } {
  const asked = { mixing, limit: limit.at, release };
  if (station.is === 'room')
    return { inRoom: inRoom({ ...asked, volume: station.volume, airflow: station.airflow }) };
  if (station.is !== 'ducted-hood' || !station.room) return {};
  const { shut, dangerousAfter, airing } = inRoom({
    ...asked,
    volume: station.room,
    airflow: holds ? station.face?.airflow : undefined,
  });
  return {
    inRoom: {
      ...(shut ? { shut } : {}),
      ...(dangerousAfter ? { dangerousAfter } : {}),
      ...(airing ? { airing } : {}),
    },
  };
}

/**
 * Whether a charge may be worked at a station, and in how many lots. Without metal that dissolves nothing is worked out: the
 * vapour of the acid needs the hood or the outdoors all the same. What cannot be worked out, and what cannot be counted on,
 * is `none` with its reasons.
 * @example 50 g of copper in strong acid, hood of 0.90 m × 0.45 m at 0.5 m/s: 106 ppm at the peak in the duct, `split`
 */
export function ventilationCheck({ station: written, charge, on }: Asked): VentilationResult {
  const station = stationFrom(written, on);
  const faults = stationReasons(station, on);
  const common = { station, dangerous, ...refusedFor(station) };
  if (charge.step === 'acid-dilution' || charge.step === 'filtration')
    return faults.length > 0
      ? { ...common, verdict: 'none', reasons: faults, conditions: [] }
      : { ...common, verdict: 'enough', reasons: [], conditions: conditionsOf(station, false) };
  const made = madeBy(charge);
  if (!made.ok) return { ...common, verdict: 'none', reasons: [...faults, made.reason], conditions: [] };
  const airflow = airflowOf(station);
  const duct = airflow?.value.gt(0) ? ductOf(made.value.release, airflow) : undefined;
  const worked = {
    ...common,
    made: made.value,
    ...(duct ? { duct } : {}),
    ...roomOf(station, made.value, faults.length === 0),
  };
  if (faults.length > 0) return { ...worked, verdict: 'none', reasons: faults, conditions: [] };
  const { tooMuch, ...divided } = dividedOf(charge, made.value, station, duct);
  const verdict = tooMuch.length > 0 ? 'split' : 'enough';
  const conditions = conditionsOf(station, verdict === 'split');
  return { ...worked, ...divided, verdict, reasons: tooMuch, conditions };
}
