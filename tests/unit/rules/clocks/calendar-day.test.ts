import fc from 'fast-check';
import { afterEach, describe, expect, it, vi } from 'vitest';
import {
  calendarDay,
  dayAfter,
  daysBetween,
  daysOfMonth,
  monthOf,
} from '../../../../src/rules/clocks/calendar-day';

const day = fc
  .date({ min: new Date('1990-01-01'), max: new Date('2150-12-31'), noInvalidDate: true })
  .map((d) => d.toISOString().slice(0, 10));
const zones = [
  'Europe/Berlin',
  'America/New_York',
  'Australia/Lord_Howe',
  'Pacific/Kiritimati',
  'Pacific/Apia',
  'America/St_Johns',
  'Asia/Kathmandu',
  'Africa/Casablanca',
  'UTC',
  '+845',
  '-570',
];

describe('calendar days', () => {
  it('so many days on, the difference is so many', () => {
    fc.assert(
      fc.property(day, fc.integer({ min: -4000, max: 40000 }), (from, count) => {
        expect(daysBetween(from, dayAfter(from, { count, unit: 'days' }))).toBe(count);
      }),
    );
  });

  it('so many days on, and so many back, is the same day', () => {
    fc.assert(
      fc.property(day, fc.integer({ min: 0, max: 4000 }), (from, count) => {
        const there = dayAfter(from, { count, unit: 'days' });
        expect(dayAfter(there, { count: -count, unit: 'days' })).toBe(from);
      }),
    );
  });

  // Clocks of some zones went back over midnight by up to an hour.
  it('a moment two hours later or more is never on an earlier day, in any zone', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...zones),
        fc.date({ min: new Date('1990-01-01'), max: new Date('2110-01-01'), noInvalidDate: true }),
        fc.integer({ min: 2 * 3_600_000, max: 3 * 86_400_000 }),
        (zone, at, later) => {
          const [a, b] = [at, new Date(at.getTime() + later)].map((d) => calendarDay(d.toISOString(), zone));
          expect(daysBetween(a ?? '', b ?? '')).toBeGreaterThanOrEqual(0);
        },
      ),
    );
  });

  it('a year on from the leap day is the last of February, four years on the leap day', () => {
    expect(dayAfter('2028-02-29', { count: 1, unit: 'years' })).toBe('2029-02-28');
    expect(dayAfter('2028-02-29', { count: 4, unit: 'years' })).toBe('2032-02-29');
  });

  it('a month on from the 31st is the last of a shorter month', () => {
    expect(dayAfter('2026-01-31', { count: 1, unit: 'months' })).toBe('2026-02-28');
  });

  it('what no calendar reaches is the last day that can be written, and still later than any other', () => {
    for (const count of [99_999_999, 3_000_000])
      expect(dayAfter('2026-03-02', { count, unit: 'days' })).toBe('9999-12-31');
    expect(dayAfter('9999-12-30', { count: 1, unit: 'days' })).toBe('9999-12-31');
  });

  it('2100 has no leap day, 2000 had one', () => {
    expect(daysOfMonth('2100-02').last).toBe('2100-02-28');
    expect(daysOfMonth('2000-02').last).toBe('2000-02-29');
    expect(daysBetween('2100-02-28', '2100-03-01')).toBe(1);
  });
});

describe('the month is the one where the workshop is', () => {
  const at = '2026-05-31T23:00:00.000Z';
  it.each([
    ['Europe/Berlin', '2026-06'],
    ['America/New_York', '2026-05'],
    ['Pacific/Kiritimati', '2026-06'],
    ['+60', '2026-06'],
    ['-300', '2026-05'],
  ])('%s', (zone, month) => {
    expect(monthOf(at, zone)).toBe(month);
  });

  it('a zone that is none is no guess', () => {
    expect(() => calendarDay(at, 'Europe/Nowhere')).toThrow(RangeError);
  });
});

describe('days are the same whatever zone the device is set to', () => {
  afterEach(() => vi.unstubAllEnvs());

  // Apia had no 30 December 2011; in Berlin summer time begins on 29 March 2026, in Cairo at midnight of 24 April.
  it.each(['Pacific/Apia', 'Europe/Berlin', 'Africa/Cairo', 'America/Los_Angeles'])('%s', (zone) => {
    vi.stubEnv('TZ', zone);
    expect(new Date('2026-07-01T00:00').toISOString()).not.toBe('2026-07-01T00:00:00.000Z');
    expect(dayAfter('2011-12-29', { count: 1, unit: 'days' })).toBe('2011-12-30');
    expect(daysBetween('2011-12-29', '2011-12-31')).toBe(2);
    expect(dayAfter('2026-03-28', { count: 2, unit: 'days' })).toBe('2026-03-30');
    expect(dayAfter('2026-04-23', { count: 1, unit: 'days' })).toBe('2026-04-24');
    expect(daysOfMonth('2028-02')).toEqual({ first: '2028-02-01', last: '2028-02-29' });
  });
});
