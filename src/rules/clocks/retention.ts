/**
 * How long records are kept: so many years after the last shipment of what they tell of. Here the careful end is the later
 * one. Where the year has no 29 February, the last of February is one reading and 1 March the careful one.
 */
import { dayAfter, daysBetween } from './calendar-day';

export type Retention = {
  /** The same date so many years on, or the last of February. */
  readonly anniversary: string;
  /** Kept through this day, by the careful reading. */
  readonly keepThrough: string;
  /** Whole days from today to the day that they are kept through; negative once it has passed. */
  readonly daysLeft: number;
};

/** @param lastShipment null while nothing has been shipped: then the end is not determined, and everything is kept */
export function retention(lastShipment: string | null, years: number, today: string): Retention | null {
  if (lastShipment === null) return null;
  const anniversary = dayAfter(lastShipment, { count: years, unit: 'years' });
  const moved = anniversary.slice(5) !== lastShipment.slice(5);
  const keepThrough = moved ? dayAfter(anniversary, { count: 1, unit: 'days' }) : anniversary;
  return { anniversary, keepThrough, daysLeft: daysBetween(today, keepThrough) };
}
