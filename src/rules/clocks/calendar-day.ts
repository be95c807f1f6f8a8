/**
 * Calendar days, as "2026-03-31". A day has no hour and no zone, so days are counted in UTC, whatever summer time does
 * where the workshop is; only a moment needs the zone to become a day.
 */
import { UTCDateMini } from '@date-fns/utc/date/mini';
import { addDays, addMonths, addYears, differenceInCalendarDays, formatISO, lastDayOfMonth } from 'date-fns';

const asDate = (day: string): Date => new UTCDateMini(`${day}T00:00:00.000Z`);
const asDay = (date: Date): string => formatISO(date, { representation: 'date' });

/** An IANA name, or minutes ahead of UTC ("+330") as a record may have them. */
const minutesAhead = (zone: string): number | null => (/^[+-]\d+$/.test(zone) ? Number(zone) : null);

/** Making one takes far longer than using it, and a month looks at every entry. */
const formats = new Map<string, Intl.DateTimeFormat>();

function formatIn(timeZone: string): Intl.DateTimeFormat {
  const made =
    formats.get(timeZone) ??
    new Intl.DateTimeFormat('en-US', {
      timeZone,
      calendar: 'gregory',
      year: 'numeric',
      month: '2-digit',
      day: '2-digit',
    });
  formats.set(timeZone, made);
  return made;
}

/**
 * The calendar day of a moment where the workshop is.
 * @param zone an IANA name, or minutes ahead of UTC
 * @throws RangeError where there is no such zone or moment
 * @example calendarDay('2026-03-30T23:30:00.000Z', 'Europe/Paris') // '2026-03-31'
 */
export function calendarDay(at: string, zone: string): string {
  const minutes = minutesAhead(zone);
  if (minutes !== null) return new Date(Date.parse(at) + minutes * 60_000).toISOString().slice(0, 10);
  // By its parts: how a locale puts them together has changed from one browser to the next.
  const parts = formatIn(zone).formatToParts(new Date(at));
  const part = (type: 'year' | 'month' | 'day'): string => parts.find((p) => p.type === type)?.value ?? '';
  return `${part('year')}-${part('month')}-${part('day')}`;
}

/** How long something may last, in whole calendar units. */
export type Period = { readonly count: number; readonly unit: 'days' | 'months' | 'years' };

/** A day is written with four digits of its year, so that days in order are texts in order. */
const lastWritten = '9999-12-31';

/**
 * The day so long after a day; where a month has no such day, its last. With days, the day itself is day 0.
 * The last that can be written stands for any later one: a limit mistyped by millions leaves every page readable.
 * Source: Regulation (EEC, Euratom) 1182/71, article 3(1) and (2)(c) (from memory); the US Federal Rules of Civil
 * Procedure, rule 6(a)(1), count days in the same way.
 * @example dayAfter('2028-02-29', { count: 1, unit: 'years' }) // '2029-02-28'
 */
export function dayAfter(day: string, { count, unit }: Period): string {
  const add = { days: addDays, months: addMonths, years: addYears }[unit];
  const after = add(asDate(day), count);
  return after <= asDate(lastWritten) ? asDay(after) : lastWritten;
}

/** Calendar days from one day to another, negative when the second is earlier. @example daysBetween('2028-02-28', '2028-03-01') // 2 */
export const daysBetween = (from: string, to: string): number =>
  differenceInCalendarDays(asDate(to), asDate(from));

/** The calendar month of a moment where the workshop is. @example monthOf('2026-05-31T23:00:00.000Z', 'Europe/Paris') // '2026-06' */
export const monthOf = (at: string, zone: string): string => calendarDay(at, zone).slice(0, 7);

/** First and last day of a month. @example daysOfMonth('2028-02') // { first: '2028-02-01', last: '2028-02-29' } */
export const daysOfMonth = (month: string): { readonly first: string; readonly last: string } => ({
  first: `${month}-01`,
  last: asDay(lastDayOfMonth(asDate(`${month}-01`))),
});
