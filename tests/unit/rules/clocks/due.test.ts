import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { given, within } from '../../../../src/quantities/figure';
import { inspectionDue } from '../../../../src/rules/clocks/inspection-due';
import { type Level, nearTheWork } from '../../../../src/rules/clocks/near-the-work';
import { proofDue } from '../../../../src/rules/clocks/proof-due';
import { retention } from '../../../../src/rules/clocks/retention';
import { timeLimit } from '../../../../src/rules/clocks/time-limit';

const litres = (value: number, half = 0) =>
  given({
    origin: `level/${value}`,
    sentence: 'In it',
    value,
    unit: 'L',
    how: 'reading',
    spread: within(half),
  });

describe('a time limit', () => {
  it('keeps both readings: with the first day as day 0, and as day 1', () => {
    expect(timeLimit('2026-11-24', { count: 180, unit: 'days' }, '2027-05-01')).toEqual({
      lastDay: '2027-05-23',
      carefulLastDay: '2027-05-22',
      daysLeft: 22,
      carefulDaysLeft: 21,
    });
  });

  it('on the last day none is left, and it has not passed', () => {
    expect(timeLimit('2026-01-01', { count: 90, unit: 'days' }, '2026-04-01')).toMatchObject({
      daysLeft: 0,
      carefulDaysLeft: -1,
    });
  });

  it('in years ends on the same date', () => {
    expect(timeLimit('2027-06-30', { count: 1, unit: 'years' }, '2027-06-30')).toMatchObject({
      lastDay: '2028-06-30',
      carefulLastDay: '2028-06-29',
      daysLeft: 366,
    });
  });
});

describe('an inspection is due', () => {
  it('so many days after the last walk', () => {
    expect(inspectionDue('2026-10-01', '2026-11-20', 7, '2026-11-29')).toEqual({
      due: '2026-11-27',
      daysLeft: -2,
    });
  });

  it('so many days after the first waste where nobody has walked since', () => {
    expect(inspectionDue('2026-11-24', null, 7, '2026-11-29')?.due).toBe('2026-12-01');
    expect(inspectionDue('2026-11-24', '2026-11-20', 7, '2026-11-29')?.due).toBe('2026-12-01');
  });

  it('never, while there is no waste', () => {
    expect(inspectionDue(null, '2026-11-20', 7, '2026-11-29')).toBeNull();
  });
});

describe('waste that stands near the work', () => {
  const limit = litres(208.2);
  const at = (day: string, volume: Level['volume']): Level => ({ at: `${day}T12:00:00.000Z`, volume });
  const judged = (...levels: Level[]) => nearTheWork(levels, limit, 3, '2026-03-06', 'UTC');

  it('at the limit has not passed it', () => {
    expect(judged(at('2026-03-01', litres(208.2))).passed).toBeNull();
  });

  it('over it has three consecutive calendar days, weekends among them', () => {
    // 6 March 2026 is a Friday.
    expect(judged(at('2026-03-01', litres(200)), at('2026-03-06', litres(208.3))).passed).toEqual({
      since: '2026-03-06',
      lastDay: '2026-03-09',
      carefulLastDay: '2026-03-08',
      daysLeft: 3,
      carefulDaysLeft: 2,
    });
  });

  it('more on top does not begin the days anew', () => {
    expect(judged(at('2026-03-02', litres(209)), at('2026-03-05', litres(220))).passed?.since).toBe(
      '2026-03-02',
    );
  });

  it('once moved, and passed again, begins anew', () => {
    const found = judged(
      at('2026-03-01', litres(209)),
      at('2026-03-02', litres(100)),
      at('2026-03-05', litres(210)),
    );
    expect(found.passed?.since).toBe('2026-03-05');
    expect(judged(at('2026-03-01', litres(209)), at('2026-03-02', litres(100))).passed).toBeNull();
  });

  it('poured from one container there into another does not begin anew', () => {
    const found = judged(
      at('2026-03-01', litres(210)),
      at('2026-03-04', litres(150)),
      at('2026-03-04', litres(210)),
    );
    expect(found.passed?.since).toBe('2026-03-01');
  });

  it('just reaching it at the high end has not passed it', () => {
    expect(judged(at('2026-03-03', litres(207.2, 1))).mayHavePassed).toBeNull();
    expect(judged(at('2026-03-03', litres(207.2, 1.1))).mayHavePassed?.since).toBe('2026-03-03');
  });

  it('may have passed it at the high end of its range, before it has by its value', () => {
    const found = judged(at('2026-03-03', litres(205, 5)), at('2026-03-05', litres(209, 5)));
    expect(found.mayHavePassed?.since).toBe('2026-03-03');
    expect(found.passed?.since).toBe('2026-03-05');
  });

  it('passes it on the day where the workshop is', () => {
    const late = { at: '2026-03-05T23:30:00.000Z', volume: litres(210) };
    expect(nearTheWork([late], limit, 3, '2026-03-06', 'Europe/Berlin').passed?.since).toBe('2026-03-06');
  });

  it('of which nothing was ever told is neither over nor there', () => {
    expect(judged()).toEqual({ now: null, passed: null, mayHavePassed: null });
  });
});

describe('the proof', () => {
  it('is awaited for so many days from the handing over', () => {
    expect(proofDue('2026-10-01', null, 45, '2026-11-29')).toMatchObject({
      state: 'awaited',
      lastDay: '2026-11-15',
      daysLeft: -14,
    });
  });

  it('that came is awaited no more, however late', () => {
    expect(proofDue('2026-01-01', '2026-11-01', 45, '2026-11-29')).toEqual({
      state: 'received',
      on: '2026-11-01',
    });
  });
});

describe('records are kept', () => {
  it('through the same date so many years on', () => {
    expect(retention('2026-05-31', 3, '2029-06-01')).toEqual({
      anniversary: '2029-05-31',
      keepThrough: '2029-05-31',
      daysLeft: -1,
    });
  });

  it('through 1 March where the year has no leap day: the later end is the careful one', () => {
    expect(retention('2028-02-29', 3, '2031-02-28')).toEqual({
      anniversary: '2031-02-28',
      keepThrough: '2031-03-01',
      daysLeft: 1,
    });
    expect(retention('2028-02-29', 4, '2028-03-01')?.keepThrough).toBe('2032-02-29');
    expect(retention('2096-02-29', 4, '2096-03-01')?.keepThrough).toBe('2100-03-01');
  });

  it('without an end while nothing was shipped', () => {
    expect(retention(null, 3, '2031-02-28')).toBeNull();
  });

  it('never shorter than so many times 365 days', () => {
    const shipped = fc
      .date({ min: new Date('2000-01-01'), max: new Date('2120-01-01'), noInvalidDate: true })
      .map((d) => d.toISOString().slice(0, 10));
    fc.assert(
      fc.property(shipped, fc.integer({ min: 1, max: 30 }), (last, years) => {
        expect(retention(last, years, last)?.daysLeft).toBeGreaterThanOrEqual(365 * years);
      }),
    );
  });
});
