/** Free nitric acid in % by mass, as the tables of materials count it. */
import type Decimal from 'decimal.js';
import { acidByMass } from '../../chemistry/acid-strength';
import type { Figure } from '../../quantities/figure';

/** Decimals, % by mass; it is above `high` about once in 40 times. */
export type AcidPercent = { readonly percent: string; readonly high: string };

/** Where the density table ends, % by mass: what is stronger counts as this. */
const endOfTable = '70';

function percentOf(molesALitre: Decimal): string {
  const acid = acidByMass({ value: molesALitre.toFixed(), unit: 'mol/L' }, 'free-acid');
  return acid.ok ? acid.percent.value.toDecimalPlaces(1).toFixed() : endOfTable;
}

/** As if the acid were all that is dissolved: metals make a liquor denser, so that its share by mass is rather less. */
export const acidPercent = ({ value, high }: Figure<'mol/L'>): AcidPercent => ({
  percent: percentOf(value),
  high: percentOf(high),
});
