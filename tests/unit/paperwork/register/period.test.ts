import { describe, expect, test } from 'vitest';
import { isIn, periodOf, quarterDays, spanDays } from '../../../../src/paperwork/register/period';

/** Days of which the first moment and the first one after were looked up by the offsets from UTC of the zone. */
const days = [
  // UTC+1, no change.
  ['Europe/Paris', '2026-01-15', '2026-01-14T23:00:00.000Z', '2026-01-15T23:00:00.000Z'],
  // 23 hours: on 29 March 2026 the clocks go from UTC+1 to UTC+2.
  ['Europe/Paris', '2026-03-29', '2026-03-28T23:00:00.000Z', '2026-03-29T22:00:00.000Z'],
  // 25 hours: on 1 November 2026 they go from UTC−4 to UTC−5.
  ['America/New_York', '2026-11-01', '2026-11-01T04:00:00.000Z', '2026-11-02T05:00:00.000Z'],
  // The furthest ahead and behind.
  ['Pacific/Kiritimati', '2026-06-01', '2026-05-31T10:00:00.000Z', '2026-06-01T10:00:00.000Z'],
  ['Pacific/Pago_Pago', '2026-06-01', '2026-06-01T11:00:00.000Z', '2026-06-02T11:00:00.000Z'],
  // Half an hour, and a day that a clock change begins at midnight: Beirut has no 00:00 on 29 March 2026.
  ['Asia/Kolkata', '2026-06-01', '2026-05-31T18:30:00.000Z', '2026-06-01T18:30:00.000Z'],
  ['Asia/Beirut', '2026-03-29', '2026-03-28T22:00:00.000Z', '2026-03-29T21:00:00.000Z'],
] as const;

describe('the days of a register', () => {
  test.each(days)('in %s, %s begins and ends by the clock there', (zone, day, from, until) => {
    expect(periodOf({ firstDay: day, lastDay: day }, zone)).toMatchObject({ from, until });
  });

  test('hold their first moment and not the first one after', () => {
    const march = periodOf({ firstDay: '2026-03-01', lastDay: '2026-03-31' }, 'Europe/Paris');
    expect(isIn(march, '2026-02-28T22:59:59.999Z')).toBe(false);
    expect(isIn(march, '2026-02-28T23:00:00.000Z')).toBe(true);
    expect(isIn(march, '2026-03-31T21:59:59.999Z')).toBe(true);
    expect(isIn(march, '2026-03-31T22:00:00.000Z')).toBe(false);
  });

  test('are refused the wrong way round', () => {
    expect(() => periodOf({ firstDay: '2026-03-02', lastDay: '2026-03-01' }, 'UTC')).toThrow(RangeError);
  });

  test('of a quarter and of what is over go across the turn of a year', () => {
    expect(quarterDays('2026-05-14')).toEqual({ firstDay: '2026-04-01', lastDay: '2026-06-30' });
    expect(quarterDays('2028-02-29')).toEqual({ firstDay: '2028-01-01', lastDay: '2028-03-31' });
    expect(quarterDays('2026-12-31')).toEqual({ firstDay: '2026-10-01', lastDay: '2026-12-31' });
    expect(spanDays('last-month', '2028-03-31')).toEqual({ firstDay: '2028-02-01', lastDay: '2028-02-29' });
    expect(spanDays('last-quarter', '2026-02-01')).toEqual({ firstDay: '2025-10-01', lastDay: '2025-12-31' });
    expect(spanDays('last-year', '2026-11-30')).toEqual({ firstDay: '2025-01-01', lastDay: '2025-12-31' });
    expect(spanDays('this-month', '2026-11-30')).toEqual({ firstDay: '2026-11-01', lastDay: '2026-11-30' });
  });
});
