/** Times as a person states them: an hour on the wall of the place they are in. */
import { addDays, addHours, addMinutes, format, isSameDay, isValid, parse } from 'date-fns';

/** What a field for a day and one for an hour hold, e.g. "2026-05-12" and "10:26". */
const dayFormat = 'yyyy-MM-dd';
const hourFormat = 'HH:mm';

/**
 * The next time the clock shows this hour after `now`: a call at 01:30, stated at 22:00, comes tomorrow.
 * @param hour "11:15" @returns UTC with milliseconds, or null when it is no hour
 */
export function nextAt(hour: string, now: string): string | null {
  const today = parse(hour, hourFormat, new Date(now));
  if (!isValid(today)) return null;
  // In the night that has an hour twice, the same hour comes once more.
  const later = addHours(today, 1);
  const shown = hourField(later.toISOString()) === hourField(today.toISOString()) ? [today, later] : [today];
  const next = shown.find((one) => one.getTime() > Date.parse(now)) ?? addDays(today, 1);
  return next.toISOString();
}

export const dayField = (instant: string): string => format(new Date(instant), dayFormat);
export const hourField = (instant: string): string => format(new Date(instant), hourFormat);

/** When it happened, read from two such fields; null when it is no time, or has not come yet. */
export function happenedAt(day: string, hour: string, now: string): string | null {
  const read = parse(`${day} ${hour}`, `${dayFormat} ${hourFormat}`, new Date(now));
  if (!isValid(read) || read.getTime() > Date.parse(now)) return null;
  return read.toISOString();
}

/** What one field for day and hour says: left empty, it is now. */
export type StatedWhen =
  | { readonly state: 'now' }
  | { readonly state: 'earlier'; readonly at: string }
  | { readonly state: 'wrong' };

/** @param typed "2026-05-12T10:26" or '' @returns wrong when it is no time, or has not come yet */
export function statedWhen(typed: string, now: string): StatedWhen {
  if (typed === '') return { state: 'now' };
  const [day = '', hour = ''] = typed.split('T');
  const at = happenedAt(day, hour.slice(0, 5), now);
  return at === null ? { state: 'wrong' } : { state: 'earlier', at };
}

export const minutesAfter = (instant: string, minutes: number): string =>
  addMinutes(new Date(instant), minutes).toISOString();

export const sameDay = (one: string, other: string): boolean => isSameDay(new Date(one), new Date(other));
