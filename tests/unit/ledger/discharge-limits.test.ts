import { describe, expect, test } from 'vitest';
import { dischargePh, limitsOf, localLimits } from '../../../src/ledger/discharge-limits';
import { LocalRule } from '../../../src/ledger/entries/local-rules';
import type { State } from '../../../src/ledger/state';
import { Scribe } from './scribe';

function stateWith(...rules: readonly LocalRule[]): State {
  const scribe = new Scribe();
  for (const stated of rules)
    scribe.does({
      do: 'state-local-rule',
      stated,
      saidBy: 'Water works Ostwald',
      saidOn: '2026-03-01',
      document: 'permit 12',
    });
  return scribe.state;
}

const limits = {
  rule: 'discharge-limits',
  value: { Cu: { value: '0.50', unit: 'mg/L' }, Ni: { value: '0.5', unit: 'mg/L' } },
} as const;
const pH = {
  rule: 'discharge-ph',
  value: { low: { value: '6.5', unit: '1' }, high: { value: '9.5', unit: '1' } },
} as const;

describe('limits of an authorised discharge', () => {
  test('are those that the local rules name, with who said so', () => {
    const found = localLimits(stateWith(limits));
    expect(found?.of).toBe('local');
    expect(found?.title).toBe('Said by Water works Ostwald on 2026-03-01, permit 12');
    expect(
      [...(found?.values ?? [])].map(([metal, { value, decimals }]) => [metal, value.toString(), decimals]),
    ).toEqual([
      ['Cu', '0.5', 2],
      ['Ni', '0.5', 1],
    ]);
    expect(found?.pH).toBeUndefined();
  });

  test('are reference values where none is named, the stated pH beside them', () => {
    expect(localLimits(stateWith(pH))).toBeUndefined();
    const found = limitsOf(stateWith(pH));
    expect(found.of).toBe('reference');
    expect(found.pH?.low.value.toString()).toBe('6.5');
    expect(limitsOf(stateWith()).pH).toBeUndefined();
    expect(limitsOf(stateWith(), 'lime-settle-month').title).toBe('Lime and settle, month');
  });

  test('the local ones go before any reference', () => {
    const found = limitsOf(stateWith(limits, pH), 'lime-settle-month');
    expect(found.of).toBe('local');
    expect(found.pH?.high.value.toString()).toBe('9.5');
    expect(dischargePh(stateWith(limits))).toBeUndefined();
  });

  test('stated again replace all those of before', () => {
    const later = { rule: 'discharge-limits', value: { Zn: { value: '2', unit: 'mg/L' } } } as const;
    expect([...(localLimits(stateWith(limits, later))?.values.keys() ?? [])]).toEqual(['Zn']);
  });

  test('name at least one metal, and a pH from low to high', () => {
    expect(LocalRule.safeParse(limits).success).toBe(true);
    expect(LocalRule.safeParse({ ...limits, value: {} }).success).toBe(false);
    expect(
      LocalRule.safeParse({ rule: 'discharge-limits', value: { Hg: { value: '1', unit: 'mg/L' } } }).success,
    ).toBe(false);
    expect(LocalRule.safeParse(pH).success).toBe(true);
    const turned = { rule: 'discharge-ph', value: { low: pH.value.high, high: pH.value.low } };
    expect(LocalRule.safeParse(turned).success).toBe(false);
  });
});
