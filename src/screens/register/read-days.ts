/** Two days as they stand in fields for dates. */
import * as z from 'zod/mini';
import type { Days } from '../../paperwork/register/period';

const Day = z.iso.date();

/** The days, or the word for what is open or wrong. */
export function readDays(first: string, last: string): Days | 'dayOpen' | 'wrongWay' {
  if (!Day.safeParse(first).success || !Day.safeParse(last).success) return 'dayOpen';
  return first > last ? 'wrongWay' : { firstDay: first, lastDay: last };
}
