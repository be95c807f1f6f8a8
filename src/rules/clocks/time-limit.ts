/**
 * A time limit from a day on. Laws say "no more than so many days" and not how they are counted, so both readings are
 * kept: with the first day as day 0, and, a day shorter, with it as day 1. Whoever acts by the careful one keeps both.
 */
import { dayAfter, daysBetween, type Period } from './calendar-day';

export type TimeLimit = {
  /** Start + N: the first day is day 0. */
  readonly lastDay: string;
  /** Start + N − 1: the first day counts as the first. */
  readonly carefulLastDay: string;
  /** Whole days from today to the last day; 0 on it, negative once it has passed. */
  readonly daysLeft: number;
  /** The same to the careful last day. */
  readonly carefulDaysLeft: number;
};

/** @param from, today calendar days where the workshop is */
export function timeLimit(from: string, period: Period, today: string): TimeLimit {
  const lastDay = dayAfter(from, period);
  const carefulLastDay = dayAfter(lastDay, { count: -1, unit: 'days' });
  return {
    lastDay,
    carefulLastDay,
    daysLeft: daysBetween(today, lastDay),
    carefulDaysLeft: daysBetween(today, carefulLastDay),
  };
}
