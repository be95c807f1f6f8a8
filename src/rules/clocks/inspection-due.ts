/** By when waste must next be looked at, container by container. Counts only once the workshop's own interval has been entered. */
import { dayAfter, daysBetween } from './calendar-day';

export type InspectionDue = {
  /** Last day on which the walk is still in time. */
  readonly due: string;
  /** Whole days from today; negative once it is overdue. */
  readonly daysLeft: number;
};

/**
 * Counted from the last walk; from the first waste where no walk has been since.
 * @param firstWasteIn the day on which the waste that stands there first went in; null where there is none, and nothing is due
 * @param lastWalk the day of the last walk; null where there was none
 */
export function inspectionDue(
  firstWasteIn: string | null,
  lastWalk: string | null,
  intervalDays: number,
  today: string,
): InspectionDue | null {
  if (firstWasteIn === null) return null;
  // A walk past an empty container looked at no waste.
  const from = lastWalk !== null && lastWalk > firstWasteIn ? lastWalk : firstWasteIn;
  const due = dayAfter(from, { count: intervalDays, unit: 'days' });
  return { due, daysLeft: daysBetween(today, due) };
}
