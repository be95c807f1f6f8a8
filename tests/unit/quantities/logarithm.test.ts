import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exp, ln, minus, over, times } from '../../../src/quantities/expression';
import { between, exact, type Figure, given, workedOut } from '../../../src/quantities/figure';
import { formulaText } from '../../../src/quantities/formula-text';

const number = (value: number, low = value, high = value): Figure<'1'> =>
  given({
    origin: 'number',
    sentence: 'Number',
    value,
    unit: '1',
    how: 'assumed',
    spread: low === high ? exact : between(low, value, high),
  });
const figure = (formula: Parameters<typeof workedOut>[0]['formula']) =>
  workedOut({ sentence: 'result', unit: '1', formula, signed: true });

const base = fc.double({ min: 0.01, max: 1000, noNaN: true });

describe('a natural logarithm', () => {
  it('is undone by e to its power, ends and all', () => {
    fc.assert(
      fc.property(base, fc.double({ min: 0.05, max: 0.95, noNaN: true }), (x, down) => {
        const back = figure(exp(figure(ln(number(x, x * down, x * 3)))));
        expect(back.value.toNumber() / x).toBeCloseTo(1, 9);
        expect(back.low.toNumber() / (x * down)).toBeCloseTo(1, 6);
        expect(back.high.toNumber() / (x * 3)).toBeCloseTo(1, 6);
      }),
    );
  });

  it('of a quotient is the difference of two', () => {
    fc.assert(
      fc.property(base, base, (x, y) => {
        const [a, b] = [number(x), number(y)];
        const apart = figure(minus(ln(a), ln(b))).value.toNumber();
        expect(figure(ln(over(a, b))).value.toNumber()).toBeCloseTo(apart, 9);
      }),
    );
  });

  it('has its ends at the logarithms of the ends, not on the tangent', () => {
    const taken = figure(ln(number(9, 3, 27)));
    expect(taken.low.toNumber()).toBeCloseTo(Math.log(3), 12);
    expect(taken.high.toNumber()).toBeCloseTo(Math.log(27), 12);
  });

  it('has an end below even where nothing may be left, and none where nothing is there', () => {
    expect(Number.isFinite(figure(ln(number(2, 0, 3))).low.toNumber())).toBe(true);
    expect(() => figure(ln(number(0)))).toThrow('above nothing');
  });

  it('is only of a pure number', () => {
    const gram = given({ origin: 'g', sentence: 'g', value: 2, unit: 'g', how: 'stated', spread: exact });
    expect(() => figure(ln(gram))).toThrow('pure number');
    expect(() => figure(exp(gram))).toThrow('pure number');
  });

  it('is written with its brackets', () => {
    expect(formulaText(times(2, ln(over(20, 1))))).toBe('2 × ln(20 ÷ 1)');
    expect(formulaText(minus(1, exp(times(-1, 3))))).toBe('1 − exp((−1) × 3)');
  });
});
