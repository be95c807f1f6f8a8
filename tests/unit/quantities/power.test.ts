import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { minus, over, plus, power, root, times } from '../../../src/quantities/expression';
import { between, type Figure, given, within, workedOut } from '../../../src/quantities/figure';
import { formulaText } from '../../../src/quantities/formula-text';

const share = (value: string, low: string, high: string): Figure<'1'> =>
  given({
    origin: 'share',
    sentence: 'share',
    value,
    unit: '1',
    how: 'assumed',
    spread: between(low, value, high),
    decimals: 2,
  });
const figure = (formula: Parameters<typeof workedOut>[0]['formula']) =>
  workedOut({ sentence: 'result', unit: '1', formula });

describe('a power of a share', () => {
  it('has its ends at the ends of the share', () => {
    const cubed = figure(power(share('0.30', '0.20', '0.50'), 3));
    expect(cubed.value.toNumber()).toBeCloseTo(0.027, 12);
    expect(cubed.low.toNumber()).toBeCloseTo(0.008, 12);
    expect(cubed.high.toNumber()).toBeCloseTo(0.125, 12);
  });

  it('has them also where the share is 1 less another', () => {
    const gone = share('0.70', '0.50', '0.80');
    const left = figure(plus(1, times(-1, gone)));
    const cubed = figure(power(left, 3));
    expect(cubed.low.toNumber()).toBeCloseTo(0.008, 12);
    expect(cubed.high.toNumber()).toBeCloseTo(0.125, 12);
  });

  it('and its root is the share again, with the same ends', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 40, max: 90 }), (n, percent) => {
        const given = share(`0.${percent}`, '0.30', '0.95');
        const back = figure(root(figure(power(given, n)), n));
        expect(back.value.toNumber()).toBeCloseTo(percent / 100, 10);
        expect(back.low.toNumber()).toBeCloseTo(0.3, 8);
        expect(back.high.toNumber()).toBeCloseTo(0.95, 8);
      }),
    );
  });

  it('lies as wide beside the share as each of them says: both rise and fall together', () => {
    const a = share('0.30', '0.20', '0.50');
    const both = figure(plus(a, power(a, 3)));
    const swapped = figure(plus(power(a, 3), a));
    for (const sum of [both, swapped]) {
      expect(sum.low.toNumber()).toBeCloseTo(0.2 + 0.008, 12);
      expect(sum.high.toNumber()).toBeCloseTo(0.5 + 0.125, 12);
    }
    expect(figure(minus(power(a, 3), power(a, 3))).high.toNumber()).toBe(0);
  });

  it('of nothing is as wide as what may be there', () => {
    expect(figure(power(share('0', '0', '0.5'), 3)).high.toNumber()).toBeCloseTo(0.125, 12);
  });

  it('is refused for anything that has a unit', () => {
    const litre = given({
      origin: 'v',
      sentence: 'v',
      value: '1',
      unit: 'L',
      how: 'reading',
      spread: within(0),
    });
    expect(() => figure(power(litre, 2))).toThrow();
    expect(() => figure(over(power(litre, 1), 2))).toThrow();
  });

  it('is written as people write it', () => {
    const a = share('0.30', '0.30', '0.30');
    expect(formulaText(times(2, power(a, 12)))).toBe('2 × 0.30¹²');
    expect(formulaText(power(plus(a, 1), 3))).toBe('(0.30 + 1)³');
    expect(formulaText(root(over(a, 2), 4))).toBe('⁴√(0.30 ÷ 2)');
  });
});
