import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { calendarDay, dayAfter, daysBetween } from '../../src/rules/clocks/calendar-day';
import { storageClock } from '../../src/rules/clocks/storage-clock';

const days = (count: number) => ({ count, unit: 'days' }) as const;

/** RFC 5545 (iCalendar), section 3.8.5.3, examples of recurrence rules with the days that they give; read in a public copy. */
describe('days as RFC 5545 counts them', () => {
  it('every 10 days, 5 times: 2, 12, 22 September, 2, 12 October 1997', () => {
    const given = ['1997-09-02', '1997-09-12', '1997-09-22', '1997-10-02', '1997-10-12'];
    expect(given.map((_, n) => dayAfter('1997-09-02', days(10 * n)))).toEqual(given);
  });

  it('every week, 10 times, over the end of summer time: the last on 4 November 1997', () => {
    const given =
      '1997-09-02 1997-09-09 1997-09-16 1997-09-23 1997-09-30 1997-10-07 1997-10-14 1997-10-21 1997-10-28 1997-11-04'.split(
        ' ',
      );
    expect(given.map((_, n) => dayAfter('1997-09-02', days(7 * n)))).toEqual(given);
  });

  it.each([
    ['1997', '1997-04-10', '1997-07-19'],
    ['2000', '2000-04-09', '2000-07-18'],
    ['2003', '2003-04-10', '2003-07-19'],
  ])(
    'the 100th and the 200th day of %s: a leap year has them a day earlier',
    (year, hundredth, twoHundredth) => {
      expect(dayAfter(`${year}-01-01`, days(99))).toBe(hundredth);
      expect(dayAfter(`${year}-01-01`, days(199))).toBe(twoHundredth);
    },
  );

  it('an event of whole days from 28 June to, and without, 9 July 2007 lasts eleven days (section 3.6.1)', () => {
    expect(daysBetween('2007-06-28', '2007-07-09')).toBe(11);
  });
});

/** Ordinal dates: a table of the days of a common year, read on a public page; 1985-102 is an example of ISO 8601 (from memory). */
describe('the day of the year', () => {
  const firsts = [1, 32, 60, 91, 121, 152, 182, 213, 244, 274, 305, 335];
  it.each(firsts.map((ordinal, month) => [month + 1, ordinal] as const))(
    'the first of month %i is day %i of 2027, and from March on a day later in 2028',
    (month, ordinal) => {
      const first = (year: number) => `${year}-${String(month).padStart(2, '0')}-01`;
      expect(daysBetween('2027-01-01', first(2027)) + 1).toBe(ordinal);
      expect(daysBetween('2028-01-01', first(2028)) + 1).toBe(month > 2 ? ordinal + 1 : ordinal);
      expect(daysBetween('2100-01-01', first(2100)) + 1).toBe(ordinal);
    },
  );

  it('12 April 1985 is 1985-102', () => {
    expect(dayAfter('1985-01-01', days(101))).toBe('1985-04-12');
  });
});

/**
 * Julian dates at noon: 1978 from a page that quotes the Astronomical Almanac; 2000 and 2013 from an encyclopaedia, which names
 * the US Naval Observatory and the IAU. The interval: J. Meeus, Astronomical Algorithms, 2nd edition (1998), chapter 7 (from memory).
 */
describe('days between days whose Julian dates are published', () => {
  const julian = {
    '1978-01-01': 2443510,
    '1978-07-21': 2443711,
    '2000-01-01': 2451545,
    '2013-01-01': 2456294,
  };
  const known = Object.entries(julian);
  it.each(known.flatMap(([a, from]) => known.map(([b, to]) => [a, b, to - from] as const)))(
    'from %s to %s: %i',
    (a, b, between) => {
      expect(daysBetween(a, b)).toBe(between);
      expect(dayAfter(a, days(between))).toBe(b);
    },
  );

  it('from 20 April 1910 to 9 February 1986, between two returns of a comet: 27689', () => {
    expect(daysBetween('1910-04-20', '1986-02-09')).toBe(27689);
  });
});

/**
 * When a day begins, in UTC, about the days on which clocks change. Central Europe: last Sundays of March and October
 * (Directive 2000/84/EC); USA: second Sunday of March, first of November (15 U.S.C. 260a); Lord Howe, half an hour: first
 * Sundays of April and October; Kiritimati, 14 h ahead; Samoa had no 30 December 2011 (IANA time zone database, australasia).
 */
describe('a day begins at midnight where the workshop is', () => {
  it.each([
    ['Europe/Berlin', '2026-03-29', '2026-03-28T23:00Z', 23],
    ['Europe/Berlin', '2026-10-25', '2026-10-24T22:00Z', 25],
    ['America/New_York', '2026-03-08', '2026-03-08T05:00Z', 23],
    ['America/New_York', '2026-11-01', '2026-11-01T04:00Z', 25],
    ['Australia/Lord_Howe', '2026-04-05', '2026-04-04T13:00Z', 24.5],
    ['Australia/Lord_Howe', '2026-10-04', '2026-10-03T13:30Z', 23.5],
    ['Pacific/Kiritimati', '2026-12-31', '2026-12-30T10:00Z', 24],
    ['Asia/Kathmandu', '2026-12-31', '2026-12-30T18:15Z', 24],
  ])('%s, %s: at %s, and lasts %d hours', (zone, day, begins, hours) => {
    const at = (ms: number) => calendarDay(new Date(Date.parse(begins) + ms).toISOString(), zone);
    const end = hours * 3_600_000;
    expect([at(-1), at(0), at(end - 1), at(end)]).toEqual([
      dayAfter(day, days(-1)),
      day,
      day,
      dayAfter(day, days(1)),
    ]);
    expect(daysBetween(at(-1), at(end))).toBe(2);
  });

  it('in Samoa the day after 29 December 2011 was the 31st; a limit counts the day that was left out', () => {
    expect(calendarDay('2011-12-30T09:59:59.000Z', 'Pacific/Apia')).toBe('2011-12-29');
    expect(calendarDay('2011-12-30T10:00:00.000Z', 'Pacific/Apia')).toBe('2011-12-31');
    const clock = storageClock('2011-12-30T09:00:00.000Z', 2, '2011-12-30T11:00:00.000Z', 'Pacific/Apia');
    expect(clock).toMatchObject({ lastDay: '2011-12-31', daysLeft: 0 });
  });
});

/**
 * US Federal Rules of Civil Procedure, rule 6(a)(1): the day of the event is left out, every day counts, the last is counted.
 * Regulation (EEC, Euratom) 1182/71, article 3(1), leaves out the day of the event too. Counted here day by day, with the
 * lengths of the months of the Gregorian calendar.
 */
describe('so many days, counted one by one', () => {
  const isLeap = (y: number) => (y % 4 === 0 && y % 100 !== 0) || y % 400 === 0;
  const lengths = (y: number) => [31, isLeap(y) ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

  function counted(day: string, count: number): string {
    let [y = 0, m = 0, d = 0] = day.split('-').map(Number);
    for (let n = 0; n < count; n += 1) {
      d += 1;
      if (d > (lengths(y)[m - 1] ?? 0)) [m, d] = [m + 1, 1];
      if (m > 12) [y, m] = [y + 1, 1];
    }
    return `${y}-${String(m).padStart(2, '0')}-${String(d).padStart(2, '0')}`;
  }

  const zones = Intl.supportedValuesOf('timeZone');
  const moment = fc.date({
    min: new Date('2015-01-01'),
    max: new Date('2110-01-01'),
    noInvalidDate: true,
  });

  it('end on the last day of the storage clock, in any zone', () => {
    fc.assert(
      fc.property(moment, fc.integer({ min: 0, max: 1100 }), fc.constantFrom(...zones), (at, count, zone) => {
        const iso = at.toISOString();
        const clock = storageClock(iso, count, iso, zone);
        expect(clock.lastDay).toBe(counted(calendarDay(iso, zone), count));
        expect(clock.daysLeft).toBe(count);
        expect(clock.carefulDaysLeft).toBe(count - 1);
      }),
    );
  });
});
