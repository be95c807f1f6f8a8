import { describe, expect, it } from 'vitest';
import { EmergencyCard, emergencyCards } from '../../../src/safety/emergency-cards';
import { NeverRule, neverFor, neverRules } from '../../../src/safety/never-rules';
import { StreamKind } from '../../../src/safety/stream-kind';

const short = (kinds: Parameters<typeof neverFor>[0]) => neverFor(kinds).map((rule) => rule.short);

describe('the emergency cards', () => {
  it('are seven, and each says what to tell the emergency service', () => {
    expect([...emergencyCards.keys()]).toEqual([
      'breathed-fume',
      'eye-skin',
      'spill',
      'runaway-fume',
      'fire',
      'bulging-container',
      'ammonia-silver',
    ]);
    for (const card of emergencyCards.values())
      if (card.callFirst)
        expect(
          card.steps.some(({ call }) => call),
          card.id,
        ).toBe(true);
  });

  it('send someone who breathed fume to help even when well, and rinse an eye for 15 minutes', () => {
    expect(emergencyCards.get('breathed-fume')?.steps.at(-1)?.do).toBe('Go, even if you feel well.');
    expect(emergencyCards.get('eye-skin')?.steps[0]?.timerMinutes).toBe(15);
  });

  it('do not promise that anything is safe', () => {
    expect(JSON.stringify([...emergencyCards.values()])).not.toMatch(/\bsafe\b/i);
  });

  it('refuse a line too long to be read in haste', () => {
    const card = structuredClone(emergencyCards.get('spill')) as EmergencyCard;
    const first = card.steps[0];
    if (first) first.do = 'First of all, try to stay calm and think about what has happened here';
    expect(EmergencyCard.safeParse(card).success).toBe(false);
  });
});

describe('the never rules', () => {
  it('concern every kind of waste at least once, and have one name each', () => {
    for (const kind of StreamKind.options.filter((one) => one !== 'filtrate'))
      expect(neverFor([kind]).length, kind).toBeGreaterThan(0);
    expect(neverFor(['filtrate']).length).toBeGreaterThan(0);
    expect(new Set(neverRules.map(({ id }) => id)).size).toBe(18);
  });

  it('keep ammonia waste out of nitrate liquor, and lime out of ammonia waste', () => {
    expect(short(['leach-liquor'])).toContain('Never add ammonia waste');
    expect(short(['ammonia-test-waste'])).toContain('Never add lime or caustic');
    expect(short(['leach-liquor'])).not.toContain('Never add lime or caustic');
  });

  it('keep nitrate paper wet', () => {
    expect(short(['spent-filters'])).toContain('Never let it dry, never heat it');
  });

  it('for two kinds are those of either, once each, in the order of the table', () => {
    const both = neverFor(['leach-liquor', 'spent-filters']).map(({ id }) => id);
    expect(new Set(both).size).toBe(both.length);
    expect(both).toEqual(neverRules.map(({ id }) => id).filter((id) => both.includes(id)));
    expect(both.length).toBeGreaterThan(neverFor(['leach-liquor']).length);
    expect(neverFor([])).toEqual([]);
  });

  it('refuse a kind of waste that there is not', () => {
    const rule = structuredClone(neverRules[0]) as unknown as { streams: string[] };
    rule.streams = ['milk'];
    expect(NeverRule.safeParse(rule).success).toBe(false);
  });
});
