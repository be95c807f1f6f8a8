import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aquatic } from '../../../../src/rules/transport/aquatic';
import { corrosiveToMetal, corrosiveToSkin } from '../../../../src/rules/transport/corrosive';
import { oxidising } from '../../../../src/rules/transport/oxidising';
import { toxicComesFirst } from '../../../../src/rules/transport/precedence';
import { reportable } from '../../../../src/rules/transport/reportable';
import { toxic } from '../../../../src/rules/transport/toxic';
import { consignment, stated } from '../../../support/consignment';

const skin = (told: Parameters<typeof consignment>[0]) => corrosiveToSkin(consignment(told));
const water = (told: Parameters<typeof consignment>[0]) => aquatic(consignment(told));

describe('class 8 by its constituents', () => {
  it.each([
    ['HNO3', '5', 'fires', 'II'],
    ['HNO3-conc', '5', 'fires', 'I'],
    ['HNO3-conc', '4.99', 'fires', 'II'],
    ['HNO3-conc', '1', 'fires', 'II'],
    ['HCl', '5', 'fires', 'III'],
    ['HCl', '25', 'fires', 'II'],
    ['NH3aq', '5', 'fires', 'III'],
  ] as const)('%s at %s %%: %s, group %s', (id, share, standing, group) => {
    expect(skin({ shares: { [id]: share } })).toMatchObject({ standing, group });
  });

  it('below its limit it came close', () => {
    expect(skin({ pH: '3', shares: { HNO3: '4.99' } })).toMatchObject({ standing: 'close', group: 'III' });
  });

  it('groups are added up; what is below one per cent is not', () => {
    expect(skin({ shares: { HNO3: '4', HCl: '1' } })).toMatchObject({ standing: 'fires', group: 'III' });
    expect(skin({ pH: '3', shares: { HNO3: '4.2', HCl: '0.9' } })?.standing).toBe('close');
    expect(skin({ pH: '3', shares: { HNO3: '2.4', HCl: '0.9' } })).toBeNull();
  });

  it('the high end of a range counts', () => {
    expect(skin({ shares: { HNO3: ['2', '6'] } })?.standing).toBe('fires');
  });

  it('group III becomes II where the make-up is not all known', () => {
    expect(skin({ shares: { HCl: '10' } })).toMatchObject({ group: 'III' });
    expect(skin({ shares: { HCl: '10' }, open: ['AgNO3'] })).toMatchObject({
      group: 'II',
      byKnowledge: true,
    });
  });

  it('acid that wets a solid is stronger than its share of the whole: open without its pH', () => {
    const papers = { state: 'solid', shares: { HNO3: '2' } } as const;
    expect(skin(papers)).toMatchObject({ standing: 'open', taken: true, lacks: ['pH'] });
    expect(skin({ ...papers, pH: '4' })?.taken).toBeFalsy();
    expect(skin({ state: 'solid', wetness: 'wet' })).toMatchObject({ standing: 'open' });
    expect(skin({ state: 'sludge', wetness: 'wet' })).toBeNull();
  });

  it('a little acid or base may still reach an extreme pH: open without it', () => {
    expect(skin({ shares: { HNO3: '2' } })).toMatchObject({ standing: 'open', taken: true });
    expect(skin({ pH: '3', shares: { HNO3: '2' } })).toBeNull();
    expect(skin({ state: 'sludge', shares: { 'Ca(OH)2': '5' } })).toMatchObject({
      standing: 'open',
      taken: false,
    });
  });

  it('a test comes before what is worked out', () => {
    expect(skin({ pH: '0', shares: { HNO3: '30' }, tested: { skinCorrosion: 'none' } })).toBeNull();
    expect(skin({ pH: '7', tested: { skinCorrosion: '1A' } })).toMatchObject({
      group: 'I',
      standing: 'fires',
    });
  });
});

describe('class 8 by pH', () => {
  it.each([
    ['2', 'judgement'],
    ['11.5', 'judgement'],
    ['2.01', undefined],
    ['11.49', undefined],
  ] as const)('pH %s: %s', (pH, standing) => {
    expect(skin({ pH })?.standing).toBe(standing);
  });

  it('either end of a range may reach it', () => {
    expect(skin({ pH: ['1.9', '3'] })?.taken).toBe(true);
    expect(skin({ pH: ['11', '11.6'] })?.taken).toBe(true);
  });

  it('metal is asked about below pH 5, of liquids only, and a test decides', () => {
    expect(corrosiveToMetal(consignment({ pH: '4.9' }))).toMatchObject({ taken: false, group: 'III' });
    expect(corrosiveToMetal(consignment({ pH: '5' }))).toBeNull();
    expect(corrosiveToMetal(consignment({ pH: '3', state: 'solid' }))).toBeNull();
    expect(corrosiveToMetal(consignment({ pH: '7', tested: { corrodesMetal: true } }))?.taken).toBe(true);
    expect(corrosiveToMetal(consignment({ pH: '3', tested: { corrodesMetal: false } }))).toBeNull();
  });
});

describe('the aquatic environment', () => {
  it.each([
    [{ 'Cu(NO3)2': '2.5' }, 'fires'],
    [{ 'Cu(NO3)2': '2.49' }, 'close'],
    [{ 'Cu(NO3)2': '1.2' }, undefined],
    [{ AgNO3: '0.025' }, 'fires'],
    [{ 'Zn(NO3)2': '2.5' }, 'fires'],
    [{ NH3aq: '24.9' }, 'close'],
    [{ 'Cu(NO3)2': '1.25', AgNO3: '0.0125' }, 'fires'],
  ] as const)('%j: %s', (shares, standing) => {
    expect(water({ shares })?.standing).toBe(standing);
  });

  it('each sum that reaches its limit is shown, with that limit', () => {
    const found = water({ shares: { 'Cu(OH)2': '30', 'Ni(OH)2': '4' } });
    // 30 × 10 + 4 both ways; ten times that for chronic.
    expect(found?.grounds.map(({ figure }) => figure.value.toNumber())).toEqual([304, 3040]);
    expect(found?.grounds.every(({ limit }) => limit.value.eq(25))).toBe(true);
  });

  it('a metal that nobody determined leaves it open', () => {
    expect(water({ open: ['Ni(NO3)2'] })).toMatchObject({ standing: 'open', lacks: ['Ni(NO3)2'] });
    expect(water({ open: ['Ca(NO3)2'] })).toBeNull();
  });

  it('more of anything never makes it fall away', () => {
    const share = fc.integer({ min: 1, max: 600 });
    fc.assert(
      fc.property(share, share, share, (copper, silver, more) => {
        const of = (cu: number) =>
          water({ shares: { 'Cu(NO3)2': `${cu / 100}`, AgNO3: `${silver / 10_000}` } })?.standing;
        if (of(copper) === 'fires') expect(of(copper + more)).toBe('fires');
      }),
    );
  });
});

describe('class 5.1 and 6.1', () => {
  it('dilute nitrate is neither asserted nor ruled out: a test is asked for', () => {
    expect(oxidising(consignment({ shares: { 'Cu(NO3)2': '0.1' } }))).toMatchObject({
      standing: 'judgement',
      taken: false,
      lacks: ['oxidising, by test'],
    });
    expect(oxidising(consignment({ shares: { 'Cu(OH)2': '30' }, state: 'solid' }))).toBeNull();
  });

  it('a solid that is half nitrate is taken for an oxidiser', () => {
    const solid = (share: string) =>
      oxidising(consignment({ state: 'solid', shares: { 'Cu(NO3)2': share } }))?.taken;
    expect([solid('50'), solid('49.9')]).toEqual([true, false]);
  });

  it('dust of copper hydroxide: estimate 0.47 mg/L against 1.0 and 0.5 mg/L over four hours', () => {
    const group = (share: string) =>
      toxic(consignment({ state: 'solid', shares: { 'Cu(OH)2': share } }))[0]?.group;
    // Limits at 47 % (1.0) and 94 % (0.5).
    expect([group('47'), group('93.9'), group('94')]).toEqual(['III', 'III', 'II']);
    // Of a liquid no dust is made: its oral toxicity comes near, and that is all.
    expect(toxic(consignment({ shares: { 'Cu(OH)2': '94' } })).map(({ standing }) => standing)).toEqual([
      'close',
    ]);
  });

  it('of class 8 and 6.1 the graver comes first', () => {
    expect(toxicComesFirst('III', 'III', 'solid')).toBe(false);
    expect(toxicComesFirst('I', 'I', 'liquid')).toBe(false);
    expect(toxicComesFirst('I', 'II', 'liquid')).toBe(true);
    expect(toxicComesFirst('II', 'III', 'liquid')).toBe(true);
    expect(toxicComesFirst('II', 'II', 'liquid')).toBe(false);
    expect(toxicComesFirst('II', 'II', 'solid')).toBe(true);
  });
});

describe('a reportable quantity in one package (USA)', () => {
  const of = (told: Parameters<typeof consignment>[0]) =>
    Object.fromEntries(reportable(consignment(told)).map((r) => [r.of, r.reached]));

  it('waste with a number counts whole: one pound for D011', () => {
    const package_ = (kg: string) => ({ rcraCodes: ['D011'], packageMass: stated('package', kg, 'kg') });
    expect(of(package_('0.454'))).toEqual({ D011: 'yes' });
    expect(of(package_('0.453'))).toEqual({ D011: 'no' });
  });

  it('a substance counts by its share, from a set share on', () => {
    const acid = (share: string) => ({
      shares: { HNO3: share },
      packageMass: stated('package', '4540', 'kg'),
    });
    // 1000 lb are 453.59 kg.
    expect(Object.values(of(acid('10')))).toEqual(['yes']);
    expect(Object.values(of(acid('9.9')))).toEqual(['no']);
    expect(of(acid('1.9'))).toEqual({});
  });

  it('by the high end of its range, and with the share itself', () => {
    const range = stated('package', ['0.40', '0.46'], 'kg');
    expect(of({ rcraCodes: ['D011'], packageMass: range })).toEqual({ D011: 'yes' });
    const small = of({ shares: { HNO3: '2' }, packageMass: stated('package', '10', 'kg') });
    expect(Object.values(small)).toEqual(['no']);
  });

  it('without the mass of a package it is not determined', () => {
    expect(of({ rcraCodes: ['D002', 'D011'] })).toEqual({ D002: 'not determined', D011: 'not determined' });
  });
});
