/** Nitric acid strength and density against published tables and worked examples. */
import Decimal from 'decimal.js';
import { describe, expect, it } from 'vitest';
import { acidByMass, acidStrength, densityAt, type WrittenStrength } from '../../src/chemistry/acid-strength';
import { expectWithin } from '../support/close';

const molarity = (value: string, unit: WrittenStrength['unit']) => {
  const strength = acidStrength({ value, unit }, 'test');
  return strength.ok ? strength.molarity.value : undefined;
};

describe('density at 20 °C', () => {
  /**
   * Perry's Chemical Engineers' Handbook, 6th edition, 20 °C column, as restated by a public density page for nitric
   * acid (read 24 November 2026); 68 % from a second page that quotes the same table.
   */
  const perry = [
    [1, 1.00364],
    [2, 1.00909],
    [5, 1.02563],
    [8, 1.0427],
    [10, 1.0543],
    [12, 1.0661],
    [14, 1.0781],
    [68, 1.4048],
  ] as const;
  it.each(perry)('%d %% has %d kg/L', (percent, density) => {
    expectWithin(densityAt(new Decimal(percent)), density, 0.00001);
  });

  it('65 % has about 1.39 kg/L', () => {
    // A materials page with its source given as MIT (read 24 November 2026).
    expectWithin(densityAt(new Decimal(65)), 1.39, 0.002);
  });
});

describe('strength in mol/L', () => {
  it('70 % is 15.70 mol/L', () => {
    // A laboratory protocol page, worked example with 1.413 g/mL: 15.6976 mol/L (read 24 November 2026).
    expectWithin(molarity('70', '%'), 15.6976, 0.001);
  });

  it('69.6 % is 15.6 mol/L', () => {
    // Table of concentrated reagents, 63.013 g/mol, density 1.41 (read 24 November 2026).
    expectWithin(molarity('69.6', '%'), 15.6, 0.005);
  });

  it('a density of 1.4048 kg/L is 68 %, as the table says, and 15.16 mol/L', () => {
    // 1404.8 g × 0.68 = 955.3 g of HNO₃ a litre, worked out on a public page from the same table; ÷ 63.013 g/mol.
    expectWithin(molarity('1.4048', 'kg/L'), 955.3 / 63.013, 0.0005);
  });
});

describe('strength in % by mass', () => {
  const percent = (value: string, unit: WrittenStrength['unit']) => {
    const acid = acidByMass({ value, unit }, 'test');
    return acid.ok ? acid.percent.value : undefined;
  };

  it('15.6976 mol/L is 70 %', () => {
    // The laboratory protocol above, the other way round.
    expectWithin(percent('15.6976', 'mol/L'), 70, 0.001);
  });

  it('1.4048 kg/L is 68 %', () => {
    // Perry's table, as quoted on the second page above.
    expectWithin(percent('1.4048', 'kg/L'), 68, 0.00001);
  });
});

it('acid beyond the table is refused with the ends of the table', () => {
  const fuming = acidStrength({ value: '90', unit: '%' }, 'test');
  expect(fuming).toEqual({ ok: false, failure: { code: 'outside-table', low: '0', high: '70' } });
});
