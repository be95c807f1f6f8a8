import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { baseNeeded } from '../../../../src/chemistry/base-needed';
import { liquorFrom } from '../../../../src/chemistry/liquor';
import { loadOf } from '../../../../src/chemistry/load';
import { baseTo } from '../../../../src/chemistry/treatment/base-to';
import { plus } from '../../../../src/quantities/expression';
import { workedOut } from '../../../../src/quantities/figure';
import { type BaseId, baseIds } from '../../../../src/reference/tables';
import { loadWith } from './treated-load';

const hydroxide = (base: BaseId, load: ReturnType<typeof loadWith>, pH: number): number => {
  const to = baseTo(base, load, pH);
  if (!to.ok) throw new Error(`${base} to ${pH}: ${to.why.code}`);
  return to.needed.hydroxide.value.toNumber();
};

const liquors = fc.record({
  litres: fc.double({ min: 0.2, max: 60, noNaN: true }),
  acid: fc.double({ min: 0.01, max: 4, noNaN: true }),
  Cu: fc.double({ min: 0.05, max: 40, noNaN: true }),
  Ni: fc.double({ min: 0.05, max: 20, noNaN: true }),
});
const few = { numRuns: 8 };

describe('base to a pH', () => {
  it('is the sum of acid and metal charge within 1.5 % at pH 9.5, whatever the liquor', () => {
    fc.assert(
      fc.property(liquors, ({ litres, acid, Cu, Ni }) => {
        const load = loadWith(litres, acid, { Cu, Ni });
        const sum = baseNeeded('hydrated-lime', load)?.hydroxide.value.toNumber() ?? 0;
        expect(Math.abs(hydroxide('hydrated-lime', load, 9.5) / sum - 1)).toBeLessThan(0.015);
      }),
      few,
    );
  });

  it('grows with the acid and with the pH', () => {
    fc.assert(
      fc.property(liquors, ({ litres, acid, Cu, Ni }) => {
        const load = loadWith(litres, acid, { Cu, Ni });
        const more = loadWith(litres, acid * 1.1, { Cu, Ni });
        const [to5, to7, to9] = [5, 7, 9].map((pH) => hydroxide('caustic-soda', load, pH));
        // Nickel hardly rests between: the two may be the same dose to the last digits.
        expect(to5).toBeLessThanOrEqual((to7 ?? 0) * (1 + 1e-6));
        expect(to7).toBeLessThanOrEqual(to9 ?? 0);
        expect(hydroxide('caustic-soda', more, 9)).toBeGreaterThan(to9 ?? 0);
      }),
      few,
    );
  });

  it('is the same in other units', () => {
    const inLitres = loadWith(2.5, 0.8, { Cu: 12 });
    const inMillilitres = loadOf(
      liquorFrom({
        origin: 'test',
        volume: { value: '2500', unit: 'mL' },
        findings: [{ by: 'assay', metal: 'Cu', concentration: { value: '12000', unit: 'mg/L' } }],
        freeAcid: [{ by: 'titration', result: { value: '0.8', unit: 'mol/L' } }],
      }),
      'test',
    );
    expect(hydroxide('hydrated-lime', inMillilitres, 9)).toBeCloseTo(
      hydroxide('hydrated-lime', inLitres, 9),
      6,
    );
  });

  it('is as wide as the acid is uncertain: one mole of acid is one of base', () => {
    const to = baseTo('caustic-soda', loadWith(10, 1, { Cu: 0.01 }, '20'), 9);
    if (!to.ok) throw new Error(to.why.code);
    const { low, value, high } = to.needed.hydroxide;
    // ± 2.0 mol of the 10 mol of acid; ± 2 % of the model and ± 1 % of the volume hardly add to it.
    expect(high.minus(value).toNumber()).toBeGreaterThan(1.99);
    expect(high.minus(value).toNumber()).toBeLessThan(2.06);
    expect(value.minus(low).toNumber()).toBeCloseTo(high.minus(value).toNumber(), 1);
  });

  it('holds both ways that copper may come down, as the reference solver has them', () => {
    // Cases T03 and T01 (PHREEQC 3.8.9): 1 kg of water, 1 mol of acid, 0.1 of copper, 0.05 of nickel, lime to pH 7: 1.150 mol
    // where basic copper nitrate may form, 1.198 where it may not.
    const to = baseTo('hydrated-lime', loadWith(1, 1, { Cu: 6.3546, Ni: 2.93467 }, '0.1'), 7);
    if (!to.ok) throw new Error(to.why.code);
    expect(to.needed.hydroxide.low.toNumber()).toBeLessThan(1.15);
    expect(to.needed.hydroxide.high.toNumber()).toBeGreaterThan(1.198);
    expect(to.needed.hydroxide.value.toNumber()).toBeCloseTo(1.15, 2);
  });

  it('is no wider for it at pH 9, where both have come to the same', () => {
    const to = baseTo('hydrated-lime', loadWith(10, 1, { Cu: 25 }, '0.1'), 9.2);
    if (!to.ok) throw new Error(to.why.code);
    const { low, value } = to.needed.hydroxide;
    expect(value.minus(low).div(value).toNumber()).toBeLessThan(0.04);
  });

  it('of a carbonate runs from carbon dioxide stirred out to carbon dioxide that stands over it', () => {
    const to = baseTo('soda-ash', loadWith(10, 0.8, { Cu: 12.5 }, '0.1'), 9);
    if (!to.ok) throw new Error(to.why.code);
    // Stirred out, no more than the charge of acid and copper goes in: 8 + 2 × 1.967 mol.
    expect(to.needed.hydroxide.low.toNumber()).toBeLessThan(12.2);
    expect(to.needed.hydroxide.high.toNumber()).toBeGreaterThan(13.5);
  });

  it('of very thin wash water needs what the pH itself takes', () => {
    const to = baseTo('caustic-soda', loadWith(10, 0.00001, {}), 10);
    // 1e-5 mol/L of acid and about 1.1e-4 mol/kg of hydroxide in ten litres.
    expect(to.ok && to.needed.hydroxide.value.toNumber()).toBeCloseTo(0.0011, 3);
  });

  it('counts barium with a carbonate', () => {
    const to = baseTo('soda-ash', loadWith(10, 0.01, { Ba: 30 }), 8.5);
    // 2 × 300 g ÷ 137.327 g/mol and 0.1 mol of acid.
    expect(to.ok && to.needed.hydroxide.value.toNumber()).toBeGreaterThan(4.4);
  });
});

it('of two liquors adds up: each goes its own way in the model', () => {
  const two = [loadWith(10, 1, { Cu: 25 }, '5', 'one'), loadWith(3, 0.1, { Ni: 4 }, '5', 'other')].map(
    (load) => {
      const to = baseTo('hydrated-lime', load, 7);
      if (!to.ok) throw new Error(to.why.code);
      return to.needed.mass;
    },
  );
  const [a, b] = two;
  if (!a || !b) throw new Error('two');
  const sum = workedOut({ sentence: 'Both', unit: 'g', formula: plus(a, b) });
  expect(sum.high.gt(sum.value)).toBe(true);
});

describe('a base that cannot reach the pH', () => {
  const load = loadWith(5, 1, { Cu: 6.4, Ni: 2.9 });
  const endOf = (base: BaseId): number => {
    const to = baseTo(base, load, 12.2);
    return to.ok || to.why.code !== 'stalls' ? Number.NaN : to.why.pH;
  };

  it('is named with the pH at which it ends', () => {
    expect(endOf('limestone')).toBeGreaterThan(5.2);
    expect(endOf('limestone')).toBeLessThan(5.6);
    expect(endOf('magnesium-hydroxide')).toBeGreaterThan(8.5);
    expect(endOf('magnesium-hydroxide')).toBeLessThan(9.3);
    expect(endOf('sodium-bicarbonate')).toBeLessThan(8.5);
  });

  it('says where air takes it once its carbon dioxide is gone', () => {
    const to = baseTo('limestone', load, 6.5);
    // Case T11 (PHREEQC 3.8.9): limestone in the open comes to pH 7.1.
    expect(!to.ok && to.why.code === 'stalls' && to.why.aired).toBeCloseTo(7.1, 1);
  });

  it('is none of lime and caustic soda', () => {
    for (const base of ['hydrated-lime', 'quicklime', 'caustic-soda'] as const)
      expect(baseTo(base, load, 11.5).ok, base).toBe(true);
  });

  it('leaves nickel where it ends', () => {
    const to = baseTo('limestone', load, 5);
    expect(to.ok && to.needed.leaves).toEqual(['Ni']);
  });
});

describe('a load of which the free acid is not known', () => {
  it('gets no figure from any base', () => {
    const load = loadOf(
      liquorFrom({ origin: 'test', volume: { value: '5', unit: 'L' }, findings: [], freeAcid: [] }),
      'test',
    );
    for (const base of baseIds)
      expect(baseTo(base, load, 9)).toEqual({ ok: false, why: { code: 'acid-open' } });
  });
});

describe('a load that tells an impossible amount', () => {
  it('still ends, with a figure or with a reason', () => {
    const load = loadWith(1, 15, { Cu: 300, Fe: 200, Al: 100 });
    for (const base of baseIds) expect(typeof baseTo(base, load, 9).ok).toBe('boolean');
  });
});
