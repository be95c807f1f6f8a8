/** Times as a person states them: an hour on the wall of the place they are in. */
import { addDays, addMinutes, format, isSameDay, isValid, parse } from 'date-fns';

/**
 * The next time the clock shows this hour after `now`: a call at 01:30, stated at 22:00, comes tomorrow.
 * @param hour "11:15" @returns UTC with milliseconds, or null when it is no hour
 */
export function nextAt(hour: string, now: string): string | null {
  const today = parse(hour, 'HH:mm', new Date(now));
  if (!isValid(today)) return null;
  const next = today.getTime() > Date.parse(now) ? today : addDays(today, 1);
  return next.toISOString();
}

/** What a field for date and hour holds, e.g. "2026-05-12T10:26". */
const fieldFormat = "yyyy-MM-dd'T'HH:mm";

export const asField = (instant: string): string => format(new Date(instant), fieldFormat);

/** When it happened, read from such a field; null when it is no time, or has not come yet. */
export function happenedAt(field: string, now: string): string | null {
  const read = parse(field, fieldFormat, new Date(now));
  if (!isValid(read) || read.getTime() > Date.parse(now)) return null;
  return read.toISOString();
}

export const minutesAfter = (instant: string, minutes: number): string =>
  addMinutes(new Date(instant), minutes).toISOString();

export const sameDay = (one: string, other: string): boolean => isSameDay(new Date(one), new Date(other));
