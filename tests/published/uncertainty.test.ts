/**
 * Propagation of uncertainty against a published worked example: EURACHEM / CITAC Guide CG 4, Quantifying Uncertainty in
 * Analytical Measurement, example A1 (read in a public copy on 24 November 2026). A cadmium standard:
 * c = m · P ÷ V with m = 100.28 mg ± 0.05, P = 0.9999 ± 0.000058, V = 100.0 mL ± 0.07 (standard uncertainties);
 * c = 1002.7 mg/L, u(c) = 0.9 mg/L.
 */
import { describe, expect, it } from 'vitest';
import { over, times } from '../../src/quantities/expression';
import { given, partsOfRange, within, workedOut } from '../../src/quantities/figure';
import { printed } from '../../src/quantities/format';
import type { Unit } from '../../src/quantities/unit';

/** A figure by its standard uncertainty; ranges are two of them. */
const measured = <U extends Unit>(sentence: string, value: string, unit: U, u: number) =>
  given({ origin: sentence, sentence, value, unit, how: 'weighing', spread: within(2 * u), decimals: 4 });

const mass = measured('mass', '100.28', 'mg', 0.05);
const purity = measured('purity', '0.9999', '1', 0.000058);
const volume = measured('volume', '100.0', 'mL', 0.07);
const standard = workedOut({
  sentence: 'Cadmium standard',
  unit: 'mg/L',
  formula: over(times(mass, purity), volume),
});

describe('EURACHEM / CITAC example A1', () => {
  it('the concentration is 1002.7 mg/L', () => {
    expect(standard.value.toFixed(1)).toBe('1002.7');
  });

  it('its standard uncertainty is 0.9 mg/L', () => {
    expect(standard.high.minus(standard.value).div(2).toFixed(1)).toBe('0.9');
  });

  it('volume, mass and purity contribute 0.7, 0.5 and 0.058 mg/L, in that order', () => {
    const parts = partsOfRange(standard).map((p) => [p.sentence, p.plus.div(2).toNumber()] as const);
    expect(parts.map(([name]) => name)).toEqual(['volume', 'mass', 'purity']);
    expect(parts.map(([, u]) => u.toPrecision(1))).toEqual(['0.7', '0.5', '0.06']);
  });

  it('is printed to the digit that is known', () => {
    expect(printed(standard)).toMatchObject({ value: '1002.7', low: '1000.9', high: '1004.5' });
  });
});
