import Decimal from 'decimal.js';
import { describe, expect, it } from 'vitest';
import { converted } from '../../src/quantities/quantity';
import { type Category, monthLimits } from '../../src/rules/quantities/generator-limits';
import { categoryOf } from '../../src/rules/quantities/generator-month';

/**
 * 40 CFR 262.13, Table 1, row by row: acute waste, other hazardous waste, and what is left of cleaning up acute waste, each in
 * kg a month. Read in a State's adopted text (Utah R315-262-13) and, for the last column, on a page of California's agency.
 */
describe('Table 1 of 40 CFR 262.13', () => {
  const none = '0';
  const rows: readonly (readonly [string, string, string, Category])[] = [
    ['1.01', none, none, 'LQG'],
    ['1.01', '5000', '500', 'LQG'],
    [none, '1000', none, 'LQG'],
    ['1', '1000', '100', 'LQG'],
    [none, none, '100.1', 'LQG'],
    ['1', '100', '100.1', 'LQG'],
    ['1', '999.9', '100', 'SQG'],
    [none, '100.1', none, 'SQG'],
    ['1', '100', '100', 'VSQG'],
    [none, none, none, 'VSQG'],
  ];
  it.each(rows)('%s kg acute, %s kg, %s kg of cleaning up: %s', (acute, nonAcute, acuteSpill, category) => {
    expect(
      categoryOf({
        acute: new Decimal(acute),
        nonAcute: new Decimal(nonAcute),
        acuteSpill: new Decimal(acuteSpill),
      }),
    ).toBe(category);
  });

  // The federal agency prints the same limits in pounds, rounded: 220, 2200 and 2.2 (from memory).
  it.each([
    ['smallest', 220],
    ['large', 2200],
    ['acute', 2.2],
  ] as const)('the limit called %s is %d lb within half a percent', (name, pounds) => {
    const written = converted(monthLimits[name].value, 'kg', 'lb').toNumber();
    expect(Math.abs(written / pounds - 1)).toBeLessThan(0.005);
  });
});
