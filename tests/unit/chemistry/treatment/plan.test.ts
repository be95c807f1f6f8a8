import Decimal from 'decimal.js';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { densityOf } from '../../../../src/chemistry/density';
import { doseCurve } from '../../../../src/chemistry/treatment/dose-curve';
import { phAt } from '../../../../src/chemistry/treatment/expected-ph';
import { type PlannedStage, planOf } from '../../../../src/chemistry/treatment/plan';
import type { StageAsked } from '../../../../src/chemistry/treatment/stage-before';
import { exact, given } from '../../../../src/quantities/figure';
import { baseIds } from '../../../../src/reference/tables';
import { loadWith } from './treated-load';

const told = <U extends 'K' | 'L'>(value: number, unit: U) =>
  given({ origin: `test/${unit}`, sentence: 'told', value, unit, how: 'stated', spread: exact, decimals: 1 });

const plan = (
  load: ReturnType<typeof loadWith>,
  stages: readonly StageAsked[],
  rise = 10,
  headspace?: number,
) =>
  planOf({
    load,
    stages,
    purity: () => undefined,
    rise: told(rise, 'K'),
    ...(headspace === undefined ? {} : { headspace: told(headspace, 'L') }),
  });

function stagesOf(planned: ReturnType<typeof plan>): readonly PlannedStage[] {
  if (!planned.ok) throw new Error(planned.failure.why.code);
  return planned.stages;
}

const sumOf = (stage: PlannedStage, kind?: 'full' | 'last'): Decimal =>
  stage.portions
    .filter((p) => kind === undefined || p.kind === kind)
    .reduce((sum, p) => sum.plus(p.grams), new Decimal(0));

const liquors = fc.record({
  litres: fc.double({ min: 1, max: 60, noNaN: true }),
  acid: fc.double({ min: 0.1, max: 2, noNaN: true }),
  Cu: fc.double({ min: 0.5, max: 30, noNaN: true }),
  rise: fc.integer({ min: 5, max: 20 }),
});

describe('portions', () => {
  it('go in full up to the low end, and last ones reach the high end', () => {
    fc.assert(
      fc.property(liquors, ({ litres, acid, Cu, rise }) => {
        const [stage] = stagesOf(
          plan(loadWith(litres, acid, { Cu }), [{ base: 'hydrated-lime', pH: 9.5 }], rise),
        );
        if (!stage) throw new Error('no stage');
        expect(sumOf(stage, 'full').lte(stage.needed.low)).toBe(true);
        expect(sumOf(stage, 'full').gte(stage.needed.low.times(0.9))).toBe(true);
        expect(sumOf(stage).gte(stage.needed.high)).toBe(true);
        expect(sumOf(stage).eq(stage.portions.at(-1)?.soFar ?? 0)).toBe(true);
      }),
      { numRuns: 6 },
    );
  });

  it('warm the liquor by no more than is allowed, all of it meeting acid', () => {
    fc.assert(
      fc.property(liquors, ({ litres, acid, Cu, rise }) => {
        const load = loadWith(litres, acid, { Cu });
        const [stage] = stagesOf(plan(load, [{ base: 'caustic-soda', pH: 9 }], rise));
        const largest = Decimal.max(...(stage?.portions.map((p) => p.grams) ?? []));
        // 100.3 kJ a mole of pellets (NBS enthalpies), 40.0 g/mol, 4.1 kJ/(kg·K) at most, as pure as can be.
        const kelvin = largest
          .div(39.997)
          .times(100.34)
          .div(load.volume.value.times(densityOf(load).value).times(4.1));
        expect(kelvin.toNumber()).toBeLessThanOrEqual(rise);
      }),
      { numRuns: 6 },
    );
  });

  it('of limestone give no more gas at once than there is free space', () => {
    const [stage] = stagesOf(plan(loadWith(10, 1, { Cu: 6 }), [{ base: 'limestone', pH: 5 }], 10, 12));
    // 240.4 L of gas from a kilogram of pure limestone at 20 °C; the purest that is sold has 99 %.
    for (const { grams } of stage?.portions ?? [])
      expect(grams.times(0.99 * 0.2404).toNumber()).toBeLessThanOrEqual(12);
    expect(stage?.portions.length).toBeGreaterThan(8);
  });

  it('show the reading to expect, and a wider one where less is known', () => {
    const [sure] = stagesOf(plan(loadWith(10, 1, { Cu: 6 }, '1'), [{ base: 'hydrated-lime', pH: 9 }]));
    const [unsure] = stagesOf(plan(loadWith(10, 1, { Cu: 6 }, '30'), [{ base: 'hydrated-lime', pH: 9 }]));
    const first = (s: PlannedStage | undefined): number => {
      const e = s?.portions[0]?.expected;
      return e ? e.high - e.low : Number.NaN;
    };
    expect(first(sure)).toBeGreaterThanOrEqual(0);
    expect(first(unsure)).toBeGreaterThan(first(sure));
  });
});

describe('two stages', () => {
  const load = loadWith(10, 1, { Cu: 12, Ni: 3 });
  const [stone, lime] = stagesOf(
    plan(
      load,
      [
        { base: 'limestone', pH: 5 },
        { base: 'hydrated-lime', pH: 9.5 },
      ],
      10,
      15,
    ),
  );

  it('has a curve in the second from about where the first ended, and the pH that it lets be expected', () => {
    const [at = Number.NaN] = lime?.curve?.points.map(({ pH }) => pH) ?? [];
    expect(at).toBeGreaterThan(4.5);
    expect(at).toBeLessThan(5.5);
    const needed = lime?.needed.value.toNumber() ?? 0;
    expect(phAt(lime?.curve?.points ?? [], needed)).toBeCloseTo(9.5, 0);
    for (const { expected } of lime?.portions ?? [])
      expect(expected && expected.low <= expected.likely && expected.likely <= expected.high).toBe(true);
  });

  it('together give the hydroxide of one, or more for carbonate that the first leaves', () => {
    const [alone] = stagesOf(plan(load, [{ base: 'hydrated-lime', pH: 9.5 }]));
    const rest = alone?.hydroxide.value.minus(stone?.hydroxide.value ?? 0);
    expect(lime?.hydroxide.low.lte(rest ?? 0)).toBe(true);
    expect(lime?.hydroxide.value.gt(rest ?? 0)).toBe(true);
    // Dissolved at 1 atm alone: some 0.035 mol a litre (cases T12 and T14), two hydroxides each.
    expect(lime?.hydroxide.value.minus(rest ?? 0).toNumber()).toBeGreaterThan(0.6);
  });

  it('foam in the first only', () => {
    expect(stone?.gas?.value.gt(100)).toBe(true);
    expect(lime?.gas).toBeUndefined();
  });
});

describe('a plan', () => {
  it.each(baseIds)('can be made with %s to a pH that it reaches', (base) => {
    const [stage] = stagesOf(plan(loadWith(10, 0.5, { Cu: 5 }), [{ base, pH: 5 }], 10, 20));
    expect(stage?.portions.length).toBeGreaterThan(1);
  });

  it('never ends below what may be needed', () => {
    const wide = loadWith(10, 2, {}, '95');
    const asked = [[{ base: 'soda-ash', pH: 7 }], [{ base: 'hydrated-lime', pH: 9 }]] as const;
    for (const stages of asked)
      for (const headspace of [0.5, 1, 5, 40])
        for (const rise of [1, 3, 10]) {
          const planned = plan(wide, stages, rise, headspace);
          if (!planned.ok) expect(planned.failure.why.code).toBe('too-many-portions');
          else for (const one of planned.stages) expect(sumOf(one).gte(one.needed.high)).toBe(true);
        }
  });
});

describe('what a plan cannot do it says', () => {
  const load = loadWith(10, 1, { Cu: 12 });
  const codeOf = (planned: ReturnType<typeof plan>): string => (planned.ok ? 'ok' : planned.failure.why.code);

  it('limestone without a word on the free space', () => {
    expect(codeOf(plan(load, [{ base: 'limestone', pH: 5 }]))).toBe('headspace-open');
  });

  it('limestone to pH 9', () => {
    expect(codeOf(plan(load, [{ base: 'limestone', pH: 9 }], 10, 10))).toBe('stalls');
  });

  it('more portions than anybody weighs', () => {
    expect(codeOf(plan(load, [{ base: 'limestone', pH: 5 }], 10, 0.5))).toBe('too-many-portions');
  });

  it('a second stage to a pH that the first has passed', () => {
    const stages = [
      { base: 'hydrated-lime', pH: 9 },
      { base: 'hydrated-lime', pH: 4 },
    ] as const;
    expect(codeOf(plan(load, stages))).toBe('nothing-left');
  });
});

describe('the curve', () => {
  const curved = doseCurve(loadWith(10, 1, { Cu: 12, Ni: 3 }), 'hydrated-lime');
  if (!curved.ok) throw new Error(curved.failure.code);
  const { points, soonest, latest, leaving } = curved.value;

  it('rises, and copper leaves before nickel', () => {
    expect(points.every((p, i) => i === 0 || p.pH >= (points[i - 1]?.pH ?? 0) - 1e-3)).toBe(true);
    expect(leaving.map(({ metal }) => metal)).toEqual(['Cu', 'Ni']);
    expect(leaving[0]?.pH).toBeLessThan(leaving[1]?.pH ?? 0);
  });

  it('has its points where it is steep: no leap of more than a quarter of a pH that is not within a thousandth of the dose', () => {
    const most = points.at(-1)?.grams ?? 0;
    const leaps = points
      .slice(1)
      .filter(
        (p, i) => p.pH - (points[i]?.pH ?? 0) > 0.25 && p.grams - (points[i]?.grams ?? 0) > most / 1000,
      );
    expect(leaps).toEqual([]);
    expect(points.length).toBeLessThan(120);
  });

  it('lies between the soonest and the latest', () => {
    for (const { grams, pH } of points.slice(1, 90)) {
      expect(phAt(soonest, grams) ?? 99).toBeGreaterThanOrEqual(pH - 0.02);
      expect(phAt(latest, grams) ?? 99).toBeLessThanOrEqual(pH + 0.02);
    }
  });
});
