/** Liquor that a wet residue still holds: wet mass × moisture ÷ density of the liquor. */
import { minus, over, times } from '../quantities/expression';
import { type Figure, read, within, workedOut } from '../quantities/figure';
import type { Written } from '../quantities/written';
import { liquor } from '../reference/tables';
import { ranged } from './constants';
import { densityOf } from './density';
import { assumedBetween, type StatedSpread, spreadFor, weighed } from './evidence';
import { moistureFault } from './evidence-faults';
import { type Load, partOfVolume } from './load';

type Mass = Written<'g' | 'kg' | 'mg' | 'lb'>;

export type WrittenMoisture =
  | { readonly by: 'dried-sample'; readonly wet: Mass; readonly dry: Mass }
  | { readonly by: 'stated'; readonly percent: Written<'%'>; readonly spread?: StatedSpread | undefined }
  | { readonly by: 'assumed'; readonly low: Written<'%'>; readonly high: Written<'%'> }
  | { readonly by: 'not-determined' };

/** What is usual for a kind of waste; undefined where nothing is, as for soiled gloves or absorbent. */
function usualMoisture(kind: string): Figure<'%'> | undefined {
  const usual = liquor.moisture[kind];
  return usual && ranged(`moisture/${kind}`, 'Moisture, usual after draining', usual, '%');
}

/**
 * Share of the wet mass that is liquor, %. Salt that stays in the dried sample is neglected: below the spread. What
 * contradicts itself is taken for not determined.
 * @param kind the waste by its name in reference/liquor.json: where nobody determined the moisture, what is usual for it
 * @returns undefined where nobody determined it and nothing is usual for the kind
 */
export function moistureFrom(found: WrittenMoisture, origin: string, kind: string): Figure<'%'> | undefined {
  if (moistureFault(found)) return usualMoisture(kind);
  switch (found.by) {
    case 'dried-sample': {
      const wet = weighed(found.wet, `${origin}/wet`, 'Sample, wet');
      const dry = weighed(found.dry, `${origin}/dry`, 'Sample, dried');
      return workedOut({
        sentence: 'Moisture of the residue',
        unit: '%',
        formula: over(minus(wet, dry), wet),
      });
    }
    case 'stated':
      return read({
        origin,
        sentence: 'Moisture of the residue',
        written: found.percent,
        unit: '%',
        how: 'stated',
        spread: found.spread ? spreadFor(found.spread, 'weighing', '%') : () => within(2),
      });
    case 'assumed':
      return assumedBetween(found.low, found.high, '%', origin, 'Moisture of the residue');
    case 'not-determined':
      return usualMoisture(kind);
  }
}

export type HeldLiquor = { readonly volume: Figure<'L'>; readonly load: Load };

/** The liquor a wet residue holds and what is in it, as strong as the liquor it was filtered from. */
export function heldLiquor(
  residue: { readonly wetMass: Figure<'g'>; readonly moisture: Figure<'%'> },
  mother: Load,
): HeldLiquor {
  const volume = workedOut({
    sentence: 'Liquor held in the residue',
    unit: 'L',
    formula: over(times(residue.wetMass, residue.moisture), densityOf(mother)),
    note: 'As strong as the liquor it was filtered from: any wash makes it less.',
  });
  return { volume, load: partOfVolume(mother, volume) };
}
