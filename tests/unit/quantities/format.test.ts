import Decimal from 'decimal.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plus } from '../../../src/quantities/expression';
import { given, within, workedOut } from '../../../src/quantities/figure';
import { decimalsFor, formatNumber, inFormula, printed } from '../../../src/quantities/format';

const figure = (value: string, half: string) =>
  workedOut({
    sentence: 'x',
    unit: 'g',
    formula: plus(
      given({
        origin: 'x',
        sentence: 'x',
        value,
        unit: 'g',
        how: 'weighing',
        spread: within(half),
        decimals: 9,
      }),
    ),
  });

describe('digits follow the range', () => {
  it.each([
    ['117.92', '16.3', '118', '101', '135'],
    ['17.62', '2.3', '17.6', '15.3', '20.0'],
    ['3.886', '0.39', '3.9', '3.4', '4.3'],
    ['386.6', '66', '390', '320', '460'],
    ['28460', '3100', '28\u202f000', '25\u202f000', '32\u202f000'],
    ['0.00432', '0.00051', '0.0043', '0.0038', '0.0049'],
  ])('%s ± %s is printed as %s', (value, half, text, low, high) => {
    expect(printed(figure(value, half))).toMatchObject({ value: text, low, high, unit: 'g' });
  });

  it('a comma stands for the point where the reader wants one', () => {
    expect(printed(figure('3.886', '0.39'), ',').value).toBe('3,9');
  });

  it('the last digit shown is never finer than a hundredth of the range, nor coarser than the range', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1e6, noNaN: true }), (half) => {
        const step = 10 ** -decimalsFor(new Decimal(half));
        expect(step).toBeLessThanOrEqual(half * 1.0001);
        expect(step).toBeGreaterThanOrEqual(half / 100);
      }),
    );
  });

  it('inside a formula there are more digits than in the headline, so that a hand calculation meets it', () => {
    expect(inFormula(figure('386.61', '66'))).toBe('386.6\u202fg');
  });
});

it('a minus is a minus, and nothing is not negative', () => {
  expect(formatNumber(new Decimal('-2.5'), 1)).toBe('−2.5');
  expect(formatNumber(new Decimal('-0.01'), 1)).toBe('0.0');
});

it('the ends of a range are printed outwards, and a round end stays as it is', () => {
  expect(printed(figure('600.2', '0.7'))).toMatchObject({ low: '599.5', high: '600.9' });
  expect(printed(figure('100', '10'))).toMatchObject({ low: '90', high: '110' });
});

describe('a low end far below the high one', () => {
  it('is printed with a digit of its own, downwards, and not as nothing', () => {
    expect(printed(figure('98000', '94152'))).toMatchObject({ low: '3000', high: '200\u202f000' });
    expect(printed(figure('0.81', '0.806'))).toMatchObject({ low: '0.004', high: '1.7' });
  });
  it('is nothing where it is, or is less than a thousandth of the range', () => {
    expect(printed(figure('50', '50'))).toMatchObject({ low: '0' });
    expect(printed(figure('50', '49.999'))).toMatchObject({ low: '0' });
  });
});
