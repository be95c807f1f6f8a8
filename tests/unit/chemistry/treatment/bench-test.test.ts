import { describe, expect, it } from 'vitest';
import {
  asSoldByBasicity,
  basicityFrom,
  basicityOfPure,
  basicityStated,
  handbookBasicity,
  purityFrom,
} from '../../../../src/chemistry/basicity';
import type { MetalEvidence } from '../../../../src/chemistry/evidence';
import { liquorFrom } from '../../../../src/chemistry/liquor';
import { loadOf } from '../../../../src/chemistry/load';
import { type BenchTest, benchTest } from '../../../../src/chemistry/treatment/bench-test';
import { exact, given, width } from '../../../../src/quantities/figure';
import { basicity } from '../../../../src/reference/basicity-tables';
import { baseIds } from '../../../../src/reference/tables';

const copper: MetalEvidence = {
  by: 'photometer',
  metal: 'Cu',
  concentration: { value: '17.6', unit: 'g/L' },
};
const load = loadOf(
  liquorFrom({
    origin: 'bench',
    volume: { value: '6.70', unit: 'L' },
    findings: [copper],
    freeAcid: [{ by: 'titration', result: { value: '0.58', unit: 'mol/L' } }],
  }),
  'barren',
);
const unknownAcid = loadOf(
  liquorFrom({ origin: 'bench', volume: { value: '6.70', unit: 'L' }, findings: [copper], freeAcid: [] }),
  'barren',
);
const test = (more: Partial<BenchTest> = {}): BenchTest => ({
  origin: 'test',
  sampleVolume: { value: '100', unit: 'mL' },
  base: 'hydrated-lime',
  mass: { value: '5.10', unit: 'g' },
  endPh: { value: '9.5', unit: '1' },
  instrument: 'meter',
  ...more,
});
const told = (more: Partial<BenchTest> = {}, target = 9.5, of = load) => {
  const found = benchTest(test(more), of, target);
  if (!found) throw new Error('tells nothing');
  return found;
};

describe('a sample titrated with the lime at hand', () => {
  it('5.10 g for 100 mL are 341.7 g for 6.70 L', () => {
    // 5.10 g × 6.70 L ÷ 0.100 L
    expect(told().toEnd.value.toNumber()).toBeCloseTo(341.7, 6);
  });

  it('tells what acid and metals take: 341.7 g of 95 % lime with a tenth of grit are 7.97 mol', () => {
    // 341.7 g × 0.95 ÷ (37.046 g/mol × 1.10)
    expect(told().hydroxide.value.toNumber()).toBeCloseTo(7.966, 2);
  });

  it('is the same in litres and kilograms', () => {
    const other = told({
      sampleVolume: { value: '0.100', unit: 'L' },
      mass: { value: '0.00510', unit: 'kg' },
    });
    expect(other.toEnd.value.toFixed(9)).toBe(told().toEnd.value.toFixed(9));
  });

  it('stands beside the model, the narrower of the two first', () => {
    const { best, others } = told();
    expect([best?.by, ...others.map(({ by }) => by)].sort()).toEqual(['bench-test', 'model']);
    for (const other of others) expect(width(best?.all ?? other.all).lte(width(other.all))).toBe(true);
  });

  it('of a measuring cylinder is narrower than of the scale on a vessel', () => {
    const cylinder = { sampleSpread: { plusMinus: { value: '1', unit: 'mL' }, as: 'k2' } } as const;
    expect(width(told(cylinder).toEnd).lt(width(told().toEnd))).toBe(true);
  });

  it('of half the lime disagrees with the model; of what the model says it does not', () => {
    expect(told().disagreements).toEqual([]);
    expect(told({ mass: { value: '2.55', unit: 'g' } }).disagreements).toHaveLength(1);
  });

  it('is carried on by the model where it ended too soon, and back where it went too far', () => {
    const fromTest = (endPh: string) => {
      const { best, others } = told({ endPh: { value: endPh, unit: '1' } });
      return [best, ...others].find((one) => one?.by === 'bench-test')?.all;
    };
    // At pH 5.4 part of the copper is still dissolved; between pH 9 and 11 there is hardly any base.
    expect(fromTest('5.2')?.value.div(341.7).toNumber()).toBeGreaterThan(1.1);
    expect(fromTest('9.5')?.value.toNumber()).toBeCloseTo(341.7, 6);
    expect(fromTest('11.0')?.value.div(341.7).toNumber()).toBeCloseTo(1, 1);
    expect(width(fromTest('5.2') ?? told().toEnd).gt(width(fromTest('9.5') ?? told().toEnd))).toBe(true);
  });

  it('says what it took where the acid is not known, but nothing of another pH', () => {
    const { toEnd, best, model } = told({}, 9.5, unknownAcid);
    expect(toEnd.value.toNumber()).toBeCloseTo(341.7, 6);
    expect(best).toBeUndefined();
    expect(model).toMatchObject({ ok: false, why: { code: 'acid-open' } });
  });

  it('of nothing tells nothing', () => {
    expect(benchTest(test({ sampleVolume: { value: '0', unit: 'mL' } }), load, 9.5)).toBeUndefined();
    expect(benchTest(test({ mass: { value: '0', unit: 'g' } }), load, 9.5)).toBeUndefined();
  });
});

describe('lime in grams of calcium oxide', () => {
  const stated = basicityStated({ factor: { value: '719', unit: 'g/kg' }, origin: 'bag' });

  it.each(baseIds)('pure %s is worth what was worked out elsewhere', (base) => {
    const { value } = basicityOfPure(base);
    expect(value.minus(basicity.bases[base].pure.value).abs().lt(0.0001)).toBe(true);
  });

  it('goes from purity to factor and back', () => {
    const purity = purityFrom('hydrated-lime', stated);
    // 0.719 ÷ 0.7569
    expect(purity.value.toNumber()).toBeCloseTo(95, 1);
    expect(basicityFrom('hydrated-lime', purity).value.toNumber()).toBeCloseTo(0.719, 9);
  });

  it('8 mol of hydroxide take 312 g of lime of 719 g/kg, told as 0.719 as well', () => {
    const hydroxide = given({
      origin: 'h',
      sentence: 'Base',
      value: 8,
      unit: 'mol',
      how: 'assumed',
      spread: exact,
    });
    // 8 mol × 56.077 g/mol ÷ 2 ÷ 0.719
    expect(asSoldByBasicity(hydroxide, stated).value.toNumber()).toBeCloseTo(311.97, 1);
    const plain = basicityStated({ factor: { value: '0.719', unit: '1' }, origin: 'bag' });
    expect(asSoldByBasicity(hydroxide, plain).value.toFixed(9)).toBe(
      asSoldByBasicity(hydroxide, stated).value.toFixed(9),
    );
  });

  it('handbooks put each base that they tell of below its pure substance', () => {
    for (const base of baseIds) {
      const handbook = handbookBasicity(base);
      if (handbook) expect(handbook.value.lt(basicityOfPure(base).value), base).toBe(true);
    }
    expect(handbookBasicity('magnesium-hydroxide')).toBeUndefined();
  });
});
