import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type WasteKind,
  wasteKinds,
  wasteList,
  workViews,
} from '../../../../src/reference/waste-list-tables';
import { hazardOf, type WasteAsked, wasteListEntries } from '../../../../src/rules/waste-list/entries';
import { StreamKind } from '../../../../src/safety/stream-kind';

const hp = (standing: 'fires' | 'close' | 'judgement' | 'open') => [{ code: 'HP 14', standing }];
const asked = (kind: WasteKind, more: Partial<WasteAsked> = {}): WasteAsked => ({
  kind,
  properties: null,
  ...more,
});
const first = (kind: WasteKind, more: Partial<WasteAsked> = {}) =>
  wasteListEntries(asked(kind, more)).candidates[0];
const wrong = (kind: WasteKind, more: Partial<WasteAsked> = {}) =>
  wasteListEntries(asked(kind, more)).wrong.map(({ code }) => code);

describe('the European list of waste', () => {
  it.each([
    ['leach-liquor', '11 02 07*'],
    ['barren-liquor', '11 02 07*'],
    ['wash-water', '11 02 07*'],
    ['hydroxide-sludge', '11 02 07*'],
    ['ceramic-residue', '11 02 07*'],
    ['spent-filters', '15 02 02*'],
    ['soiled-ppe', '15 02 02*'],
    ['chloride-test-waste', '16 05 06*'],
    ['capacitors', '16 02 15*'],
    ['empty-bottles', '15 01 10*'],
    ['old-reagents', '16 05 07*'],
    ['dry-nitrate-salts', '16 09 04*'],
    ['surplus-nitric-acid', '06 01 05*'],
    ['surplus-hydrochloric-acid', '06 01 02*'],
    ['surplus-lime', '06 02 01*'],
    ['surplus-ammonia', '06 02 03*'],
    ['surplus-caustic', '06 02 04*'],
  ] as const)('%s: %s first', (kind, code) => {
    expect(first(kind)?.code).toBe(code);
  });

  it('has entries for every kind of waste that the steps give', () => {
    for (const kind of StreamKind.options) expect(wasteKinds).toContain(kind);
  });

  it('the hazardous of two mirrors holds while a property fires, and while one is not determined', () => {
    expect(first('ceramic-residue', { properties: hp('fires') })).toMatchObject({
      code: '11 02 07*',
      standing: 'fires',
      counterpart: '11 02 99',
    });
    for (const properties of [null, hp('open'), hp('judgement')])
      expect(first('ceramic-residue', { properties })).toMatchObject({ code: '11 02 07*', standing: 'open' });
    expect(first('ceramic-residue', { properties: hp('open') })?.lacks).toEqual(['HP 14']);
  });

  it('shown not hazardous, the other of the two holds', () => {
    expect(first('ceramic-residue', { properties: [] })?.code).toBe('11 02 99');
    expect(first('ceramic-residue', { properties: hp('close') })?.code).toBe('11 02 99');
    expect(first('spent-filters', { properties: [] })?.code).toBe('15 02 03');
  });

  it('an absolute entry holds whatever the properties say', () => {
    for (const properties of [null, [], hp('fires')])
      expect(first('surplus-lime', { properties })).toMatchObject({ code: '06 02 01*', standing: 'fires' });
  });

  it('codes that would be an escape are marked wrong', () => {
    expect(wrong('ceramic-residue')).toEqual(expect.arrayContaining(['10 12 08', '11 02 99', '20 01 14*']));
    expect(wrong('hydroxide-sludge')).toEqual(expect.arrayContaining(['19 02 05*', '11 02 99']));
    expect(wrong('ceramic-residue', { properties: [] })).not.toContain('11 02 99');
  });

  it('another view of the work brings its entries to the front, and else they are only told', () => {
    expect(first('wash-water', { view: 'surface-treatment' })?.code).toBe('11 01 11*');
    expect(first('hydroxide-sludge', { view: 'copper-hydrometallurgy' })?.code).toBe('11 02 05*');
    expect(first('hydroxide-sludge', { view: 'waste-facility' })?.code).toBe('19 02 05*');
    const { otherwise, candidates } = wasteListEntries(asked('wash-water'));
    expect(otherwise.map(({ code }) => code)).toEqual(['16 10 01*', '11 02 05*', '11 01 11*']);
    expect(candidates.map(({ code }) => code)).not.toContain('11 01 11*');
  });

  it('a waste of no kind gets no entry, and the reason', () => {
    expect(wasteListEntries({ kind: null, properties: null })).toMatchObject({
      candidates: [],
      none: { rule: /No entry/ },
    });
  });
});

describe('whatever the kind, the view and the properties', () => {
  const standing = fc.constantFrom('fires' as const, 'close' as const, 'judgement' as const, 'open' as const);
  const anything = fc.record({
    kind: fc.constantFrom(...wasteKinds),
    view: fc.constantFrom(...workViews),
    properties: fc.option(
      fc.array(
        standing.map((s) => ({ code: 'HP 7', standing: s })),
        { maxLength: 3 },
      ),
    ),
  });
  const always = (holds: (a: WasteAsked) => void) => fc.assert(fc.property(anything, holds));

  it('nothing is proposed and called wrong at once', () =>
    always((a) => {
      const { candidates, wrong: not } = wasteListEntries(a);
      for (const { code } of candidates) expect(not.map((n) => n.code)).not.toContain(code);
    }));

  it('a code without asterisk is proposed only where every property was looked at and none holds', () =>
    always((a) => {
      if (hazardOf(a.properties) === 'none') return;
      for (const { code, entry } of wasteListEntries(a).candidates) {
        // What no liquor has touched: no mirror, nothing to show.
        if (entry.type === 'absolute' && a.kind === 'ceramics-never-leached') continue;
        expect(code.endsWith('*')).toBe(true);
        expect(entry.hazardous).toBe(true);
      }
    }));

  it('each candidate has its reason, and the choosing order among its rules', () =>
    always((a) => {
      for (const { why, rules } of wasteListEntries(a).candidates) {
        expect(why).not.toBe('');
        expect(rules.length).toBeGreaterThanOrEqual(2);
      }
    }));

  it('mirrors point at each other', () => {
    for (const [code, { type, counterpart, hazardous }] of Object.entries(wasteList.entries)) {
      if (type !== 'mirror') continue;
      const other = counterpart && wasteList.entries[counterpart];
      expect(other && other.hazardous !== hazardous, code).toBe(true);
    }
  });
});
