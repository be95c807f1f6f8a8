/** The days that a register is of, in the zone of the workshop. */
import { dayAfter, daysOfMonth } from '../../rules/clocks/calendar-day';
import { dayOf } from '../dates';

/** Both days belong to it: "2026-04-01" to "2026-06-30". */
export type Days = { readonly firstDay: string; readonly lastDay: string };

/** `from` is the first moment of the first day, `until` the first that is after the last; UTC with milliseconds. */
export type Period = Days & { readonly from: string; readonly until: string };

const hour = 3_600_000;

/** The first moment of a day where the workshop is. Found by halving, so that summer time is whatever the zone says. */
function beginning(day: string, zone: string): string {
  const noon = Date.parse(`${day}T12:00:00.000Z`);
  // No zone is more than 14 hours ahead of UTC or 12 behind it.
  let [before, since] = [noon - 30 * hour, noon + 24 * hour];
  while (since - before > 1) {
    const middle = Math.floor((before + since) / 2);
    if (dayOf(new Date(middle).toISOString(), zone) < day) before = middle;
    else since = middle;
  }
  return new Date(since).toISOString();
}

/** @throws RangeError where the first day is after the last, or one is no day */
export function periodOf({ firstDay, lastDay }: Days, zone: string): Period {
  if (firstDay > lastDay) throw new RangeError('the first day of a period is after its last');
  return {
    firstDay,
    lastDay,
    from: beginning(firstDay, zone),
    until: beginning(dayAfter(lastDay, { count: 1, unit: 'days' }), zone),
  };
}

export const isIn = ({ from, until }: Period, at: string): boolean => at >= from && at < until;

/** @example monthDays('2026-02-14') // { firstDay: '2026-02-01', lastDay: '2026-02-28' } */
export function monthDays(day: string): Days {
  const { first, last } = daysOfMonth(day.slice(0, 7));
  return { firstDay: first, lastDay: last };
}

/** @example quarterDays('2026-05-14') // { firstDay: '2026-04-01', lastDay: '2026-06-30' } */
export function quarterDays(day: string): Days {
  const first = Math.floor((Number(day.slice(5, 7)) - 1) / 3) * 3 + 1;
  const month = (n: number): string => `${day.slice(0, 4)}-${String(n).padStart(2, '0')}`;
  return { firstDay: daysOfMonth(month(first)).first, lastDay: daysOfMonth(month(first + 2)).last };
}

export const yearDays = (day: string): Days => ({
  firstDay: `${day.slice(0, 4)}-01-01`,
  lastDay: `${day.slice(0, 4)}-12-31`,
});

/** Periods that are usually asked for, the one that ended last of each length first. */
export const spans = [
  'last-month',
  'this-month',
  'last-quarter',
  'this-quarter',
  'last-year',
  'this-year',
] as const;

export type Span = (typeof spans)[number];

const lengths = { month: monthDays, quarter: quarterDays, year: yearDays } as const;

/** @param today where the workshop is @example spanDays('last-month', '2026-03-14') // { firstDay: '2026-02-01', lastDay: '2026-02-28' } */
export function spanDays(span: Span, today: string): Days {
  const [which, length] = span.split('-') as ['last' | 'this', keyof typeof lengths];
  const now = lengths[length](today);
  return which === 'this' ? now : lengths[length](dayAfter(now.firstDay, { count: -1, unit: 'days' }));
}
