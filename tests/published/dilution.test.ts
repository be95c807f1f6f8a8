/** Dilution of nitric acid, its heat and heat capacity, against published examples and tables. */
import Decimal from 'decimal.js';
import { describe, expect, it } from 'vitest';
import { acidByMass, type WrittenStrength } from '../../src/chemistry/acid-strength';
import { type Dilution, recipeFor } from '../../src/chemistry/dilution';
import { heatToNoEnd } from '../../src/chemistry/dilution-heat';
import { expectWithin, relativeError } from '../support/close';

type Told = readonly [value: string, unit: WrittenStrength['unit']];

function recipe(stock: Told, wanted: Told, volume: string, unit: 'L' | 'mL' = 'mL'): Dilution {
  const found = recipeFor({
    stock: { value: stock[0], unit: stock[1] },
    wanted: { value: wanted[0], unit: wanted[1] },
    volume: { value: volume, unit },
  });
  if (!found.ok) throw new Error(found.failure.code);
  return found.dilution;
}

/** Acid of which one mole has `moles` of water. */
function acidIn(moles: number) {
  const percent = new Decimal(63.012).div(new Decimal(moles).times(18.015).plus(63.012)).times(100);
  const acid = acidByMass({ value: percent.toFixed(9), unit: '%' }, 'test');
  if (!acid.ok) throw new Error(acid.failure.code);
  return acid;
}

describe('recipes', () => {
  it('1 L of 10 % takes 110 mL of 68 % acid', () => {
    // A public page that works from Perry's table: 105.4 g ÷ 955.3 g × 1000 mL = 110 mL (read 25 November 2026).
    const { acid, pure } = recipe(['68', '%'], ['10', '%'], '1000');
    expectWithin(acid.volume.value, (105.4 / 955.3) * 1000, 0.001);
    expectWithin(pure.value, 105.4, 0.001);
  });

  it('the water that goes with it weighs what is left, which is more than the 890 mL that volumes alone would say', () => {
    // The same page takes 1000 − 110 mL, as if nothing shrank. By its own masses it is 1054.3 − 110.3 × 1.4048 = 899.3 g.
    const { water } = recipe(['68', '%'], ['10', '%'], '1000');
    expectWithin(water.mass.value, 1054.3 - 105.4 / 0.68, 0.0005);
    expect(water.volume.value.gt(890)).toBe(true);
  });

  it('305 g of 30 % are 145.2 g of 63 % acid and 159.8 g of water', () => {
    // A school exercise, worked on a public page by masses (read 25 November 2026). 305 g of 30 % are 258.5 mL at 1.1800 kg/L.
    const { acid, water } = recipe(['63', '%'], ['30', '%'], new Decimal(305).div('1.18').toFixed(6));
    expectWithin(acid.mass.value, 145.2, 0.001);
    expectWithin(water.mass.value, 159.8, 0.001);
  });

  it('200 mL of 2 mol/L take 112.5 mL of 20 % acid, at a density rounded to 1.12', () => {
    // A school exercise, worked on a public page with 1.12 g/mL (read 25 November 2026); the table has 1.115.
    const { acid } = recipe(['20', '%'], ['2', 'mol/L'], '200');
    expectWithin(acid.volume.value, 112.5, 0.006);
  });
});

describe('heat of dilution', () => {
  /** Parker, NSRDS-NBS 2 (1965), as printed in the CRC Handbook, 87th edition, page 5-87 (read 25 November 2026). */
  const parker = [
    [2.775, 9.498],
    [3.7, 6.883],
    [5.551, 3.933],
    [10, 1.54],
    [22.2, 0.582],
    [55.51, 0.506],
  ] as const;
  it.each(parker)('a mole of acid in %d mol of water has %d kJ to give', (moles, kJ) => {
    expectWithin(heatToNoEnd(acidIn(moles), 'stock').value, kJ, 0.0005);
  });

  it('to no end of water, acid in two moles of water gives 12.8 kJ a mole', () => {
    // Enthalpies of formation, NBS tables (Wagman 1982), from memory: −194.56 in 2 H₂O, −207.36 at infinite dilution.
    expectWithin(heatToNoEnd(acidIn(2), 'stock').value, 207.36 - 194.56, 0.001);
  });

  it('from two to three moles of water it gives about what an older measurement says', () => {
    // A textbook of explosives, table of the heat of diluting nitrating acid, last part (no sulfuric acid): 2.65 and
    // 1.72 kcal a mole left at 36.4 and 46.2 % of water (read 25 November 2026). Older data: good to some 10 %.
    const given = heatToNoEnd(acidIn(2), 'stock').value.minus(heatToNoEnd(acidIn(3), 'stock').value);
    expect(relativeError(given, (2.65 - 1.72) * 4.184)).toBeLessThan(0.1);
  });

  it('no more than a trace of heat is left in very weak acid', () => {
    expect(heatToNoEnd(acidIn(100_000), 'mixture').value.toNumber()).toBeLessThan(0.001);
  });
});

it('the rise is the heat over mass and heat capacity of the mixture', () => {
  // By hand: 30 % from 65 %, 1 L: 0.354 kg HNO₃ = 5.618 mol; Perry's heat capacity at 30 % 0.730 cal/(g·°C).
  const { warming } = recipe(['65', '%'], ['30', '%'], '1', 'L');
  const heat = warming.heat.value.toNumber();
  expectWithin(warming.rise.value, heat / (1.18 * 0.73 * 4.184), 0.0005);
  // Parker: 9.498 kJ at 55.8 % and 19.73 at 77.8 %, so between them; 2.251 and 2.791 at 30.6 and 33.5 %.
  expect(heat / 5.618).toBeGreaterThan(9.498 - 2.251);
  expect(heat / 5.618).toBeLessThan(19.73 - 1.749);
});
