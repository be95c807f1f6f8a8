/**
 * What stays dissolved, what it is held against, and what comes down, against values computed or published outside this
 * project. Solubilities: USGS PHREEQC 3.8.9 with the constants of reference/equilibrium.json and specific ion interaction.
 */
import { readFileSync } from 'node:fs';
import Decimal from 'decimal.js';
import { describe, expect, it } from 'vitest';
import type { Component } from '../../src/chemistry/equilibrium/reaction';
import { solubility } from '../../src/chemistry/equilibrium/solubility';
import { molarMass } from '../../src/chemistry/formula';
import { liquorFrom } from '../../src/chemistry/liquor';
import { type Load, loadOf } from '../../src/chemistry/load';
import { sludgeFrom } from '../../src/chemistry/sludge';
import { baseTo } from '../../src/chemistry/treatment/base-to';
import { outcomeOf, statedCakeSolids } from '../../src/chemistry/treatment/outcome';
import { residualsAt } from '../../src/chemistry/treatment/residuals';
import { whichPh } from '../../src/chemistry/treatment/which-ph';
import { type ReferenceId, residuals } from '../../src/reference/residual-tables';
import type { BaseId, Metal } from '../../src/reference/tables';
import { expectWithin } from '../support/close';

/** mol of acid and g of metals in `litres`. */
const loadOfMoles = (litres: number, acid: number, metals: Readonly<Partial<Record<Metal, number>>>): Load =>
  loadOf(
    liquorFrom({
      origin: 'test',
      volume: { value: litres.toFixed(6), unit: 'L' },
      findings: Object.entries(metals).map(([metal, grams]) => ({
        by: 'weighing' as const,
        metal: metal as Metal,
        mass: { value: grams.toFixed(6), unit: 'g' as const },
      })),
      freeAcid: [{ by: 'titration', result: { value: (acid / litres).toFixed(6), unit: 'mol/L' } }],
    }),
    'test',
  );

const reached = (base: BaseId, load: Load, pH: number) => {
  const to = baseTo(base, load, pH);
  if (!to.ok) throw new Error(JSON.stringify(to.why));
  return to;
};

describe('metal dissolved beside its fresh hydroxide in calcium nitrate, mg per kg of water', () => {
  // mol/kg of calcium nitrate, then at pH 8, 9, 10, 11.
  const rows = [
    ['Cu', 'Cu(OH)2(s)', 0.1, [0.0277, 0.00346, 0.00262, 0.00767]],
    ['Ni', 'Ni(OH)2(s)', 0.1, [160, 1.68, 0.0647, 0.0907]],
    ['Cu', 'Cu(OH)2(s)', 1, [0.0393, 0.00394, 0.00277, 0.00887]],
    ['Ni', 'Ni(OH)2(s)', 1, [379, 3.89, 0.0895, 0.101]],
    ['Cu', 'Cu(OH)2(s)', 3, [0.0359, 0.00422, 0.00278, 0.00869]],
    ['Ni', 'Ni(OH)2(s)', 3, [915, 9.25, 0.144, 0.0997]],
  ] as const;
  it.each(rows)('%s beside %s in %d mol/kg', (metal, id, strength, expected) => {
    const background = new Map<Component, number>([['Ca+2', strength]]);
    const found = solubility({ model: 'sit', solid: { id }, background }, [8, 9, 10, 11]);
    for (const [i, milligrams] of expected.entries()) {
      const moles = found[i]?.dissolved ?? 0;
      expectWithin(molarMass(metal).value.times(moles * 1000), milligrams, 0.05);
    }
  });
});

describe('named limits', () => {
  // 40 CFR 461.12: mg for a kg of product, and L for a kg.
  const fromMass = [
    ['lime-settle-day', 'Ni', 67.49, 35.15],
    ['lime-settle-month', 'Ni', 44.64, 35.15],
    ['lime-settle-day', 'Zn', 51.32, 35.15],
    ['lime-settle-month', 'Zn', 21.44, 35.15],
    ['lime-settle-day', 'Ag', 1.32, 3.21],
    ['lime-settle-month', 'Ag', 0.55, 3.21],
    // 40 CFR 421.133 (a).
    ['lime-settle-filter-day', 'Pb', 0.189, 0.673],
    ['lime-settle-filter-month', 'Pb', 0.087, 0.673],
  ] as const;
  it.each(fromMass)('%s, %s: %d mg by %d L', (id, metal, milligrams, litres) => {
    expect(residuals.reference[id as ReferenceId].values[metal]).toBe((milligrams / litres).toFixed(2));
  });

  it('40 CFR 433, day and month', () => {
    expect(residuals.reference['metal-finishing-day'].values).toEqual({
      Cu: '3.38',
      Ni: '3.98',
      Zn: '2.61',
      Pb: '0.69',
      Ag: '0.43',
    });
    expect(residuals.reference['metal-finishing-month'].values).toEqual({
      Cu: '2.07',
      Ni: '2.38',
      Zn: '1.48',
      Pb: '0.43',
      Ag: '0.24',
    });
  });
});

describe('dry solid for a gram of metal', () => {
  // Worked out outside this project from atomic masses.
  const rows = [
    ['Cu', 'Cu(OH)2', 1.5353],
    ['Cu', 'CuO', 1.2518],
    ['Cu', 'Cu2(OH)3NO3', 1.8893],
    ['Cu', 'Cu2(OH)2CO3', 1.7398],
    ['Ni', 'Ni(OH)2', 1.5795],
    ['Zn', 'Zn(OH)2', 1.5203],
    ['Fe', 'Fe(OH)3', 1.9136],
    ['Al', 'Al(OH)3', 2.8909],
    ['Pb', 'PbO·0.33H2O', 1.1059],
    ['Ag', 'Ag2O', 1.0742],
    ['Sn', 'SnO2', 1.2695],
    ['Ba', 'BaCO3', 1.437],
  ] as const;
  it.each(rows)('%s as %s: %d g', (metal, solid, grams) => {
    const load = loadOfMoles(1, 0.1, { [metal]: 10 });
    const { needed } = reached('caustic-soda', load, 9);
    const sludge = sludgeFrom(load, needed, { solids: [{ of: metal, solid }] });
    expectWithin(sludge?.dry.value.div(10), grams, 0.0005);
  });
});

describe('a litre of acid that ends as 1 mol/kg calcium nitrate', () => {
  it('leaves 10.6 % of a 25 % cake as dissolved calcium nitrate', () => {
    const load = loadOfMoles(1, 1.953, { Cu: 5 });
    const to = reached('hydrated-lime', load, 9.5);
    const cakeSolids = statedCakeSolids({ value: '25', unit: '%' }, 'cake');
    const { pores, goesOn } = outcomeOf(to, load, { cakeSolids });
    // Strength of the liquor by what went in: 1.953 acid and 0.157 with copper.
    expectWithin(goesOn.moles.value.div(to.at.water), 1.08, 0.01);
    // 0.75 × 164.09 m ÷ (1000 + 164.09 m) at m = 1.08; 10.6 % at m = 1.
    expectWithin(pores?.saltOfWet.value, 100 * 0.75 * ((164.09 * 1.08) / (1000 + 164.09 * 1.08)), 0.01);
  });
});

describe('titration T01: a kilogram of water, 1 mol of acid, 0.1 of copper, 0.05 of nickel', () => {
  const file = new URL('./equilibrium-cases/T01.json', import.meta.url);
  const rows: readonly {
    base_mol: number;
    pH: number;
    water_kg: number;
    solid_mol: Record<string, number>;
  }[] = JSON.parse(readFileSync(file, 'utf8')).results['app-sit'].rows;
  const row = rows.find(({ pH }) => pH > 9);
  // As much liquor as holds a kilogram of water: 1.091 kg at 1.0453 kg/L.
  const load = loadOfMoles(1.0437, 1, { Cu: 6.3546, Ni: 2.93467 });

  it('makes as much water with lime, and the solids weigh as much', () => {
    const to = reached('hydrated-lime', load, row?.pH ?? 9);
    const { waterMade, sludge, inSludge } = outcomeOf(to, load);
    const made = waterMade.value.times('0.9982').toNumber();
    expect(made).toBeCloseTo((row?.water_kg ?? 0) - 1, 4);
    const solids = Object.entries(row?.solid_mol ?? {}).reduce(
      (sum, [id, n]) => sum + molarMass(id.replace('(s)', '')).value.toNumber() * n,
      0,
    );
    const grit = to.needed.mass.value.times('0.1').toNumber();
    expectWithin(sludge?.dry.value.minus(grit), solids, 0.002);
    expectWithin(inSludge.get('Cu')?.value, 6.3546, 0.0001);
  });
});

describe('what plating handbooks and suppliers do', () => {
  // Working bands of a supplier's table and a precipitation bulletin.
  it.each([
    ['Cu', 8, 9.5],
    ['Ni', 10, 11],
    ['Zn', 9, 10.5],
  ] as const)(
    '%s alone is brought to pH %d to %d with lime, and the window meets that',
    (metal, low, high) => {
      const found = whichPh(loadOfMoles(1, 0.5, { [metal]: 5 }), 'hydrated-lime');
      const window = found.ok ? found.value.window : undefined;
      expect(window?.low).toBeLessThanOrEqual(high);
      expect(window?.high).toBeGreaterThanOrEqual(low);
      expect(window?.best).toBeGreaterThanOrEqual(low - 1.6);
      expect(window?.best).toBeLessThanOrEqual(high + 1.6);
    },
  );

  it('lead stays with lime, 23 to 395 mg/L at its best, and comes down to 0.15 with soda ash', () => {
    const load = loadOfMoles(1, 0.5, { Cu: 6.35, Pb: 1.036 });
    const bandOf = (base: BaseId, pH: number) => {
      const found = residualsAt(load, base, pH);
      const lead = found.ok ? found.value.residuals.find(({ metal }) => metal === 'Pb') : undefined;
      return lead?.predicted ? lead.band : undefined;
    };
    expect(bandOf('soda-ash', 7)).toEqual({ low: new Decimal('0.1'), high: new Decimal(1) });
    expect(bandOf('hydrated-lime', 10.7)?.low.gte(10)).toBe(true);
  });
});
