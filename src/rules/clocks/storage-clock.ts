/** How long waste may still stand in a container. Counts only once the workshop's own limit has been entered. */
import { calendarDay } from './calendar-day';
import { type TimeLimit, timeLimit } from './time-limit';

/** From so many days before the end on, or in the last quarter, it is due. Our own choice, no rule of law. */
const dueFrom = { days: 30, share: 0.25 };

export type StorageClock = TimeLimit & {
  /** Share of the time that is left, 0 to 1. */
  readonly shareLeft: number;
};

/**
 * Calendar days from the first waste, whatever the hour and whatever summer time does; filling up again does not start
 * it anew.
 * @param firstWasteIn when the first waste went in, UTC
 * @param limitDays the limit that the workshop's authority has said
 */
export function storageClock(
  firstWasteIn: string,
  limitDays: number,
  now: string,
  zone: string,
): StorageClock {
  const period = { count: limitDays, unit: 'days' } as const;
  const limit = timeLimit(calendarDay(firstWasteIn, zone), period, calendarDay(now, zone));
  const shareLeft = limitDays === 0 ? 0 : Math.min(1, Math.max(0, limit.daysLeft / limitDays));
  return { ...limit, shareLeft };
}

/** Whether the end of the storage time is near enough to be told of. */
export const isDue = ({ daysLeft, shareLeft }: StorageClock): boolean =>
  daysLeft <= dueFrom.days || shareLeft <= dueFrom.share;
