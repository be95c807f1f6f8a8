/**
 * A year of a small workshop, from November 2027 to December 2028, with a leap day, both changes of the clocks, and entries
 * near midnight. The same entries, told in UTC, are looked at from Berlin and from New York. Every day and every total below
 * was worked out by hand; the tables beside the entries are that working.
 *
 * Calendars. 1 January 2028 is a Saturday, 2028 a leap year: 29 February exists.
 * Berlin: UTC+1; UTC+2 from Sunday 26 March 2028, 01:00 UTC, to Sunday 29 October 2028, 01:00 UTC.
 * New York: UTC−5; UTC−4 from Sunday 12 March 2028, 07:00 UTC, to Sunday 5 November 2028, 06:00 UTC.
 */
import { describe, expect, it } from 'vitest';
import { accumulationStart } from '../../../src/ledger/accumulation';
import { type Due, dues, recordsKept } from '../../../src/ledger/due';
import type { PlainBody } from '../../../src/ledger/entries/body';
import { lastMonths, monthHeld } from '../../../src/ledger/quantities-now';
import type { State } from '../../../src/ledger/state';
import {
  area,
  batch,
  code,
  containerId,
  days,
  liquid,
  mark,
  recorded,
  rule,
  saidOf,
  shelf,
  solid,
  walked,
} from './dated';
import { begun, dose, pour, treatmentEnd } from './scribe';

const [berlin, newYork] = ['Europe/Berlin', 'America/New_York'] as const;

/*
 * What was logged, with the day that it has in each place. Mass = volume × density, or as weighed.
 *
 *  n  UTC                    Berlin              New York           mass, kg
 *  1  2027-11-30 23:30       1 Dec 00:30         30 Nov 18:30       40.0 × 1.100 = 44.0   into C-01
 *  2  2027-12-01 04:45       1 Dec 05:45         30 Nov 23:45        6.0
 *  3  2028-01-01 02:00       1 Jan 03:00         31 Dec 21:00       30.0 × 1.000 = 30.0
 *  4  2028-02-29 10:00       29 Feb 11:00        29 Feb 05:00       50.0 × 1.100 = 55.0   into C-02
 *  5  2028-03-01 04:59       1 Mar 05:59         29 Feb 23:59       20.0 × 1.000 = 20.0
 *  6  2028-03-12 06:59       12 Mar 07:59        12 Mar 01:59        7.0   a minute before the clocks change
 *  7  2028-03-26 00:30       26 Mar 01:30        25 Mar 20:30       10.0 × 1.100 = 11.0   into C-03
 *  8  2028-03-31 22:30       1 Apr 00:30 (summer) 31 Mar 18:30       9.0   in winter time it were 31 Mar in Berlin
 *  9  2028-04-01 04:30       1 Apr 06:30         1 Apr 00:30 (summer) 8.0  in winter time it were 31 Mar in New York
 * 10  2028-06-10 09:00       10 Jun              10 Jun             10.0 × 1.100 = 11.0   into C-04, treated on 12 June
 * 11  2028-07-01 03:00       1 Jul 05:00         30 Jun 23:00        2.5   its sludge: not counted again
 * 12  2028-08-05 09:00       5 Aug               5 Aug               8.0 × 1.100 =  8.8   straight into a unit for waste water: left out
 * 13  2028-08-20 09:00       20 Aug              20 Aug              1.2   its sludge: of nothing that was counted, so it counts
 * 14  2028-10-31 23:30       1 Nov 00:30         31 Oct 19:30       12.0 × 1.100 = 13.2
 * 15  2028-12-01 04:30       1 Dec 05:30         30 Nov 23:30        5.0
 */
const year: State = recorded(
  ['2027-11-01T08:00:00.000Z', ...shelf(6), batch(1), batch(2)],
  [
    '2027-11-02T08:00:00.000Z',
    days('storage-days', '90'),
    days('proof-days', '45'),
    days('inspection-days', '7'),
    rule({ rule: 'retention-years', value: { value: '3', unit: 'years' } }),
    rule({ rule: 'month-limit', value: { value: '50', unit: 'kg' } }),
  ],
  ['2027-11-30T23:30:00.000Z', liquid(1, '40.0', '1.100'), pour(1, 1, '40.0')],
  ['2027-12-01T04:45:00.000Z', solid(2, '6000')],
  ['2028-01-01T02:00:00.000Z', liquid(3, '30.0', '1.000', 'wash-water')],
  ['2028-02-28T04:30:00.000Z', mark(1, 'gone')],
  ['2028-02-29T10:00:00.000Z', liquid(4, '50.0', '1.100'), pour(4, 2, '50.0')],
  ['2028-02-29T12:00:00.000Z', mark(6, 'gone')],
  ['2028-03-01T04:59:00.000Z', liquid(5, '20.0', '1.000', 'wash-water')],
  ['2028-03-12T06:59:00.000Z', solid(6, '7000')],
  ['2028-03-26T00:30:00.000Z', liquid(7, '10.0', '1.100'), pour(7, 3, '10.0')],
  ['2028-03-31T22:30:00.000Z', solid(8, '9000')],
  ['2028-04-01T04:30:00.000Z', solid(9, '8000')],
  ['2028-04-05T09:00:00.000Z', mark(1, 'proof-filed', { document: 'P-77' })],
  ['2028-05-20T12:00:00.000Z', mark(2, 'gone')],
  ['2028-06-10T09:00:00.000Z', liquid(10, '10.0', '1.100', 'barren-liquor', 1), pour(10, 4, '10.0')],
  ['2028-06-12T09:00:00.000Z', begun(1, 4), dose(1, '500'), treatmentEnd(1)],
  ['2028-07-01T03:00:00.000Z', solid(11, '2500', 'hydroxide-sludge', 1)],
  ['2028-08-05T09:00:00.000Z', liquid(12, '8.0', '1.100', 'barren-liquor', 2), pour(12, 5, '8.0')],
  ['2028-08-05T10:00:00.000Z', saidOf(12, 'straight-into-water-treatment')],
  ['2028-08-06T09:00:00.000Z', begun(2, 5), dose(2, '400'), treatmentEnd(2)],
  ['2028-08-20T09:00:00.000Z', solid(13, '1200', 'hydroxide-sludge', 2)],
  ['2028-10-28T23:30:00.000Z', ...walked(1, 3, 4, 5)],
  ['2028-10-31T23:30:00.000Z', liquid(14, '12.0', '1.100')],
  ['2028-12-01T04:30:00.000Z', solid(15, '5000')],
);

/*
 * Waste counted in each month, kg.
 *
 *            Berlin                       New York
 * 2027-11    0                            44.0 + 6.0 = 50.0
 * 2027-12    44.0 + 6.0 = 50.0            30.0
 * 2028-01    30.0                         0
 * 2028-02    55.0                         55.0 + 20.0 = 75.0
 * 2028-03    20.0 + 7.0 + 11.0 = 38.0     7.0 + 11.0 + 9.0 = 27.0
 * 2028-04    9.0 + 8.0 = 17.0             8.0
 * 2028-05    0                            0
 * 2028-06    11.0                         11.0 (the sludge of 30 June is left out)
 * 2028-07    0 (the sludge of 1 July)     0
 * 2028-08    1.2 (8.8 are left out)       1.2
 * 2028-09    0                            0
 * 2028-10    0                            13.2
 * 2028-11    13.2                         5.0
 * 2028-12    5.0                          0
 * in all     220.4                        220.4
 */
const months: readonly (readonly [month: string, berlin: number, newYork: number])[] = [
  ['2027-11', 0, 50],
  ['2027-12', 50, 30],
  ['2028-01', 30, 0],
  ['2028-02', 55, 75],
  ['2028-03', 38, 27],
  ['2028-04', 17, 8],
  ['2028-05', 0, 0],
  ['2028-06', 11, 11],
  ['2028-07', 0, 0],
  ['2028-08', 1.2, 1.2],
  ['2028-09', 0, 0],
  ['2028-10', 0, 13.2],
  ['2028-11', 13.2, 5],
  ['2028-12', 5, 0],
];

describe('the months of the year', () => {
  it.each(months)('%s: %d kg seen from Berlin, %d kg seen from New York', (month, inBerlin, inNewYork) => {
    const counted = (zone: string) => monthHeld(year, month, zone).month.nonAcute.value.toNumber();
    expect(counted(berlin)).toBeCloseTo(inBerlin, 9);
    expect(counted(newYork)).toBeCloseTo(inNewYork, 9);
  });

  it('count everything once, wherever it is looked at from', () => {
    const all = (zone: string) =>
      months.reduce((sum, [m]) => sum + monthHeld(year, m, zone).month.nonAcute.value.toNumber(), 0);
    expect([all(berlin), all(newYork)]).toEqual([expect.closeTo(220.4, 9), expect.closeTo(220.4, 9)]);
  });

  it('against an own limit of 50 kg: reaching it is not over, 5 % of the volume may be; 55 kg and 75 kg are', () => {
    const standing = (month: string, zone: string) => monthHeld(year, month, zone).against.own?.standing;
    // 44.0 kg were read on a vessel to 5 %, so that the high end of 50.0 kg lies above the limit.
    expect([standing('2027-12', berlin), standing('2027-11', newYork)]).toEqual([
      'may be over',
      'may be over',
    ]);
    expect([standing('2028-02', berlin), standing('2028-02', newYork)]).toEqual(['over', 'over']);
    expect([standing('2028-01', berlin), standing('2028-05', berlin)]).toEqual(['under', 'under']);
  });

  it('are twelve on a page, over the turn of the year and the short February', () => {
    expect(lastMonths(year, '2028-03', berlin).map(({ month }) => month.month)).toEqual([
      ...['2028-03', '2028-02', '2028-01', '2027-12', '2027-11', '2027-10'],
      ...['2027-09', '2027-08', '2027-07', '2027-06', '2027-05', '2027-04'],
    ]);
  });
});

/*
 * Last days, by hand. Storage 90 days, proof 45 days, both + N and the careful + N − 1.
 *
 * C-01, storage, from 1 Dec in Berlin: 31 Dec + 30, 31 Jan + 61, 29 Feb + 90   → 29 Feb, careful 28 Feb
 *                from 30 Nov in New York, a day earlier                        → 28 Feb, careful 27 Feb
 * C-01, gone 2028-02-28 04:30 UTC: 28 Feb 05:30 in Berlin, 27 Feb 23:30 in New York.
 *       proof, from 28 Feb: 29 Feb + 1, 31 Mar + 32, 13 Apr + 45               → 13 Apr, careful 12 Apr
 *       proof, from 27 Feb, a day earlier                                      → 12 Apr, careful 11 Apr
 * C-02, storage, from 29 Feb in both: 31 Mar + 31, 30 Apr + 61, 29 May + 90    → 29 May, careful 28 May
 * C-02, gone 20 May: 31 May + 11, 30 Jun + 41, 4 Jul + 45                      → 4 Jul, careful 3 Jul
 * C-03, storage, from 26 Mar in Berlin: 31 Mar + 5, 30 Apr + 35, 31 May + 66, 24 Jun + 90 → 24 Jun, careful 23 Jun
 *                from 25 Mar in New York, a day earlier                        → 23 Jun, careful 22 Jun
 * C-06, gone 29 Feb: 31 Mar + 31, 14 Apr + 45                                  → 14 Apr, careful 13 Apr
 */
const dayOf = (kind: Due['kind'], n: number, at: string, zone: string) => {
  const due = dues(year, at, zone).find((one) => one.kind === kind && one.containerId === containerId(n));
  return due && [due.from, due.day, due.lastDay, due.daysLeft];
};

/** The record as it stood then, since an entry of later would be looked at too. */
const asOf = (at: string): State => {
  const before = year.log.filter(({ happenedAt }) => happenedAt <= at);
  return recorded(...before.map(({ happenedAt, body }) => [happenedAt, body as PlainBody] as const));
};

const leaves = (n: number, at: string, zone: string) => {
  const due = dues(asOf(at), at, zone).find(
    (one) => one.kind === 'leave' && one.containerId === containerId(n),
  );
  return due && [due.from, due.day, due.lastDay, due.daysLeft];
};

describe('the last days of the year', () => {
  it.each([
    // From Berlin, half an hour before and after midnight: on the careful day, then over it.
    [1, '2028-02-27T22:30:00.000Z', berlin, ['2027-12-01', '2028-02-28', '2028-02-29', 1]],
    [1, '2028-02-27T23:30:00.000Z', berlin, ['2027-12-01', '2028-02-28', '2028-02-29', 0]],
    [1, '2028-02-27T23:30:00.000Z', newYork, ['2027-11-30', '2028-02-27', '2028-02-28', 0]],
    [1, '2028-02-27T04:30:00.000Z', newYork, ['2027-11-30', '2028-02-27', '2028-02-28', 1]],
    // Begun on the leap day.
    [2, '2028-05-01T12:00:00.000Z', berlin, ['2028-02-29', '2028-05-28', '2028-05-29', 27]],
    [2, '2028-05-01T12:00:00.000Z', newYork, ['2028-02-29', '2028-05-28', '2028-05-29', 27]],
    // Begun an hour before the clocks change in Berlin.
    [3, '2028-06-24T12:00:00.000Z', berlin, ['2028-03-26', '2028-06-23', '2028-06-24', -1]],
    [3, '2028-06-24T12:00:00.000Z', newYork, ['2028-03-25', '2028-06-22', '2028-06-23', -2]],
  ] as const)('C-0%d must leave, looked at on %s from %s', (n, at, zone, expected) => {
    expect(leaves(n, at, zone)).toEqual(expected);
  });

  it('of storage are none for what is gone', () => {
    expect(leaves(1, '2028-02-28T05:00:00.000Z', berlin)).toBeUndefined();
    expect(leaves(2, '2028-05-20T13:00:00.000Z', newYork)).toBeUndefined();
  });

  it.each([
    [2, berlin, ['2028-05-20', '2028-07-03', '2028-07-04', 3]],
    [2, newYork, ['2028-05-20', '2028-07-03', '2028-07-04', 3]],
    [6, berlin, ['2028-02-29', '2028-04-13', '2028-04-14', -78]],
  ] as const)('proof of C-0%d is awaited, seen from %s on 30 June', (n, zone, expected) => {
    // From 13 April: 30 Apr is 17, 31 May 48, 30 Jun 78 days later. From 30 June to 3 July: 3.
    expect(dayOf('proof', n, '2028-06-30T12:00:00.000Z', zone)).toEqual(expected);
  });

  it('of a proof count from the day in the place of the workshop, and end with its filing', () => {
    const at = '2028-04-01T12:00:00.000Z';
    const proof = (zone: string) => {
      const due = dues(asOf(at), at, zone).find(({ id }) => id === `proof/${containerId(1)}`);
      return due && [due.from, due.day, due.lastDay];
    };
    expect(proof(berlin)).toEqual(['2028-02-28', '2028-04-12', '2028-04-13']);
    expect(proof(newYork)).toEqual(['2028-02-27', '2028-04-11', '2028-04-12']);
    expect(dayOf('proof', 1, '2028-04-06T12:00:00.000Z', berlin)).toBeUndefined();
  });

  it('of the walk count from its day, on the night on which the clocks change', () => {
    // 2028-10-28 23:30 UTC is 29 Oct 01:30 in Berlin, still in summer time, and 28 Oct 19:30 in New York; + 7 days.
    const walk = (zone: string) => {
      const at = '2028-11-03T12:00:00.000Z';
      const due = dues(year, at, zone).find(({ kind }) => kind === 'walk');
      return due && [due.from, due.day, due.daysLeft];
    };
    expect(walk(berlin)).toEqual(['2028-10-29', '2028-11-05', 2]);
    expect(walk(newYork)).toEqual(['2028-10-28', '2028-11-04', 1]);
  });
});

describe('records of the year', () => {
  const kept = (n: number, zone: string) => {
    const container = year.containers.get(containerId(n));
    return container && recordsKept(year, container, '2028-12-31T12:00:00.000Z', zone)?.keepThrough;
  };

  it('are kept for three years, those of a leap day to 1 March', () => {
    expect(kept(2, berlin)).toBe('2031-05-20');
    expect(kept(6, berlin)).toBe('2031-03-01');
    expect([kept(1, berlin), kept(1, newYork)]).toEqual(['2031-02-28', '2031-02-27']);
  });
});

/*
 * Beside the work: limit 20 L, three days to move what is more. Read on the vessel to 5 %.
 *
 * 2028-10-25 12:00 UTC   19.5 L: by its high end, 19.5 × 1.05 = 20.475 L, it may be over from 25 Oct on.
 *                        + 3 → 28 Oct, careful 27 Oct
 * 2028-10-28 22:30 UTC   + 2.0 L = 21.5 L: over. 29 Oct 00:30 in Berlin, 28 Oct 18:30 in New York. The days run since 25 Oct.
 * 2028-10-30 12:00 UTC   brought to the store: nothing is over, and 90 days begin:
 *                        31 Oct + 1, 30 Nov + 31, 31 Dec + 62, 28 Jan + 90 → 28 Jan 2029, careful 27 Jan
 */
describe('beside the work, over the night on which the clocks change', () => {
  const first = [
    ['2028-10-01T08:00:00.000Z', ...shelf(1), days('storage-days', '90'), days('near-work-days', '3')],
    ['2028-10-01T08:01:00.000Z', rule({ rule: 'near-work-limit', value: { value: '20', unit: 'L' } })],
    ['2028-10-01T08:02:00.000Z', area(1, 'near-work')],
    ['2028-10-25T12:00:00.000Z', liquid(1, '30.0', '1.000'), pour(1, 1, '19.5')],
  ] as const;
  const more = ['2028-10-28T22:30:00.000Z', pour(1, 1, '2.0')] as const;
  const store = ['2028-10-30T12:00:00.000Z', area(1, 'store')] as const;
  const excess = (state: State, at: string, zone: string) =>
    dues(state, at, zone).find(({ kind }) => kind === 'move-excess');

  it('days run from when it may be over, and say that it may', () => {
    for (const zone of [berlin, newYork])
      expect(excess(recorded(...first), '2028-10-26T12:00:00.000Z', zone)).toMatchObject({
        id: 'move-excess/2028-10-25',
        day: '2028-10-27',
        lastDay: '2028-10-28',
        daysLeft: 1,
        unsure: true,
      });
  });

  it('the earlier day stays when it is over for sure', () => {
    const due = excess(recorded(...first, more), '2028-10-29T12:00:00.000Z', berlin);
    expect(due).toMatchObject({ from: '2028-10-25', day: '2028-10-27', lastDay: '2028-10-28', daysLeft: -2 });
    expect(due).not.toHaveProperty('unsure');
  });

  it('one that is over at once counts from the day where the workshop is', () => {
    const state = recorded(...first.slice(0, 3), [
      '2028-10-28T22:30:00.000Z',
      liquid(1, '30.0', '1.000'),
      pour(1, 1, '21.5'),
    ]);
    const found = (zone: string) => excess(state, '2028-10-29T12:00:00.000Z', zone);
    expect(found(berlin)).toMatchObject({ from: '2028-10-29', day: '2028-10-31', lastDay: '2028-11-01' });
    expect(found(newYork)).toMatchObject({ from: '2028-10-28', day: '2028-10-30', lastDay: '2028-10-31' });
  });

  it('storage time begins on the day it was brought to the store, and nothing is over any more', () => {
    const state = recorded(...first, more, store);
    const at = '2028-10-31T12:00:00.000Z';
    expect(excess(state, at, berlin)).toBeUndefined();
    expect(dues(state, at, berlin).find(({ kind }) => kind === 'leave')).toMatchObject({
      from: '2028-10-30',
      day: '2029-01-27',
      lastDay: '2029-01-28',
      daysLeft: 88,
    });
    const container = state.containers.get(containerId(1));
    expect(container?.body.code).toBe(code(1));
    expect(container && accumulationStart(state, container)).toBe('2028-10-30T12:00:00.000Z');
  });
});
