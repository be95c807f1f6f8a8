import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { atPh } from '../../../src/chemistry/equilibrium/at-ph';
import { Climb } from '../../../src/chemistry/equilibrium/climb';
import { Pot, type Titration } from '../../../src/chemistry/equilibrium/pot';
import type { Component } from '../../../src/chemistry/equilibrium/reaction';
import { type Equilibrium, solverOf } from '../../../src/chemistry/equilibrium/solve';
import { broughtBy, totalsOf } from '../../../src/chemistry/equilibrium/substances';
import { carbonDioxide, systemOf } from '../../../src/chemistry/equilibrium/system';
import { type Point, titrate } from '../../../src/chemistry/equilibrium/titration';
import { saturation } from '../../../src/chemistry/equilibrium/told';
import {
  anyDose,
  anyDoses,
  anyGas,
  anyTitration,
  between,
  chargeLeft,
  demand,
  hydroxides,
  largestGap,
  ofBases,
  ofCarbonate,
  ofMetals,
  putIn,
  waterFound,
} from './any-liquor';

/** As many liquors as go into a second and a half, so that the machine's pace does not decide whether the test ends. */
const bounded: fc.Parameters<unknown> = {
  numRuns: 100_000,
  interruptAfterTimeLimit: 1500,
  endOnFailure: true,
};

const curve = (titration: Titration, shares: readonly number[]): readonly Point[] => {
  const all = demand(titration);
  const bases = shares.map((share) => share * all).sort((a, b) => a - b);
  const titrated = titrate(titration, bases);
  if (!titrated.ok) throw new Error(JSON.stringify(titrated.failure));
  return titrated.value;
};

const straight = (titration: Titration, base: number, gone = 0): Equilibrium => {
  const solved = new Pot(titration).at(base, gone);
  if (!solved.ok) throw new Error(`${base}: ${JSON.stringify(solved.failure)}`);
  return solved.value;
};

describe('at any dose of any base, of any liquor', () => {
  it('everything that was put in is found in solution, solids and gas, and charges cancel', () => {
    fc.assert(
      fc.property(anyTitration(), anyDoses(8), (titration, shares) => {
        const points = curve(titration, shares);
        const gaps = points.map(({ base, at, gas }) => largestGap(titration, base, at, gas));
        expect(Math.max(...gaps)).toBeLessThan(1e-9);
        expect(Math.max(...points.map(({ at }) => chargeLeft(at)))).toBeLessThan(1e-9);
      }),
      bounded,
    );
  });

  it('water closes: what the liquor had, what the base brought, what neutralising made', () => {
    fc.assert(
      fc.property(anyTitration(), anyDoses(8), (titration, shares) => {
        const before = straight({ ...titration, solids: [], gas: 'none' }, 0);
        expect(before.water).toBeCloseTo(1, 6);
        const start = waterFound(before, 0);
        const gaps = curve(titration, shares).map(({ base, at, gas }) => {
          const brought = putIn(titration, base).water - putIn(titration, 0).water;
          return Math.abs(waterFound(at, gas) / (start + brought) - 1);
        });
        expect(Math.max(...gaps)).toBeLessThan(1e-9);
      }),
      bounded,
    );
  });

  it('a solid that is there is saturated, and none that is not there is supersaturated', () => {
    fc.assert(
      fc.property(anyTitration(), anyDoses(8), (titration, shares) => {
        for (const { at } of curve(titration, shares)) {
          const off = titration.solids.filter(({ id }) => {
            const amount = at.solids.get(id);
            const over = saturation(at, id);
            return amount === undefined
              ? over !== undefined && over > 1e-6
              : amount < 0 || over === undefined || Math.abs(over) > 1e-6;
          });
          expect(off).toEqual([]);
        }
      }),
      bounded,
    );
  });

  it('carbon dioxide bubbles at 1 atm, stands at the air’s 10^−3.4 where it is open, and never bubbles where closed', () => {
    fc.assert(
      fc.property(anyTitration(), anyDoses(4), (titration, shares) => {
        for (const { at } of curve(titration, shares)) {
          const pressure = saturation(at, carbonDioxide);
          const bubble = at.solids.get(carbonDioxide);
          if (titration.gas === 'open') expect(pressure).toBeCloseTo(-3.4, 6);
          else if (bubble !== undefined) {
            expect(['vent', 'leaves']).toContain(titration.gas);
            expect(bubble).toBeGreaterThanOrEqual(0);
            expect(pressure).toBeCloseTo(0, 6);
          } else if (titration.gas === 'vent' || titration.gas === 'leaves')
            expect(pressure ?? -1).toBeLessThan(1e-6);
        }
      }),
      bounded,
    );
  });

  it('the same comes out straight and along a curve', () => {
    fc.assert(
      fc.property(anyTitration(), anyDoses(12), (titration, shares) => {
        const points = curve(titration, shares);
        const last = points[points.length - 1];
        if (!last) return;
        const gone = titration.gas === 'leaves' ? (points[points.length - 2]?.gas ?? 0) : 0;
        const alone = straight(titration, last.base, gone);
        expect(Math.abs(alone.pH - last.at.pH)).toBeLessThan(1e-6);
      }),
      bounded,
    );
  });

  it('so much more of everything, in so much more water, has the same pH', () => {
    fc.assert(
      fc.property(anyTitration(), anyDose, between(1e-3, 1e3), (titration, share, factor) => {
        const base = share * demand(titration);
        const substances = new Map(
          [...titration.liquor.substances].map(([formula, n]) => [formula, n * factor]),
        );
        const more = { ...titration, liquor: { substances, waterKilograms: factor } };
        expect(Math.abs(straight(more, base * factor).pH - straight(titration, base).pH)).toBeLessThan(1e-6);
      }),
      bounded,
    );
  });
});

describe('more of', () => {
  // Past saturation with the base itself, and with carbonates, pH may fall by a hair: water goes into the solid, or carbon
  // dioxide is made beside hydroxide. So hydroxides only, and only before the base is left over.
  it('a hydroxide raises the pH, until the liquor is saturated with it', () => {
    fc.assert(
      fc.property(
        anyTitration({ reagents: hydroxides, gas: ['none', 'closed'] }),
        anyDoses(12),
        (titration, shares) => {
          let before = Number.NEGATIVE_INFINITY;
          for (const { at } of curve(titration, shares)) {
            if (ofBases.some((id) => at.solids.has(id))) return;
            expect(at.pH).toBeGreaterThan(before - 1e-6);
            before = at.pH;
          }
        },
      ),
      bounded,
    );
  });

  it('the acid never needs less base to a pH', () => {
    fc.assert(
      fc.property(
        anyTitration({ reagents: hydroxides, gas: ['none'] }),
        fc.integer({ min: 10, max: 100 }).map((tenths) => tenths / 10),
        between(1.001, 3),
        (titration, pH, factor) => {
          const acid = titration.liquor.substances.get('HNO3') ?? 0;
          const substances = new Map([...titration.liquor.substances, ['HNO3', acid * factor]]);
          const sourer = { ...titration, liquor: { ...titration.liquor, substances } };
          const few = baseTo(titration, pH);
          const more = baseTo(sourer, pH);
          if (few !== undefined && more !== undefined) expect(more).toBeGreaterThan(few * (1 - 1e-6) - 1e-9);
        },
      ),
      bounded,
    );
  });
});

/** Hydroxide to a pH by halving, undefined where it is not reached. */
function baseTo(titration: Titration, pH: number): number | undefined {
  const pot = new Pot(titration);
  const pHAt = (base: number): number => {
    const solved = pot.at(base);
    if (!solved.ok) throw new Error(`${base}: ${JSON.stringify(solved.failure)}`);
    return solved.value.pH;
  };
  let [low, high] = [0, 1.5 * demand(titration)];
  if (pHAt(0) > pH || pHAt(high) < pH) return undefined;
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (pHAt(middle) < pH) low = middle;
    else high = middle;
  }
  return high;
}

const copperLiquor: Titration = {
  model: 'sit',
  liquor: { substances: new Map([['HNO3', 1] as const, ['Cu(NO3)2', 0.2] as const]), waterKilograms: 1 },
  reagent: 'Ca(OH)2',
  solids: [{ id: 'Cu(OH)2(s)' }],
  gas: 'none',
};

describe('what has no equilibrium is told', () => {
  it('with the dose at which a curve ended, and the points before it are not handed out as a curve', () => {
    const titrated = titrate(copperLiquor, [0.1, Number.NaN, 0.3]);
    expect(titrated).toMatchObject({ ok: false, failure: { code: 'not-converged', base: Number.NaN } });
  });

  it('with the gap that is left and whose it is, where steps run out', () => {
    const { system, start } = straight(copperLiquor, 0.1);
    const few = { rise: 2.5, follow: 1, most: 2 };
    const solved = new Climb(system).run(putIn(copperLiquor, 1.3), { kilograms: 1 }, start, few);
    if (solved.ok) throw new Error('two steps were enough');
    expect(solved.failure.code).toBe('not-converged');
    expect(solved.failure.gap).toBeGreaterThan(1e-9);
    expect(system.components).toContain(solved.failure.component);
  });

  it.each([
    ['no number of acid', { HNO3: Number.NaN }, 1],
    ['no number of a metal', { HNO3: 1, 'Cu(NO3)2': Number.NaN }, 1],
    ['boundless acid', { HNO3: Number.POSITIVE_INFINITY }, 1],
    ['less than no copper', { HNO3: 1, 'Cu(NO3)2': -0.1 }, 1],
    ['no number of water', { HNO3: 1 }, Number.NaN],
    ['no water', { HNO3: 1 }, 0],
  ])('for a liquor with %s', (_, parts, waterKilograms) => {
    const liquor = { substances: new Map(Object.entries(parts)), waterKilograms };
    const pot = new Pot({ ...copperLiquor, liquor });
    expect(pot.failure).toMatchObject({ code: 'not-converged' });
    expect(pot.at(0.1)).toMatchObject({ ok: false, failure: { code: 'not-converged' } });
  });

  it('for less than no base', () => {
    expect(new Pot(copperLiquor).at(-0.1)).toMatchObject({ ok: false, failure: { code: 'not-converged' } });
  });

  it.each(anyGas)('and a pot goes on after a failure as if it had not been, gas %s', (gas) => {
    const pot = new Pot({ ...copperLiquor, gas });
    expect(pot.at(Number.NaN).ok).toBe(false);
    const after = pot.at(0.5);
    expect(after.ok && after.value.pH).toBeCloseTo(straight({ ...copperLiquor, gas }, 0.5).pH, 6);
  });
});

describe('liquors at the edge', () => {
  const only = (parts: Readonly<Record<string, number>>): Titration => ({
    ...copperLiquor,
    liquor: { substances: new Map(Object.entries(parts)), waterKilograms: 1 },
  });

  it('pure water is neutral', () => {
    expect(straight(only({}), 0).pH).toBeCloseTo(6.9985, 4);
  });

  it('a substance of which there is none changes nothing', () => {
    const without = straight(only({ HNO3: 1 }), 0.5);
    const with0 = straight(only({ HNO3: 1, 'Cu(NO3)2': 0, NaCl: 0 }), 0.5);
    expect(with0.pH).toBe(without.pH);
  });

  it('alkali without acid is as alkaline as it should be', () => {
    for (const model of ['sit', 'davies'] as const) {
      const { pH, water, moles, system } = straight({ ...only({ NaOH: 0.1 }), model }, 0);
      expect(pH).toBeGreaterThan(12.8);
      expect(pH).toBeLessThan(12.95);
      expect((moles[system.species.indexOf('OH-')] ?? 0) / water).toBeCloseTo(0.1, 6);
    }
  });

  it('acid and alkali in equal parts are neutral, however strong', () => {
    for (const n of [1e-3, 0.1, 1, 6])
      expect(straight({ ...only({ HNO3: n }), reagent: 'NaOH' }, n).pH).toBeCloseTo(7, 0);
  });
});

/** Liquors, once found among the many above, in which a solver may run in circles. */
describe('where solids and coefficients lean on each other', () => {
  const solids = [...ofMetals, ...ofBases, ...ofCarbonate].map((id) => ({ id }));

  it('barium nitrate that comes and goes in 13 mol/kg of ions settles on what is not there', () => {
    const liquor = {
      substances: new Map(
        Object.entries({
          HNO3: 5.8,
          'Cu(NO3)2': 0.0084,
          'Zn(NO3)2': 0.00017,
          'Fe(NO3)3': 0.048,
          AgNO3: 0.053,
          'Pb(NO3)2': 0.493,
          'Pd(NO3)2': 0.356,
          'Ba(NO3)2': 0.492,
          'Sn(NO3)4': 0.00062,
          'Al(NO3)3': 0.495,
          NH4NO3: 0.149,
          NaCl: 0.173,
          Na2SO4: 0.00276,
        }),
      ),
      waterKilograms: 1,
    };
    const at = straight({ ...copperLiquor, liquor, reagent: 'Mg(OH)2', solids, gas: 'leaves' }, 1.355);
    expect(at.solids.get('Ba(NO3)2(s)') ?? 0).toBeGreaterThanOrEqual(0);
    expect(at.steps).toBeLessThan(60);
  });

  it('barium nitrate comes out of 12 mol/kg of ions though Newton’s own step would lead astray', () => {
    const liquor = {
      substances: new Map(
        Object.entries({
          HNO3: 5.958,
          'Ni(NO3)2': 0.052,
          'Zn(NO3)2': 0.0769,
          'Pb(NO3)2': 0.497,
          'Pd(NO3)2': 0.497,
          'Ba(NO3)2': 0.5,
          'Al(NO3)3': 0.0032,
          NH4NO3: 0.995,
          NaCl: 0.4106,
        }),
      ),
      waterKilograms: 1,
    };
    const at = straight({ ...copperLiquor, liquor, solids }, 0.0236);
    expect(at.solids.get('Ba(NO3)2(s)')).toBeGreaterThan(0);
    expect(at.steps).toBeLessThan(60);
  });

  it('hydrocerussite, under air made of cerussite alone, takes its place', () => {
    const present = new Set<Component>(['Pb+2', 'Na+', 'NO3-', 'CO3-2']);
    // With a constant that keeps it away, then with its own, from where the first has ended.
    const lead = (logK?: number) =>
      systemOf('sit', present, [
        { id: 'Cerussite' },
        { id: 'Hydrocerussite', ...(logK === undefined ? {} : { logK }) },
        { id: carbonDioxide, logSaturation: -3.4, held: true },
      ]);
    const totals = totalsOf([
      [broughtBy('Pb(NO3)2'), 1e-3],
      [broughtBy('NaHCO3'), 0.01],
    ]);
    const pace = { rise: 2.5, follow: 1, most: 200 };
    const water = { kilograms: 1 };
    const kept = solverOf(lead(30))(totals, water);
    if (!kept.ok) throw new Error(JSON.stringify(kept.failure));
    expect(kept.value.solids.get('Cerussite')).toBeGreaterThan(0);
    const after = new Climb(lead()).run(totals, water, kept.value.start, pace);
    if (!after.ok) throw new Error(JSON.stringify(after.failure));
    expect(after.value.solids.has('Cerussite')).toBe(false);
    expect(after.value.solids.get('Hydrocerussite')).toBeCloseTo(
      (kept.value.solids.get('Cerussite') ?? Number.NaN) / 3,
      6,
    );
    expect(saturation(after.value, 'Cerussite')).toBeLessThan(0);
  });
});

describe('a pH that is held', () => {
  const held = (parts: Partial<Record<Component, number>>, pH: number, kilograms = 1) => {
    const totals = new Map(Object.entries(parts) as [Component, number][]);
    return atPh({ model: 'sit', totals, kilograms, phases: [{ id: 'Cu(OH)2(s)' }] })(pH);
  };

  it('is held, with as much nitrate as makes the liquor neutral', () => {
    for (const pH of [0, 3, 5, 8, 12]) {
      const solved = held({ 'Cu+2': 0.1, 'Na+': 0.1 }, pH);
      if (!solved.ok) throw new Error(JSON.stringify(solved.failure));
      expect(solved.value.pH).toBeCloseTo(pH, 12);
      expect(chargeLeft(solved.value)).toBeLessThan(1e-9);
      expect(solved.value.water).toBeCloseTo(1, 12);
    }
  });

  it('a metal of which there is none changes nothing', () => {
    const [without, with0] = [held({ 'Na+': 0.1 }, 5), held({ 'Na+': 0.1, 'Cu+2': 0 }, 5)];
    expect(with0.ok && with0.value.ionicStrength).toBe(without.ok && without.value.ionicStrength);
  });

  it.each([
    ['that no nitrate makes neutral', held({}, 9)],
    ['above what the sodium allows', held({ 'Na+': 0.1 }, 14)],
    ['that is no number', held({ 'Na+': 0.1 }, Number.NaN)],
    ['in an amount that is none', held({ 'Na+': Number.NaN }, 5)],
    ['in less than nothing', held({ 'Cu+2': -0.1, 'Na+': 0.1 }, 5)],
    ['in no water', held({ 'Na+': 0.1 }, 5, 0)],
  ])('is refused as a value: %s', (_, solved) => {
    expect(solved).toMatchObject({ ok: false, failure: { code: 'not-converged' } });
  });
});
