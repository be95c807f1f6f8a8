import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { evaluateClock } from '../../cases/clock-case';
import { evaluateFolder, failedIn, passedIn } from '../../cases/evaluate';
import { evaluateGeneratorMonth } from '../../cases/generator-month-case';
import { acuteOf, originOf } from '../../cases/origin-words';

describe('cases made wrong on purpose fail in all that is wrong', () => {
  const wrong = evaluateFolder(fileURLToPath(new URL('../../cases/wrong-on-purpose', import.meta.url)));
  it.each([
    ['W-clock', 0, 4],
    ['W-month', 0, 3],
  ])('%s', (id, passed, failed) => {
    const outcome = wrong.find((one) => one.id === id)?.outcome;
    expect(outcome && [passedIn(outcome), failedIn(outcome)]).toEqual([passed, failed]);
  });
});

describe('a clock by the name of its rule', () => {
  const lastDay = (rule: string, more: object = {}) => {
    const input = { rule, start: '2026-01-31', on: '2026-02-01', ...more };
    return (evaluateClock({ id: 'x', kind: 'clock', input, expected: {} }).computed as { lastDay: unknown })
      .lastDay;
  };

  it.each([
    ['LQG-90', '2026-05-01'],
    ['SQG', '2026-07-30'],
    ['SQG-270', '2026-10-28'],
    ['satellite-3', '2026-02-03'],
    ['satellite-55gal', '2026-02-03'],
    ['EU-storage-1y', '2027-01-31'],
    ['EU-storage-before-recovery', '2029-01-31'],
    ['EU-storage-3-years', '2029-01-31'],
    ['retention-3y', '2029-01-31'],
    ['exception-LQG-45', '2026-03-17'],
    ['SQG exception report', '2026-04-01'],
    ['inspection-weekly', '2026-02-07'],
    ['LOCAL-120', '2026-05-31'],
    ['P30D', '2026-03-02'],
    ['VSQG', null],
    ['VSQG-1000', '2026-07-30'],
    ['VSQG over 1000 kg', '2026-07-30'],
    ['VSQG-under-1000', null],
    ['EU-365', '2027-01-31'],
    ['SQG 180 days (40 CFR 262.16)', '2026-07-30'],
    ['excess-55-gal', '2026-02-03'],
  ])('%s', (rule, day) => {
    expect(lastDay(rule)).toBe(day);
  });

  it('has the longer time only where the site is far', () => {
    expect(lastDay('SQG-270', { distanceMiles: 199 })).toBe('2026-07-30');
    expect(lastDay('SQG-270', { distanceMiles: 200 })).toBe('2026-10-28');
    expect(lastDay('SQG', { distanceMiles: 200 })).toBe('2026-10-28');
  });

  it('compares what it knows and tells the rest; with nothing to compare it fails', () => {
    const of = (expected: Record<string, string | null>) =>
      evaluateClock({ id: 'x', kind: 'clock', input: { rule: 'VSQG', start: '2026-01-31' }, expected });
    const { checks, notes } = of({ lastDay: null, why: 'no federal clock' });
    expect([checks.map(({ ok }) => ok), notes]).toEqual([[true], ['not compared: why']]);
    expect(of({ keepThrough: '2026-12-31' }).checks[0]?.ok).toBe(false);
    expect(of({ why: 'no federal clock' }).checks[0]?.ok).toBe(false);
  });

  it('has none before anything has started, and is not guessed where its name says nothing', () => {
    expect(lastDay('LQG-90', { start: null })).toBeNull();
    expect(() => lastDay('by-and-by')).toThrow('no rule');
  });

  it.each([
    ['2026-03-28T23:30:00Z', 'Europe/Berlin', '2026-03-30'],
    ['2026-03-28T23:30:00Z', 'America/New_York', '2026-03-29'],
    ['2026-03-28T23:30:00Z[Europe/Berlin]', undefined, '2026-03-30'],
    ['2026-03-28T23:30:00-05:00', undefined, '2026-03-29'],
    ['2026-03-28T23:30:00', 'Europe/Berlin', '2026-03-29'],
  ])('started at %s (%s)', (start, zone, day) => {
    expect(lastDay('1d', { start, ...(zone ? { zone } : {}) })).toBe(day);
  });
});

describe('how waste came about, from its words', () => {
  const kindOf = (words: string) => originOf(words, false, '2026-05').kind;

  it.each([
    ['leach liquor', 'generated'],
    ['liquor collected in the satellite area at the bench', 'generated'],
    ['spent etchant sent off site for recycling', 'generated'],
    ['ceramic residue from leaching, wet with liquor', 'generated'],
    ['container not empty, residue of liquor', 'generated'],
    ['used oil mixed with hazardous waste', 'generated'],
    ['leach liquor generated in May', 'generated'],
    ['leach liquor generated in April, kept in the central area', 'from-accumulation'],
    ['container moved from satellite to central area', 'from-accumulation'],
    ['drum emptied and returned to accumulation', 'from-accumulation'],
    ['wash water straight into the elementary neutralisation unit', 'into-unit'],
    ['sludge from the elementary neutralization unit', 'residue-of-treatment'],
    ['hydroxide sludge from treating liquor already counted', 'residue-of-treatment'],
    ['spent acid recycled straight on generation', 'recycled-on-site'],
    ['spent acid reclaimed on site, counted once', 'reclaimed-on-site'],
    ['used oil', 'own-rules'],
    ['universal waste lamps', 'own-rules'],
    ['residue in an RCRA-empty container', 'own-rules'],
    ['episodic event, notified', 'episodic-event'],
    ['washed ceramic, non-hazardous', 'not-hazardous'],
    ['household waste', 'not-hazardous'],
    ['rinse of emptied containers (D002)', 'generated'],
    ['drum re-packed', 'from-accumulation'],
    ['neutralised filtrate from the liquor above', 'residue-of-treatment'],
  ])('%s: %s', (words, kind) => {
    expect(kindOf(words)).toBe(kind);
  });

  it('straight into the unit, or after it stood; only corrosive, or silver in it', () => {
    const unit = (words: string) => originOf(words, false, '2026-05');
    const into = 'into the elementary neutralisation unit';
    expect(unit(`D002 wash water, no silver, directly ${into}`)).toMatchObject({
      straight: 'yes',
      onlyCorrosive: 'yes',
    });
    expect(unit(`wash water stored in a drum before it goes ${into}`)).toMatchObject({ straight: 'no' });
    expect(unit(`liquor D002, D011, directly ${into}`)).toMatchObject({ onlyCorrosive: 'no' });
  });

  it('what is left of treating was counted where other waste of the month was, if nothing else is said', () => {
    const sludge = (words: string, othersCount: boolean) => originOf(words, othersCount, '2026-05');
    const words = 'sludge from liming the liquor';
    expect(sludge(words, true)).toMatchObject({ countedBefore: 'yes' });
    expect(sludge(words, false)).toMatchObject({ countedBefore: 'not determined' });
    expect(sludge(`${words}, never counted`, true)).toMatchObject({ countedBefore: 'no' });
    expect(sludge('sludge from the elementary neutralisation unit', true)).toMatchObject({
      countedBefore: 'no',
    });
  });

  it('reads where it went under a key of its own, and what counts for the first time', () => {
    const events = [
      { what: 'wash water D002', kg: '9', to: 'elementary neutralisation unit', direct: true },
      { what: 'spent solvent reclaimed on site, counted the first time', kg: '5' },
    ];
    const input = { month: '2026-05', zone: 'UTC', events };
    const { checks } = evaluateGeneratorMonth({
      id: 'x',
      kind: 'generator-month',
      input,
      expected: { countedEvents: [1], countedKg: '5' },
    });
    expect(checks.map(({ ok }) => ok)).toEqual([true, true]);
  });

  it('reads a mass or a volume under any of its names', () => {
    const counted = (amount: object) => {
      const events = [{ what: 'leach liquor', ...amount }];
      const input = { month: '2026-05', zone: 'UTC', events };
      const { computed } = evaluateGeneratorMonth({ id: 'x', kind: 'generator-month', input, expected: {} });
      return Number((computed as { countedKg: string }).countedKg);
    };
    expect(counted({ litre: '100', densityKgPerL: '1.2' })).toBeCloseTo(120, 9);
    expect(counted({ massKg: '7' })).toBe(7);
    expect(counted({ lbs: '100' })).toBeCloseTo(45.359237, 9);
    expect(() => counted({ kg: 'much' })).toThrow();
  });

  it('acute or not', () => {
    expect([
      acuteOf('acute hazardous waste'),
      acuteOf('P105'),
      acuteOf('a P-listed reagent'),
      acuteOf('non-acute liquor'),
      acuteOf('clean-up of a spill of acute waste'),
    ]).toEqual(['acute', 'acute', 'acute', 'no', 'acute-spill']);
  });
});
