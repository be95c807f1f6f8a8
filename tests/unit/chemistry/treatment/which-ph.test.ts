import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Limits, referenceLimits } from '../../../../src/chemistry/treatment/limits';
import { residualCurve } from '../../../../src/chemistry/treatment/residual-curve';
import {
  looked,
  sumOver,
  type WhichPh,
  whichPh,
  windowOf,
} from '../../../../src/chemistry/treatment/which-ph';
import { exact, type Figure, given } from '../../../../src/quantities/figure';
import type { BaseId, Metal } from '../../../../src/reference/tables';
import { loadWith } from './treated-load';

const stated = <U extends 'mg/L' | '1'>(value: number, unit: U): Figure<U> =>
  given({ origin: `stated/${value}`, sentence: 'Stated', value, unit, how: 'stated', spread: exact });

const limitsOf = (
  values: Readonly<Partial<Record<Metal, number>>>,
  pH?: readonly [number, number],
): Limits => ({
  of: 'local',
  title: 'the works',
  values: new Map(Object.entries(values).map(([m, v]) => [m as Metal, stated(v, 'mg/L')])),
  ...(pH ? { pH: { low: stated(pH[0], '1'), high: stated(pH[1], '1') } } : {}),
});

type Metals = Parameters<typeof loadWith>[2];

const which = (metals: Metals, base: BaseId = 'hydrated-lime', limits?: Limits): WhichPh => {
  const found = whichPh(loadWith(6.7, 0.58, metals), base, limits);
  if (!found.ok) throw new Error(found.failure.code);
  return found.value;
};
const verdictOf = ({ atBest }: WhichPh, metal: Metal) =>
  atBest.find(({ residual }) => residual.metal === metal)?.verdict;
const codes = ({ warnings }: WhichPh) => warnings.map(({ code }) => code);

describe('the window', () => {
  it('of copper and nickel with lime begins between pH 9 and 10, where nickel comes under its limit', () => {
    const { window, counted, neverUnder } = which({ Cu: 17.6, Ni: 6.2 });
    expect(counted).toEqual(['Cu', 'Ni']);
    expect(neverUnder).toEqual([]);
    expect(window?.low).toBeGreaterThan(9);
    expect(window?.low).toBeLessThan(10);
    expect(window?.best).toBeGreaterThanOrEqual(window?.low ?? 0);
    // Both stand at what lime and settle reaches: 0.58 ÷ 2.07 and 0.74 ÷ 2.38.
    expect(window?.sum).toBeCloseTo(0.58 / 2.07 + 0.74 / 2.38, 2);
  });

  it('with zinc ends below 11, where zinc comes back', () => {
    const found = which({ Cu: 17.6, Ni: 6.2, Zn: 0.5 });
    expect(found.window?.high).toBeLessThan(11);
    expect(found.comesBack.map(({ metal }) => metal)).toContain('Zn');
    expect(found.warnings).toContainEqual({
      code: 'comes-back',
      metal: 'Zn',
      from: found.comesBack.find(({ metal }) => metal === 'Zn')?.from,
    });
  });

  it.each([
    ['1.48', 'three times its least'],
    ['50', 'its limit'],
  ])('zinc with a limit of %s comes back where its upper end rises over %s', (limit) => {
    const found = which({ Zn: 0.5 }, 'caustic-soda', limitsOf({ Zn: Number(limit) }));
    const highs = found.curve.points.map(({ pH, bands }) => ({ pH, high: bands.get('Zn')?.high ?? 0 }));
    const bar = Math.max(3 * Math.min(...highs.map(({ high }) => high)), Number(limit));
    const [back] = found.comesBack;
    const after = highs.findIndex(({ pH }) => pH === back?.from);
    expect(highs[after]?.high).toBeGreaterThan(bar);
    expect(highs[after - 1]?.high).toBeLessThanOrEqual(bar);
    expect(back?.from).toBeGreaterThan(10);
  });

  it('holds as much of the sum as twice its least, and no tenth beside it does', () => {
    const { window, curve, counted, limits } = which({ Cu: 17.6, Ni: 6.2, Zn: 0.5 });
    const sum = (pH: number) => {
      const point = curve.points.find((p) => p.pH === pH);
      return point ? sumOver(point, counted, limits) : Number.NaN;
    };
    const tenth = (pH: number, by: number) => Math.round((pH + by) * 10) / 10;
    const { low, high, sum: least } = window ?? { low: 0, high: 0, sum: 0 };
    expect(sum(low)).toBeLessThanOrEqual(2 * least);
    expect(sum(high)).toBeLessThanOrEqual(2 * least);
    expect(sum(tenth(low, -0.1))).toBeGreaterThan(2 * least);
    expect(sum(tenth(high, 0.1))).toBeGreaterThan(2 * least);
  });

  it('ends before a metal counted comes back, though the sum is not twice its least there', () => {
    // Copper has the sum to itself, so that twice of it has room for zinc over its own limit.
    const { window, comesBack, curve, counted, limits } = which(
      { Cu: 17.6, Zn: 0.5 },
      'hydrated-lime',
      limitsOf({ Cu: 0.2, Zn: 20 }),
    );
    const zinc = comesBack.find(({ metal }) => metal === 'Zn');
    const there = curve.points.find(({ pH }) => pH === zinc?.from);
    expect(there && sumOver(there, counted, limits)).toBeLessThan(2 * (window?.sum ?? 0));
    expect(window?.high).toBeCloseTo((zinc?.from ?? 0) - 0.1, 9);
  });

  it('of magnesium hydroxide ends where the base does, below pH 9', () => {
    const found = which({ Cu: 17.6, Ni: 6.2 }, 'magnesium-hydroxide');
    expect(found.window?.high).toBe(8.8);
    expect(codes(found)).toContain('base-ends');
  });

  it('is not there without a metal that has a limit', () => {
    const found = which({ Al: 1 });
    expect(found.window).toBeUndefined();
    expect(found.atBest).toEqual([]);
    expect(found.warnings).toContainEqual({ code: 'no-limit', metals: ['Al'] });
  });

  it('without free acid known there is none', () => {
    const load = { ...loadWith(1, 0.5, { Cu: 1 }), freeAcid: { openIn: ['leach'] } };
    expect(whichPh(load, 'hydrated-lime')).toEqual({ ok: false, failure: { code: 'acid-open' } });
  });
});

describe('never under its limit', () => {
  const traces: Metals = { Cu: 17.6, Ni: 6.2, Pb: 0.2, Ag: 0.05 };

  it('lead and silver with lime: carbonate, chloride first; they do not move the window', () => {
    const found = which(traces);
    expect(found.neverUnder.map(({ metal, instead }) => [metal, instead])).toEqual([
      ['Ag', 'chloride-first'],
      ['Pb', 'carbonate'],
    ]);
    expect(found.counted).toEqual(['Cu', 'Ni']);
    expect(found.window?.best).toBe(which({ Cu: 17.6, Ni: 6.2 }).window?.best);
    expect(found.ofAll?.best).toBeGreaterThan(11);
    expect(verdictOf(found, 'Ag')).toBe('over');
    expect(verdictOf(found, 'Pb')).toBe('over');
    expect(verdictOf(found, 'Cu')).toBe('under');
    expect(codes(found)).toEqual(expect.arrayContaining(['silver-chloride-first', 'lead-carbonate']));
  });

  it('silver with caustic soda as well, though its band reaches below the limit once it is rounded', () => {
    expect(which(traces, 'caustic-soda').neverUnder.map(({ metal }) => metal)).toEqual(['Ag', 'Pb']);
  });

  it('nickel with limestone, which ends at pH 5.4: another base', () => {
    const found = which({ Cu: 17.6, Ni: 6.2 }, 'limestone');
    expect(found.neverUnder).toContainEqual(expect.objectContaining({ metal: 'Ni', instead: 'other-base' }));
    expect(found.window).toBeUndefined();
    expect(found.ofAll?.best).toBe(5.4);
    expect(found.atBest).not.toEqual([]);
  });

  it('nickel beside ammonia: without it', () => {
    const ammonia = given({
      origin: 'a',
      sentence: 'Ammonium',
      value: 0.5,
      unit: 'mol',
      how: 'assumed',
      spread: exact,
    });
    const load = loadWith(6.7, 0.58, { Cu: 6, Ni: 6.2 });
    const found = whichPh(load, 'sodium-bicarbonate', referenceLimits(), { ammonia });
    expect(found.ok && found.value.neverUnder).toContainEqual(
      expect.objectContaining({ metal: 'Ni', instead: 'ammonia-away' }),
    );
    expect(found.ok && codes(found.value)).toContain('ammonia');
  });

  it('lead with soda ash comes under, and counts', () => {
    const found = which({ Cu: 17.6, Pb: 0.2 }, 'soda-ash');
    expect(found.counted).toContain('Pb');
    expect(codes(found)).not.toContain('lead-carbonate');
  });

  it('not copper under a limit of 0.5, below what lime and settle reaches on average: perhaps', () => {
    const found = which({ Cu: 17.6 }, 'hydrated-lime', limitsOf({ Cu: 0.5 }));
    expect(found.neverUnder).toEqual([]);
    expect(verdictOf(found, 'Cu')).toBe('perhaps');
  });
});

describe('limits', () => {
  it('are named reference values where no local rule is given, and marked so', () => {
    const found = which({ Cu: 1 });
    expect(found.limits).toMatchObject({ of: 'reference', title: 'Metal finishing, month' });
    expect(found.limits.values.get('Cu')?.note).toBe('Reference only, not your limit.');
    expect(found.limits.values.get('Cu')?.sources[0]?.title).toContain('40 CFR 433');
    expect(codes(found)).toContain('reference-only');
  });

  it('of the local rules are not marked so, and their pH stands beside', () => {
    const found = which({ Cu: 17.6, Ni: 6.2 }, 'hydrated-lime', limitsOf({ Cu: 1, Ni: 1 }, [6.5, 9]));
    expect(codes(found)).not.toContain('reference-only');
    expect(found.warnings).toContainEqual({ code: 'outside-discharge-ph', best: found.window?.best });
    const wide = which({ Cu: 17.6, Ni: 6.2 }, 'hydrated-lime', limitsOf({ Cu: 1, Ni: 1 }, [6.5, 11]));
    expect(codes(wide)).not.toContain('outside-discharge-ph');
  });

  it.each([
    ['1', 'under'],
    ['0.99', 'perhaps'],
    ['0.1', 'perhaps'],
  ])('0.1 to 1 mg/L of copper against %s is: %s', (limit, verdict) => {
    const found = which({ Cu: 17.6 }, 'hydrated-lime', limitsOf({ Cu: Number(limit) }));
    expect(verdictOf(found, 'Cu')).toBe(verdict);
  });

  const curved = residualCurve(
    loadWith(6.7, 0.58, { Cu: 17.6, Ni: 6.2, Zn: 0.5, Pb: 0.2 }),
    'hydrated-lime',
    {},
    looked,
  );
  if (!curved.ok) throw new Error('no curve');
  const { points } = curved.value;
  const metals = ['Cu', 'Ni', 'Zn', 'Pb'] as const;
  const anyLimit = fc.integer({ min: 0, max: 400 }).map((i) => 0.01 * 10 ** (i / 100));

  it('raised never make the sum at the best worse, nor the sum at any pH', () => {
    fc.assert(
      fc.property(
        fc.tuple(anyLimit, anyLimit, anyLimit, anyLimit),
        fc.constantFrom(...metals),
        fc.integer({ min: 100, max: 3000 }),
        ([Cu, Ni, Zn, Pb], metal, hundredths) => {
          const before = { Cu, Ni, Zn, Pb };
          const after = { ...before, [metal]: before[metal] * (hundredths / 100) };
          const [a, b] = [limitsOf(before), limitsOf(after)];
          expect(windowOf(points, metals, b)?.sum).toBeLessThanOrEqual(
            (windowOf(points, metals, a)?.sum ?? 0) * (1 + 1e-5),
          );
          for (const point of points)
            expect(sumOver(point, metals, b)).toBeLessThanOrEqual(sumOver(point, metals, a));
        },
      ),
      { numRuns: 200 },
    );
  });

  it('make a best that no other pH beats', () => {
    fc.assert(
      fc.property(fc.tuple(anyLimit, anyLimit, anyLimit), ([Cu, Ni, Zn]) => {
        const limits = limitsOf({ Cu, Ni, Zn });
        const window = windowOf(points, ['Cu', 'Ni', 'Zn'], limits);
        const least = Math.min(...points.map((p) => sumOver(p, ['Cu', 'Ni', 'Zn'], limits)));
        expect(window?.sum).toBeLessThanOrEqual(least * (1 + 1e-5));
        expect(window && window.low <= window.best && window.best <= window.high).toBe(true);
      }),
      { numRuns: 100 },
    );
  });
});

describe('what it does not know', () => {
  it('names liquors that do not tell', () => {
    const load = loadWith(1, 0.5, { Cu: 1 });
    // Nickel was not told.
    const found = whichPh(load, 'hydrated-lime');
    expect(found.ok && found.value.warnings).toContainEqual({ code: 'open', liquors: ['test'] });
  });

  it('foretells nothing of palladium and tin, and counts neither', () => {
    const found = which(
      { Cu: 5, Ni: 1, Pd: 0.02, Sn: 0.3 },
      'hydrated-lime',
      limitsOf({ Cu: 1, Ni: 1, Pd: 0.1, Sn: 1 }),
    );
    expect(found.counted).toEqual(['Cu', 'Ni']);
    expect(found.warnings).toContainEqual({ code: 'not-predicted', metal: 'Pd', why: 'palladium' });
    expect(found.warnings).toContainEqual({ code: 'not-predicted', metal: 'Sn', why: 'tin' });
    expect(verdictOf(found, 'Sn')).toBe('not-predicted');
  });

  it('says that barium stays', () => {
    const found = which({ Cu: 5, Ba: 1 }, 'hydrated-lime', limitsOf({ Cu: 1, Ba: 2 }));
    expect(found.neverUnder).toContainEqual(
      expect.objectContaining({ metal: 'Ba', instead: 'sulfate-or-carbonate' }),
    );
    expect(codes(found)).toContain('barium-stays');
  });
});

it('reference values cover copper, nickel, zinc, lead and silver', () => {
  expect([...referenceLimits().values.keys()]).toEqual(['Cu', 'Ni', 'Zn', 'Pb', 'Ag']);
});
