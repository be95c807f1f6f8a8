/** Days and hours as papers print them, in the zone of the workshop. */
import { calendarDay } from '../rules/clocks/calendar-day';
import { between, joined, months } from './words';

/** A zone that has a name; minutes ahead of UTC, as a record may have them, are printed in UTC. */
const named = (zone: string): string => (/^[+-]\d/.test(zone) ? 'UTC' : zone);

/** A calendar day without an hour. @example calendarDayText('2026-09-06') // '6 Sep 2026' */
export function calendarDayText(date: string): string {
  const [year = '', month = '', day = ''] = date.split('-');
  return `${Number(day)}\u00a0${months[Number(month) - 1] ?? ''}\u00a0${year}`;
}

/** The day a moment falls on in the workshop, "2026-05-14". */
export const dayOf = (iso: string, zone: string): string => calendarDay(iso, named(zone));

/** @example dayText('2026-05-14T07:58:00.000Z', 'Europe/Paris') // '14 May 2026' */
export const dayText = (iso: string, zone: string): string => calendarDayText(dayOf(iso, zone));

/** @example momentText('2026-05-14T07:58:00.000Z', 'Europe/Paris') // '14 May 2026, 09:58' */
export function momentText(iso: string, zone: string): string {
  const clock = { hour: '2-digit', minute: '2-digit', hourCycle: 'h23', timeZone: named(zone) } as const;
  return `${dayText(iso, zone)}, ${new Intl.DateTimeFormat('en-GB', clock).format(new Date(iso))}`;
}

/** From one day to another, saying month and year once. @example spanText('2026-05-13', '2026-05-17') // '13 to 17 May 2026' */
export function spanText(from: string, to: string): string {
  const end = calendarDayText(to);
  if (from === to) return end;
  const [day = '', month = ''] = calendarDayText(from).split('\u00a0');
  if (from.slice(0, 7) === to.slice(0, 7)) return between(day, end);
  return from.slice(0, 4) === to.slice(0, 4)
    ? between(`${day}\u00a0${month}`, end)
    : between(calendarDayText(from), end);
}

/** Several days, each year said once, at its last day. @example daysText(['2026-11-03', '2026-11-22']) // '3 Nov and 22 Nov 2026' */
export const daysText = (days: readonly string[]): string =>
  joined(
    [...new Set(days)].sort().map((day, at, all) => {
      const text = calendarDayText(day);
      return all[at + 1]?.slice(0, 4) === day.slice(0, 4) ? text.slice(0, -5) : text;
    }),
  );
