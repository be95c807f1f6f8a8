import { addDays, formatISO } from 'date-fns';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { calendarDay } from '../../../../src/rules/clocks/calendar-day';
import { isDue, storageClock } from '../../../../src/rules/clocks/storage-clock';

describe('the storage clock', () => {
  it('counts 180 calendar days from the first waste', () => {
    const clock = storageClock('2026-03-30T09:00:00.000Z', 180, '2026-05-14T07:47:00.000Z', 'Europe/Paris');
    expect(clock).toMatchObject({ lastDay: '2026-09-26', daysLeft: 135 });
  });

  it('does not lose a day to summer time', () => {
    const clock = storageClock('2026-03-28T22:59:00.000Z', 1, '2026-03-29T21:59:00.000Z', 'Europe/Paris');
    expect(clock).toMatchObject({ lastDay: '2026-03-29', daysLeft: 0 });
  });

  it('knows the leap day', () => {
    expect(storageClock('2028-02-28T12:00:00.000Z', 2, '2028-02-28T12:00:00.000Z', 'UTC').lastDay).toBe(
      '2028-03-01',
    );
  });

  it('has run out when the last day has passed, and says by how many days', () => {
    const clock = storageClock('2026-01-01T12:00:00.000Z', 10, '2026-01-13T12:00:00.000Z', 'UTC');
    expect(clock).toMatchObject({ daysLeft: -2, shareLeft: 0 });
  });

  it('is told of in its last quarter, and in its last thirty days where those are more', () => {
    const due = (days: number, now: string) =>
      isDue(storageClock('2026-01-01T12:00:00.000Z', days, `${now}T12:00:00.000Z`, 'UTC'));
    // 365 days end on 1 January 2027; a quarter of them is 91.25 days.
    expect([due(365, '2026-10-01'), due(365, '2026-10-02')]).toEqual([false, true]);
    // 60 days end on 2 March.
    expect([due(60, '2026-01-30'), due(60, '2026-01-31')]).toEqual([false, true]);
  });

  it('the day is the one where the workshop is', () => {
    expect(calendarDay('2026-11-24T23:30:00.000Z', 'Asia/Tokyo')).toBe('2026-11-25');
    expect(calendarDay('2026-11-24T23:30:00.000Z', 'America/New_York')).toBe('2026-11-24');
  });

  it('ends as many days on as a calendar library says', () => {
    fc.assert(
      fc.property(
        fc.date({ min: new Date('2020-01-01'), max: new Date('2040-01-01'), noInvalidDate: true }),
        fc.integer({ min: 0, max: 400 }),
        (start, days) => {
          const noon = new Date(`${start.toISOString().slice(0, 10)}T12:00:00.000Z`);
          const { lastDay } = storageClock(noon.toISOString(), days, noon.toISOString(), 'UTC');
          expect(lastDay).toBe(formatISO(addDays(noon, days), { representation: 'date' }));
        },
      ),
    );
  });
});
