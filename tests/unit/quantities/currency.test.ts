import { describe, expect, test } from 'vitest';
import { over, plus, times } from '../../../src/quantities/expression';
import { exact, type Figure, given, within, workedOut } from '../../../src/quantities/figure';
import { printed } from '../../../src/quantities/format';
import { formulaText } from '../../../src/quantities/formula-text';
import { meaningOf, type Unit } from '../../../src/quantities/unit';

const price = (value: string, unit: Unit): Figure =>
  given({
    origin: `price ${unit}`,
    sentence: 'Price',
    value,
    unit,
    how: 'stated',
    spread: exact,
    decimals: 2,
  });
const lime = given({
  origin: 'lime',
  sentence: 'Lime',
  value: '386.6',
  unit: 'g',
  how: 'worked-out',
  spread: within(40),
  decimals: 1,
});

describe('money as a figure', () => {
  test('is a price times an amount, in decimals, with the range of the amount', () => {
    const cost = workedOut({ sentence: 'Lime', unit: 'EUR', formula: times(lime, price('0.85', 'EUR/kg')) });
    expect(cost.value.toFixed()).toBe('0.32861');
    expect(cost.high.toFixed(5)).toBe('0.36261');
    expect(formulaText(times(lime, price('0.85', 'EUR/kg')))).toBe('386.6\u202fg × 0.85\u202fEUR/kg');
    expect(printed(cost).unit).toBe('EUR');
  });

  test('of two currencies is never added', () => {
    expect(() =>
      workedOut({ sentence: 'Both', unit: 'EUR', formula: plus(price('1', 'EUR'), price('1', 'USD')) }),
    ).toThrow();
    expect(
      workedOut({
        sentence: 'Rate',
        unit: '1',
        formula: over(price('2', 'EUR'), price('1', 'EUR')),
      }).value.toNumber(),
    ).toBe(2);
  });

  test.each(['EU', 'EURO', 'eur', 'KG'])('%s is no currency and no unit', (symbol) => {
    expect(() => meaningOf(symbol as Unit)).toThrow(/no such unit/);
  });
});
