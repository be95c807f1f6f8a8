/** The days of an account, and where a moment lies beside them. */
import { calendarDay } from '../rules/clocks/calendar-day';

/** First and last calendar day in the zone of the workshop, both within. */
export type Days = { readonly first: string; readonly last: string };

export type When = 'before' | 'in' | 'after';

/** Where a moment lies. @throws RangeError where the first day is after the last */
export function whenIn({ first, last }: Days, zone: string): (at: string) => When {
  if (first > last) throw new RangeError('the first day is after the last');
  // The same moments are asked for again and again, and the day of a moment in a zone takes long.
  const known = new Map<string, When>();
  return (at) => {
    const before = known.get(at);
    if (before) return before;
    const day = calendarDay(at, zone);
    const when = day < first ? 'before' : day > last ? 'after' : 'in';
    known.set(at, when);
    return when;
  };
}
