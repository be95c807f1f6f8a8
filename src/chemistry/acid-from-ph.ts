/** Free acid a litre from a pH, with its honest spread: the instrument, and what strong salt does to a pH. */
import Decimal from 'decimal.js';
import { between, type Figure, given } from '../quantities/figure';
import { halfLastDigit, type Written } from '../quantities/written';
import { potReadings } from '../reference/pot-readings-tables';
import { evidence } from '../reference/tables';
import { sourceOf } from './constants';

export type PhEvidence = {
  readonly by: 'ph';
  readonly ph: Written<'1'>;
  readonly instrument: 'paper' | 'meter';
};

/** Below this an electrode is far from its buffers, and paper ends. Source: reference/pot-readings.json, acidPh. */
const strongBelow = 1;
/** Above this there is no acid left to speak of, but alkali. */
const neutral = 7;

/** How far a pH may be off, and who says so: the instrument, or in strong acid what any instrument is off there, if that is more. */
export function phSpread({ ph, instrument }: PhEvidence) {
  const own = evidence[instrument === 'paper' ? 'ph-paper' : 'ph-meter'];
  const strong = new Decimal(ph.value).lt(strongBelow) ? potReadings.acidPh : undefined;
  return {
    half: Decimal.max(own.value, strong?.uncertainty ?? 0, halfLastDigit(ph.value)),
    sources: [own, ...(strong ? [strong] : [])].map(sourceOf),
  };
}

/**
 * 10^−pH, mol/L, with the spread of the instrument and of the activity in strong salt. Below pH 1 a pH says little; above
 * pH 7 there is no acid, up to what a reading too high would hide.
 * Source of the spread: reference/evidence.json, reference/pot-readings.json.
 */
export function acidFromPh(found: PhEvidence, origin: string, sentence: string): Figure<'mol/L'> {
  const { half, sources } = phSpread(found);
  const read = new Decimal(10).pow(new Decimal(found.ph.value).negated());
  const wide = new Decimal(10).pow(half).times(evidence['ph-to-acid'].value);
  const alkaline = new Decimal(found.ph.value).gt(neutral);
  const likely = alkaline ? new Decimal(0) : read;
  return given({
    origin,
    sentence,
    value: likely,
    unit: 'mol/L',
    how: 'reading',
    spread: between(likely.div(wide), likely, read.times(wide)),
    decimals: Math.max(0, 1 - likely.e),
    sources: [...sources, sourceOf(evidence['ph-to-acid'])],
    note: alkaline
      ? 'Above pH 7 there is no free acid. What alkali there is, is not reckoned.'
      : `Worked out as 10 to the power −${found.ph.value}; a pH is a poor measure of strong acid.`,
  });
}

/** Paper has no colour below pH 1: stronger acid looks the same. Source: reference/evidence.json. */
export const beyondPaper = ({ instrument, ph }: PhEvidence): boolean =>
  instrument === 'paper' && new Decimal(ph.value).lte(1);
