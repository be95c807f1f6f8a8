import Decimal from 'decimal.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { residualCurve } from '../../../../src/chemistry/treatment/residual-curve';
import { decadesAround, factorAt, modelHoldsAt } from '../../../../src/chemistry/treatment/residual-ends';
import { levelsOf } from '../../../../src/chemistry/treatment/residual-levels';
import { type Residual, residualsAt } from '../../../../src/chemistry/treatment/residuals';
import { exact, given } from '../../../../src/quantities/figure';
import { formulaText } from '../../../../src/quantities/formula-text';
import type { BaseId, Metal } from '../../../../src/reference/tables';
import { loadWith } from './treated-load';

const liquor = loadWith(6.7, 0.58, { Cu: 17.6, Ni: 6.2, Zn: 0.5 });

type Metals = Readonly<Partial<Record<Metal, number>>>;

const bandsAt = (metals: Metals, pH: number, base: BaseId = 'hydrated-lime', acid = 0.58) => {
  const found = residualsAt(loadWith(6.7, acid, metals), base, pH);
  if (!found.ok) throw new Error(found.failure.code);
  return new Map(found.value.residuals.map((r) => [r.metal, r]));
};
const predicted = (residual: Residual | undefined) => {
  if (!residual?.predicted) throw new Error('not predicted');
  return residual;
};
const band = (residual: Residual | undefined) => {
  const { low, high } = predicted(residual).band;
  return [low.toNumber(), high.toNumber()];
};

describe('a residual is a band of whole powers of ten', () => {
  it.each([
    [0.58, 0.58, 0.1, 1],
    [1, 1, 1, 1],
    [0.99, 1.01, 0.1, 10],
    [1, 10, 1, 10],
    [0, 3, 0, 10],
    [1e-7, 2500, 1e-7, 10_000],
  ])('%d to %d mg/L is told as %d to %d', (low, high, from, to) => {
    const told = decadesAround(new Decimal(low), new Decimal(high));
    expect([told.low.toNumber(), told.high.toNumber()]).toEqual([from, to]);
  });

  it('copper and nickel at pH 10 stand at what lime and settle reaches: 0.1 to 1', () => {
    const at = bandsAt({ Cu: 17.6, Ni: 6.2 }, 10);
    for (const metal of ['Cu', 'Ni'] as const) {
      expect(band(at.get(metal))).toEqual([0.1, 1]);
      expect(predicted(at.get(metal)).madeBy).toEqual({ low: 'technology', high: 'technology' });
    }
    expect(predicted(at.get('Cu')).high.value.toNumber()).toBe(0.58);
    expect(predicted(at.get('Cu')).high.sources[0]?.status).toBe('memory');
  });

  it('nickel at pH 9 is told as up to 100: five times the 3.3 mg/L beside fresh hydroxide at 2.1 mol/kg', () => {
    const nickel = predicted(bandsAt({ Cu: 17.6, Ni: 6.2 }, 9).get('Ni'));
    expect([nickel.band.low.toNumber(), nickel.band.high.toNumber()]).toEqual([0.1, 100]);
    expect(nickel.madeBy).toEqual({ low: 'technology', high: 'model' });
    expect(formulaText(nickel.high.formula ?? { op: 'number', value: new Decimal(0) })).toMatch(
      /^3\.\d+\smg\/L × 5$/,
    );
  });

  it('nickel at pH 6 is all there: its own range, and not more', () => {
    const nickel = predicted(bandsAt({ Cu: 17.6, Ni: 6.2 }, 6).get('Ni'));
    expect(nickel.madeBy.high).toBe('all-there-is');
    expect(nickel.allDissolved).toBe(true);
    expect(nickel.high.value.toNumber()).toBeCloseTo(6200, 3);
    expect(nickel.high.high.gt(nickel.high.value)).toBe(true);
    expect(band(nickel)).toEqual([1000, 10_000]);
  });

  it('0.2 mg/L of copper stays 0.2 at the most, though lime and settle reaches 0.58 only', () => {
    const copper = predicted(bandsAt({ Cu: 0.0002 }, 9.5).get('Cu'));
    expect(copper.high.value.toNumber()).toBeCloseTo(0.2, 6);
    expect(copper.madeBy).toEqual({ low: 'all-there-is', high: 'all-there-is' });
  });

  it.each([
    [0.4999, '3'],
    [0.5, '5'],
    [2.999, '5'],
    [3, '10'],
    [8, '10'],
  ])('at %d mol/kg the upper end is the model times %s', (strength, factor) => {
    expect(factorAt(strength)).toBe(factor);
  });

  it.each([
    [3, 'yes'],
    [3.001, 'doubtful'],
    [9, 'doubtful'],
    [9.001, 'outside'],
  ])('at %d mol/kg the model holds: %s', (strength, holds) => {
    expect(modelHoldsAt(strength)).toBe(holds);
  });
});

describe('nothing is foretold of', () => {
  it('tin at any pH, and palladium from pH 4 on; below it stays dissolved', () => {
    const metals = { Cu: 5, Sn: 0.5, Pd: 0.02 };
    expect(bandsAt(metals, 9).get('Sn')).toEqual({ metal: 'Sn', predicted: false, why: 'tin' });
    expect(bandsAt(metals, 4).get('Pd')).toEqual({ metal: 'Pd', predicted: false, why: 'palladium' });
    expect(bandsAt(metals, 2).get('Sn')).toMatchObject({ predicted: false });
    expect(bandsAt(metals, 2).get('Pd')).toMatchObject({ predicted: true, madeBy: { high: 'all-there-is' } });
  });

  it('palladium on a curve, but where the curve begins below pH 4', () => {
    const load = loadWith(1, 0.5, { Cu: 5, Pd: 0.02 });
    const why = (from: number) => {
      const curve = residualCurve(load, 'hydrated-lime', {}, { from, to: 5 });
      return curve.ok ? curve.value.unpredicted.get('Pd') : undefined;
    };
    expect(why(4)).toBe('palladium');
    expect(why(3.5)).toBeUndefined();
  });

  it('any metal beyond 9 mol/kg', () => {
    const found = residualsAt(loadWith(1, 7, { Cu: 20 }), 'hydrated-lime', 9);
    expect(found.ok && found.value.ionicStrength).toBeGreaterThan(9);
    expect(found.ok && found.value.residuals[0]).toMatchObject({ predicted: false, why: 'too-strong' });
  });

  it.each([
    ['0.66', true],
    ['0.69', false],
  ])('any metal beside more ammonia than metal: %s mol beside 0.68', (moles, foretold) => {
    const ammonia = given({
      origin: 'a',
      sentence: 'Ammonium',
      value: moles,
      unit: 'mol',
      how: 'assumed',
      spread: exact,
    });
    // 43.2 g of copper in all.
    const found = residualsAt(loadWith(6.8, 0.58, { Cu: 6.3546 }), 'hydrated-lime', 9.5, { ammonia });
    expect(found.ok && found.value.residuals[0]?.predicted).toBe(foretold);
  });
});

it('0.1 mol/L of ammonia holds nickel up: above 100 mg/L at pH 9.5, which else is below 1', () => {
  const load = loadWith(1, 0.5, { Cu: 3.1773, Ni: 1.76079 });
  const nickel = (moles?: string) => {
    const ammonia =
      moles === undefined
        ? undefined
        : given({
            origin: 'a',
            sentence: 'Ammonium',
            value: moles,
            unit: 'mol',
            how: 'assumed',
            spread: exact,
          });
    const levels = levelsOf(load, 'caustic-soda', { from: 9.5, to: 9.5 }, ammonia ? { ammonia } : {});
    return levels.ok ? levels.value.at(9.5)?.of.get('Ni')?.fresh : undefined;
  };
  expect(nickel('0.1')).toBeGreaterThan(100);
  expect(nickel()).toBeLessThan(1);
});

describe('where the base ends', () => {
  it('limestone has no residual at pH 9, and says that it ends at 5.4', () => {
    const found = residualsAt(liquor, 'limestone', 9);
    expect(found).toMatchObject({ ok: false, failure: { code: 'stalls' } });
    expect(!found.ok && found.failure.code === 'stalls' && found.failure.pH).toBeCloseTo(5.4, 1);
  });

  it('a curve stops there and says where', () => {
    const curve = residualCurve(liquor, 'magnesium-hydroxide');
    if (!curve.ok) throw new Error(curve.failure.code);
    expect(curve.value.ends).toBeCloseTo(8.86, 1);
    expect(curve.value.points.at(-1)?.pH).toBe(8.8);
    expect(curve.value.points[0]?.pH).toBe(6);
  });

  it('caustic soda goes on to the end of the plot', () => {
    const curve = residualCurve(liquor, 'caustic-soda');
    if (!curve.ok) throw new Error(curve.failure.code);
    expect(curve.value.ends).toBeUndefined();
    expect(curve.value.points.map(({ pH }) => pH)).toHaveLength(65);
    expect(curve.value.points.at(-1)?.pH).toBe(12.4);
  });

  it('without free acid known there is no curve', () => {
    const open = { ...liquor, freeAcid: { openIn: ['leach'] } };
    expect(residualCurve(open, 'hydrated-lime')).toEqual({ ok: false, failure: { code: 'acid-open' } });
  });
});

const someMetals = fc.record({
  Cu: fc.constantFrom(0.001, 0.1, 5, 30),
  Ni: fc.constantFrom(0.001, 0.1, 2, 15),
  Zn: fc.constantFrom(0.001, 0.1, 1),
  Pb: fc.constantFrom(0.001, 0.1),
});
const somePh = fc.integer({ min: 60, max: 115 }).map((n) => n / 10);
const someBase = fc.constantFrom<BaseId>('hydrated-lime', 'caustic-soda');

describe('in any liquor', () => {
  it('lower end ≤ upper end ≤ all there is, and the band holds both', () => {
    fc.assert(
      fc.property(someMetals, somePh, someBase, (metals, pH, base) => {
        for (const residual of bandsAt(metals, pH, base).values()) {
          const { low, high, band: told } = predicted(residual);
          const all = (metals as Metals)[residual.metal] ?? 0;
          expect(low.value.lte(high.value)).toBe(true);
          expect(high.value.toNumber()).toBeLessThanOrEqual(all * 1000 * (1 + 1e-9));
          expect(told.low.lte(low.value) && told.high.gte(high.value)).toBe(true);
          for (const end of [told.low, told.high])
            expect(Decimal.log10(end).toDecimalPlaces(9).isInteger()).toBe(true);
        }
      }),
      { numRuns: 12 },
    );
  });

  it('more of a metal never lowers its ends, but for what a stronger liquor does to its activity', () => {
    fc.assert(
      fc.property(
        someMetals,
        somePh,
        fc.constantFrom<'Cu' | 'Ni' | 'Zn' | 'Pb'>('Cu', 'Ni', 'Zn', 'Pb'),
        fc.constantFrom(0.0005, 0.005, 0.05, 0.2),
        fc.constantFrom(1.1, 2, 3),
        (metals, pH, metal, little, times) => {
          const [before, after] = [little, little * times].map((grams) =>
            predicted(bandsAt({ ...metals, [metal]: grams }, pH).get(metal)),
          );
          if (!before || !after) throw new Error('no residual');
          expect(after.high.value.toNumber()).toBeGreaterThan(before.high.value.toNumber() * 0.98);
          expect(after.low.value.toNumber()).toBeGreaterThan(before.low.value.toNumber() * 0.98);
        },
      ),
      { numRuns: 12 },
    );
  });

  it('aged solids leave no more dissolved than fresh ones', () => {
    fc.assert(
      fc.property(someMetals, somePh, someBase, (metals, pH, base) => {
        const levels = levelsOf(loadWith(1, 0.5, metals), base, { from: pH, to: pH });
        for (const { aged, fresh } of (levels.ok ? levels.value.at(pH) : undefined)?.of.values() ?? [])
          expect(aged).toBeLessThanOrEqual(fresh);
      }),
      { numRuns: 10 },
    );
  });
});

it('iron(II) of a liquor that iron went into counts as iron, with the iron(III)', () => {
  const iron = given({
    origin: 'fe2',
    sentence: 'Iron(II)',
    value: 6.7,
    unit: 'g',
    how: 'assumed',
    spread: exact,
  });
  const found = residualsAt({ ...loadWith(6.7, 0.58, { Fe: 1 }), ironTwo: iron }, 'hydrated-lime', 2);
  const told = found.ok ? predicted(found.value.residuals.find(({ metal }) => metal === 'Fe')) : undefined;
  expect(told?.high.value.toNumber()).toBeCloseTo(2000, 6);
  const levels = levelsOf({ ...loadWith(6.7, 0.58, { Fe: 1 }), ironTwo: iron }, 'hydrated-lime', {
    from: 2,
    to: 2,
  });
  expect(levels.ok && levels.value.at(2)?.of.get('Fe')?.all).toBeCloseTo(2000, 6);
  const alone = residualsAt({ ...loadWith(6.7, 0.58, { Cu: 1 }), ironTwo: iron }, 'hydrated-lime', 2);
  expect(alone.ok && alone.value.residuals.map(({ metal }) => metal)).toEqual(['Cu', 'Fe']);
});

it('a curve and a single pH tell the same', () => {
  const curve = residualCurve(liquor, 'hydrated-lime');
  const point = curve.ok ? curve.value.points.find(({ pH }) => pH === 9) : undefined;
  const single = residualsAt(liquor, 'hydrated-lime', 9);
  for (const residual of single.ok ? single.value.residuals : []) {
    const { low, high } = predicted(residual);
    expect(point?.bands.get(residual.metal)?.low).toBeCloseTo(low.value.toNumber(), 2);
    expect((point?.bands.get(residual.metal)?.high ?? 0) / high.value.toNumber()).toBeCloseTo(1, 2);
  }
});
