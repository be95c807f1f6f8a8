/** Points in time, as text. */
import * as z from 'zod/mini';

/** UTC with milliseconds, always 24 characters, so that the order of the text is the order in time. */
export const Instant = z.iso.datetime({ precision: 3 });

/** A day in the calendar of the place, e.g. "2026-11-24". */
export const Day = z.iso.date();

/** Zone of the writing device: an IANA name ("Europe/Paris") or the minutes ahead of UTC ("+60"). */
export const Zone = z
  .string()
  .check(z.regex(/^([A-Za-z][A-Za-z0-9_+-]*(\/[A-Za-z0-9_+-]+)*|[+-]\d{1,4})$/), z.maxLength(60));
