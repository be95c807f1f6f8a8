import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assemblageOf, madeOf } from '../../../src/chemistry/equilibrium/assemblage';
import { eliminate } from '../../../src/chemistry/equilibrium/eliminate';
import { chargeOf, components, partsIn } from '../../../src/chemistry/equilibrium/reaction';
import { rowTimes } from '../../../src/chemistry/equilibrium/sparse';
import { broughtBy, hydroxideIn, totalsOf } from '../../../src/chemistry/equilibrium/substances';
import { phaseOf, systemOf } from '../../../src/chemistry/equilibrium/system';
import { parsed } from '../../../src/chemistry/formula';

const brings = (formula: string) => {
  const { of, water } = broughtBy(formula);
  return { ...Object.fromEntries(of), water };
};

describe('what a substance brings into a liquor', () => {
  it.each([
    ['HNO3', { 'NO3-': 1, 'H+': 1, water: 0 }],
    ['Cu(NO3)2', { 'Cu+2': 1, 'NO3-': 2, water: 0 }],
    // Ammonium is ammonia and the hydrogen ion that came with it.
    ['NH4NO3', { NH3: 1, 'NO3-': 1, 'H+': 1, water: 0 }],
    ['(NH4)2SO4', { NH3: 2, 'SO4-2': 1, 'H+': 2, water: 0 }],
    ['NH3', { NH3: 1, water: 0 }],
    ['NaHCO3', { 'Na+': 1, 'CO3-2': 1, 'H+': 1, water: 0 }],
    ['Na2CO3', { 'Na+': 2, 'CO3-2': 1, water: 0 }],
    ['CaCO3', { 'Ca+2': 1, 'CO3-2': 1, water: 0 }],
    // Hydroxide is water less a hydrogen ion, an oxide the same with one water fewer.
    ['Ca(OH)2', { 'Ca+2': 1, 'H+': -2, water: 2 }],
    ['CaO', { 'Ca+2': 1, 'H+': -2, water: 1 }],
    ['NaOH', { 'Na+': 1, 'H+': -1, water: 1 }],
    ['CO2', { 'CO3-2': 1, 'H+': 2, water: -1 }],
    ['Sn(NO3)4', { 'Sn+4': 1, 'NO3-': 4, water: 0 }],
    ['NaCl', { 'Na+': 1, 'Cl-': 1, water: 0 }],
  ])('%s', (formula, expected) => {
    expect(brings(formula)).toEqual(expected);
  });

  it('has no charge, and every atom of the formula', () => {
    const atomsOf = new Map<string, string>([
      ['NO3-', 'NO3'],
      ['SO4-2', 'SO4'],
      ['CO3-2', 'CO3'],
      ['NH3', 'NH3'],
    ]);
    for (const formula of ['HNO3', 'NH4NO3', '(NH4)2SO4', 'NaHCO3', 'Ca(OH)2', 'CO2', 'Al(NO3)3']) {
      const { of, water } = broughtBy(formula);
      const atoms = new Map<string, number>([
        ['H', 2 * water],
        ['O', water],
      ]);
      let charge = 0;
      for (const [component, n] of of) {
        charge += n * chargeOf(component);
        for (const [element, count] of parsed(atomsOf.get(component) ?? component.replace(/[+-]\d*$/, '')))
          atoms.set(element, (atoms.get(element) ?? 0) + n * count);
      }
      expect(charge, formula).toBe(0);
      const found = [...atoms].filter(([, n]) => n !== 0).sort();
      expect(found, formula).toEqual([...parsed(formula)].sort());
    }
  });

  it('is refused for an element that the model does not hold', () => {
    expect(() => broughtBy('KNO3')).toThrow('the model does not hold K of KNO3');
  });

  it.each([
    ['Ca(OH)2', 2],
    ['CaO', 2],
    ['Mg(OH)2', 2],
    ['NaOH', 1],
    ['CaCO3', 2],
    ['Na2CO3', 2],
    ['NaHCO3', 1],
  ])('of %s stands for %i of hydroxide', (formula, hydroxide) => {
    expect(hydroxideIn(formula)).toBe(hydroxide);
  });

  it('adds up by amounts', () => {
    const { of, water } = totalsOf([
      [broughtBy('HNO3'), 2],
      [broughtBy('Ca(OH)2'), 0.5],
    ]);
    expect(Object.fromEntries(of)).toEqual({ 'NO3-': 2, 'H+': 1, 'Ca+2': 0.5 });
    expect(water).toBe(1);
  });
});

describe('a reaction as it is printed', () => {
  it('tells what its one new substance is made of, on whichever side it stands', () => {
    const hydroxide = partsIn('2 H2O + Cu+2 = Cu(OH)2 + 2 H+');
    expect(Object.fromEntries(hydroxide.of)).toEqual({ 'Cu+2': 1, 'H+': -2 });
    expect(hydroxide.water).toBe(2);
    const solid = partsIn('PbO:0.33H2O + 2 H+ = 1.33 H2O + Pb+2');
    expect(Object.fromEntries(solid.of)).toEqual({ 'Pb+2': 1, 'H+': -2 });
    expect(solid.water).toBe(1.33);
  });

  it('is refused where it makes nothing, two things, or twice one', () => {
    for (const reaction of ['H+ + H2O = H+', 'Cu+2 + X = Y', 'Cu+2 = 2 CuX', 'Cu+2 + ?? ! = CuX'])
      expect(() => partsIn(reaction), reaction).toThrow();
  });

  it('charges stand at the end of a name', () => {
    expect(['Cu+2', 'NO3-', 'Cu2(OH)2+2', 'Cu(OH)2', 'H+', 'SO4-2'].map(chargeOf)).toEqual([
      2, -1, 2, 0, 1, -2,
    ]);
  });
});

describe('solids that are there', () => {
  const system = systemOf(
    'sit',
    new Set(components.filter((c) => ['Pb+2', 'Cu+2', 'Cl-', 'CO3-2', 'NO3-'].includes(c))),
    ['Cu(OH)2(s)', 'Cu2(OH)3Cl(s)', 'Cerussite', 'Hydrocerussite', 'PbO:0.33H2O(s)', 'CO2(g)'].map((id) => ({
      id,
    })),
  );
  const numberOf = (id: string) => system.phases.findIndex((p) => p.id === id);
  const numbers = (...ids: readonly string[]) => ids.map(numberOf);

  it('fix one activity each, a metal first, and everything is written by the rest', () => {
    const both = assemblageOf(system, numbers('Cu(OH)2(s)', 'Cu2(OH)3Cl(s)'));
    if (!both) throw new Error('these two are not made of each other');
    expect(both.fixed.map((k) => system.components[k])).toEqual(['Cu+2', 'Cl-']);
    expect(both.free).toHaveLength(system.components.length - 2);
    // Both have a fixed activity product, so that neither rises with any free component nor with the water.
    for (const q of both.phases) {
      expect(rowTimes(both.phaseNu, q, new Float64Array(both.free.length).fill(1))).toBe(0);
      expect(both.phaseWater[q]).toBeCloseTo(0, 12);
    }
  });

  it('that are made of each other are refused together, and it is told of what', () => {
    const lead = numbers('Cerussite', 'PbO:0.33H2O(s)');
    const two = assemblageOf(system, lead);
    if (!two) throw new Error('these two are not made of each other');
    const third = numberOf('Hydrocerussite');
    // 2 PbCO3 + Pb(OH)2, as far as components go.
    expect(madeOf(two, system.phases[third]?.nu ?? new Float64Array())).toEqual([2, 1]);
    expect(assemblageOf(system, [...lead, third])).toBeUndefined();
    expect(assemblageOf(system, numbers('Cerussite', 'Hydrocerussite', 'CO2(g)'))).toBeUndefined();
  });

  it('none leave all components free', () => {
    const none = assemblageOf(system, []);
    expect(none?.free).toEqual(system.components.map((_, k) => k));
    expect([...(none?.water ?? [])]).toEqual([...system.water]);
  });

  it('all have a reaction that neither makes nor loses charge', () => {
    for (const { id } of system.phases) {
      const charge = [...phaseOf(id).parts.of].reduce((sum, [c, n]) => sum + n * chargeOf(c), 0);
      expect(charge, id).toBe(0);
    }
  });
});

describe('a set of equations', () => {
  it('is solved whatever the order of its rows', () => {
    const matrix = fc.array(fc.integer({ min: -9, max: 9 }), { minLength: 9, maxLength: 9 });
    fc.assert(
      fc.property(matrix, fc.tuple(fc.integer(), fc.integer(), fc.integer()), (rows, wanted) => {
        const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0, i = 0] = rows;
        fc.pre(a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g) !== 0);
        const [x, y, z] = wanted.map((n) => n % 100) as [number, number, number];
        const right = Float64Array.of(a * x + b * y + c * z, d * x + e * y + f * z, g * x + h * y + i * z);
        eliminate(Float64Array.from(rows), right, 3);
        for (const [k, n] of [x, y, z].entries()) expect(right[k]).toBeCloseTo(n, 6);
      }),
    );
  });
});
