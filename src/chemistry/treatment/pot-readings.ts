/** Readings of a pot as a person writes them, and as the fit takes them: what each may be off, from the instrument and beyond. */
import Decimal from 'decimal.js';
import { minus } from '../../quantities/expression';
import { type Figure, given, read, within, workedOut } from '../../quantities/figure';
import { coverage } from '../../quantities/slopes';
import { halfLastDigit, type Written } from '../../quantities/written';
import { potReadings } from '../../reference/pot-readings-tables';
import { type Constant, evidence } from '../../reference/tables';
import { sourceOf } from '../constants';
import { type Mass, weighed } from '../evidence';
import type { Seen } from './shown-ph';

export type Instrument = 'paper' | 'meter';

export type PotReading = {
  /** Names the reading. */
  readonly origin: string;
  /** All that went in so far, as sold. */
  readonly dose: Figure<'g'> | Mass;
  readonly pH: Written<'1'>;
  readonly instrument: Instrument;
  readonly temperature?: Written<'°C'> | undefined;
};

export const doseOf = ({ dose, origin }: PotReading): Figure<'g'> =>
  'slopes' in dose ? dose : weighed(dose, `${origin}/dose`, 'Base so far, as sold');

const rowOf = (instrument: Instrument) => evidence[instrument === 'paper' ? 'ph-paper' : 'ph-meter'];

/** Range of a pH on either side: the instrument's own, or half of the last digit written. */
const rangeOf = ({ pH, instrument }: PotReading): number =>
  Decimal.max(rowOf(instrument).value, halfLastDigit(pH.value)).toNumber();

const standard = (range: number): number => range / coverage;

export function seenIn(reading: PotReading): Seen {
  const dose = doseOf(reading);
  return {
    grams: dose.value.toNumber(),
    pH: Number(reading.pH.value),
    spread: standard(rangeOf(reading)),
    gramsSpread: standard(dose.high.minus(dose.low).toNumber() / 2),
  };
}

/**
 * A pH with all that keeps it from telling more.
 * @param bend variance of what the curve's steepness and the dose bring in, pH²
 */
export function phFigure(reading: PotReading, bend: number): Figure<'1'> {
  const dose = doseOf(reading).value.toSignificantDigits(4);
  const half = Math.hypot(rangeOf(reading), coverage * Math.sqrt(bend));
  return read({
    origin: `${reading.origin}/ph`,
    sentence: `pH read at ${dose} g of base`,
    written: reading.pH,
    unit: '1',
    how: 'reading',
    spread: () => within(half),
    sources: [sourceOf(rowOf(reading.instrument))],
    note: 'Its range holds the instrument and how steep and bent the curve is there.',
  });
}

/** What the pH of a pot is off the model in a region of pH. */
function phOff(region: string, says: number, told: Constant): Figure<'1'> {
  const shown = given({
    origin: `constant/model-ph/${region}`,
    sentence: `pH read ${region} where the model says ${says}`,
    value: says,
    unit: '1',
    how: 'constant',
    spread: within(told.uncertainty),
    decimals: 0,
    sources: [sourceOf(told)],
  });
  return workedOut({
    sentence: `How far the pH of the model is off ${region}`,
    unit: '1',
    formula: minus(shown, says),
    signed: true,
  });
}

/** By region of pH, in the order of the fit. */
export const phOffsets: readonly Figure<'1'>[] = [
  phOff('in acid', 1, potReadings.acidPh),
  phOff('as copper comes down', 5, potReadings.turnPh),
  phOff('beyond copper', 8, potReadings.turnPh),
];
