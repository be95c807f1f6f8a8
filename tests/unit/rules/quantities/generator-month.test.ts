import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { read, within } from '../../../../src/quantities/figure';
import type { Arising, Known, Origin } from '../../../../src/rules/quantities/counting';
import { monthReference, onSiteReference } from '../../../../src/rules/quantities/generator-limits';
import { generatorMonth } from '../../../../src/rules/quantities/generator-month';
import { heldAgainst, standingAgainst } from '../../../../src/rules/quantities/held-against';

type Mass = { readonly value: string; readonly unit: 'kg' | 'lb'; readonly half?: number };

const weighed = (id: string, { value, unit, half }: Mass) =>
  read({
    origin: `mass/${id}`,
    sentence: id,
    written: { value, unit },
    unit: 'kg',
    how: 'weighing',
    spread: () => within(half ?? 0),
  });

const arising = (id: string, mass: Mass | null, more: Partial<Arising> = {}): Arising => ({
  id,
  at: '2026-05-10T12:00:00.000Z',
  what: id,
  kg: mass && weighed(id, mass),
  acute: 'no',
  origin: { kind: 'generated' },
  ...more,
});

const kg = (value: string, half?: number): Mass =>
  half === undefined ? { value, unit: 'kg' } : { value, unit: 'kg', half };
const month = (...all: Arising[]) => generatorMonth(all, '2026-05', 'UTC');

describe('the category of a month', () => {
  it.each([
    ['100', 'VSQG'],
    ['100.001', 'SQG'],
    ['999.999', 'SQG'],
    ['1000', 'LQG'],
  ])('with %s kg is %s', (value, likely) => {
    expect(month(arising('liquor', kg(value))).category.likely).toBe(likely);
  });

  it('is by the kilogram where pounds were written', () => {
    const pounds = (value: string) => month(arising('liquor', { value, unit: 'lb' })).category.likely;
    expect(pounds('220.462')).toBe('VSQG');
    expect(pounds('220.463')).toBe('SQG');
    expect(pounds('2204.622')).toBe('SQG');
    expect(pounds('2204.623')).toBe('LQG');
  });

  it('may be a larger one at the high end', () => {
    const { category } = month(arising('liquor', kg('95', 10)));
    expect(category).toEqual({ likely: 'VSQG', atHigh: 'SQG' });
  });

  it('is large with more than a kilogram of acute waste, counted apart', () => {
    const acute = { acute: 'acute' } as const;
    expect(month(arising('a', kg('1.000'), acute), arising('b', kg('60'))).category.likely).toBe('VSQG');
    const over = month(arising('a', kg('1.001'), acute), arising('b', kg('60')));
    expect(over.category.likely).toBe('LQG');
    expect(over.nonAcute.value.toString()).toBe('60');
  });

  it('is large with more than 100 kg left of cleaning up acute waste', () => {
    const spill = { acute: 'acute-spill' } as const;
    expect(month(arising('s', kg('100.0'), spill)).category.likely).toBe('VSQG');
    expect(month(arising('s', kg('100.1'), spill)).category.likely).toBe('LQG');
  });

  it('with nothing logged counts nothing', () => {
    expect(month()).toMatchObject({ category: { likely: 'VSQG', atHigh: 'VSQG' }, unweighed: [] });
  });

  it('tells what counts and was not weighed, and does not take it for nothing', () => {
    const found = month(arising('a', null), arising('b', kg('20')));
    expect(found.unweighed.map(({ id }) => id)).toEqual(['a']);
    expect(found.nonAcute.value.toString()).toBe('20');
  });

  it('never falls when something more arises', () => {
    const rank = { VSQG: 0, SQG: 1, LQG: 2 };
    const masses = fc.array(fc.integer({ min: 1, max: 600 }), { maxLength: 6 });
    fc.assert(
      fc.property(masses, fc.integer({ min: 1, max: 600 }), (some, more) => {
        const all = some.map((m, i) => arising(`a${i}`, kg(String(m), 3)));
        const [less, larger] = [month(...all), month(...all, arising('more', kg(String(more), 3)))];
        expect(rank[larger.category.atHigh]).toBeGreaterThanOrEqual(rank[less.category.atHigh]);
        expect(rank[larger.category.atHigh]).toBeGreaterThanOrEqual(rank[larger.category.likely]);
      }),
    );
  });
});

describe('what is counted', () => {
  const one = (origin: Origin) => month(arising('x', kg('10'), { origin })).judged[0];
  const counted = (origin: Origin) => [one(origin)?.counts, one(origin)?.rule];
  const unit = (straight: Known, onlyCorrosive: Known): Origin => ({
    kind: 'into-unit',
    unit: 'elementary-neutralisation',
    straight,
    onlyCorrosive,
  });

  it('not what goes straight into elementary neutralisation and is only corrosive', () => {
    expect(counted(unit('yes', 'yes'))).toEqual([false, 'straight-into-unit']);
  });

  it('what is more than corrosive, or stood in a container first', () => {
    expect(counted(unit('yes', 'no'))).toEqual([true, 'generated']);
    expect(counted(unit('no', 'yes'))).toEqual([true, 'generated']);
  });

  it('what nobody determined, and it says what is lacking', () => {
    expect(one(unit('yes', 'not determined'))).toMatchObject({
      counts: true,
      rule: 'straight-into-unit',
      lacks: ['whether it is hazardous for nothing but its corrosivity'],
    });
  });

  it('not what goes straight into wastewater treatment, whatever else it is', () => {
    const origin = { kind: 'into-unit', unit: 'wastewater-treatment' } as const;
    expect(counted({ ...origin, straight: 'yes', onlyCorrosive: 'no' })).toEqual([
      false,
      'straight-into-unit',
    ]);
  });

  it.each([
    ['from-accumulation', 'from-accumulation'],
    ['residue-of-treatment', 'residue-of-counted'],
    ['reclaimed-on-site', 'reclaimed-on-site'],
  ] as const)('not twice: %s', (kind, rule) => {
    expect(counted({ kind, countedBefore: 'yes' })).toEqual([false, rule]);
    expect(counted({ kind, countedBefore: 'no' })).toEqual([true, 'generated']);
    expect(counted({ kind, countedBefore: 'not determined' })).toEqual([true, rule]);
  });

  it('not what is recycled straight, has rules of its own, or is not hazardous', () => {
    expect(counted({ kind: 'recycled-on-site', straight: 'yes' })).toEqual([false, 'recycled-straight']);
    expect(counted({ kind: 'recycled-on-site', straight: 'no' })).toEqual([true, 'generated']);
    expect(counted({ kind: 'own-rules' })).toEqual([false, 'own-rules']);
    expect(counted({ kind: 'not-hazardous' })).toEqual([false, 'not-hazardous']);
    expect(counted({ kind: 'episodic-event', notified: 'yes' })).toEqual([false, 'episodic']);
  });

  it('in the month where the workshop is', () => {
    const late = arising('late', kg('10'), { at: '2026-05-31T23:00:00.000Z' });
    expect(generatorMonth([late], '2026-06', 'Europe/Berlin').judged[0]?.counts).toBe(true);
    expect(generatorMonth([late], '2026-05', 'Europe/Berlin').judged[0]).toMatchObject({
      counts: false,
      rule: 'other-month',
    });
    expect(generatorMonth([late], '2026-05', 'America/New_York').judged[0]?.counts).toBe(true);
  });

  it('into the sum, and nothing else', () => {
    const found = month(
      arising('liquor', kg('210')),
      arising('moved', kg('180'), { origin: { kind: 'from-accumulation', countedBefore: 'yes' } }),
      arising('wash', kg('95')),
    );
    expect(found.nonAcute.value.toString()).toBe('305');
    expect(found.judged.map(({ counts }) => counts)).toEqual([true, false, true]);
  });

  it('each with the text of its rule', () => {
    expect(one({ kind: 'own-rules' })?.citation).toMatchObject({
      cite: expect.stringContaining('262.13(c)'),
    });
  });
});

describe('what is on site', () => {
  const total = (value: string, half = 0) => weighed('total', kg(value, half));
  const vsqg = onSiteReference.VSQG;
  const sqg = onSiteReference.SQG;

  it('reaches the limit of a very small generator, and has to pass that of a small one', () => {
    expect(vsqg && standingAgainst(total('1000.00'), vsqg, true)).toBe('over');
    expect(vsqg && standingAgainst(total('999.98'), vsqg, true)).toBe('near');
    // Half of the last digit is the range of a reading.
    expect(sqg && standingAgainst(total('6000.00'), sqg, true)).toBe('may be over');
    expect(sqg && standingAgainst(total('6000.01'), sqg, true)).toBe('over');
    expect(sqg && standingAgainst(total('5999.99'), sqg, true)).toBe('near');
  });

  it('is near by the high end of its range', () => {
    expect(vsqg && standingAgainst(total('790'), vsqg, true)).toBe('under');
    expect(vsqg && standingAgainst(total('790', 15), vsqg, true)).toBe('near');
  });

  it('of a month lacks only the mass of what the month counts', () => {
    const other = { at: '2026-06-10T12:00:00.000Z' };
    expect(month(arising('a', null, other)).unweighed).toEqual([]);
    expect(month(arising('a', null)).unweighed.map(({ id }) => id)).toEqual(['a']);
  });

  it('is not under a limit while some of it was not weighed', () => {
    expect(vsqg && standingAgainst(total('10'), vsqg, false)).toBe('not determined');
    expect(vsqg && standingAgainst(total('1001'), vsqg, false)).toBe('over');
  });

  it('is held against the own limit alone; the reference is only shown', () => {
    const without = heldAgainst(total('2000'), true, null, vsqg);
    expect(without).toMatchObject({ own: null, reference: vsqg });
    const own = weighed('own', kg('3000'));
    expect(heldAgainst(total('2000'), true, own, vsqg).own?.standing).toBe('under');
    expect(heldAgainst(total('3000.0'), true, own, null).own?.standing).toBe('may be over');
  });

  it('has no limit for a large generator', () => {
    expect([onSiteReference.LQG, monthReference.LQG]).toEqual([null, null]);
  });
});
