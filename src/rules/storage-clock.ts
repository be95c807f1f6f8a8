/** How long waste may still stand in a container. Counts only once the workshop's own limit has been entered. */

const dayMs = 86_400_000;

/** The calendar day of a moment where the workshop is. @example calendarDay('2026-03-30T23:30:00.000Z', 'Europe/Paris') // '2026-03-31' */
export const calendarDay = (at: string, zone: string): string =>
  new Intl.DateTimeFormat('en-CA', {
    timeZone: zone,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
  }).format(new Date(at));

/** From so many days before the end on, or in the last quarter, it is due. Our own choice, no rule of law. */
const dueFrom = { days: 30, share: 0.25 };

const dayNumber = (day: string): number => Date.parse(`${day}T00:00:00.000Z`) / dayMs;

export type StorageClock = {
  /** Last calendar day on which the waste may still be there. */
  readonly lastDay: string;
  /** Whole days from today to the last day; negative once it has passed. */
  readonly daysLeft: number;
  /** Share of the time that is left, 0 to 1. */
  readonly shareLeft: number;
};

/**
 * Days are counted from the day after the first waste went in, so that day 0 is the first day. Calendar days, whatever
 * the hour and whatever summer time does.
 * @param firstWasteIn when the first waste went in, UTC
 * @param limitDays the limit that the workshop's authority has said
 */
export function storageClock(
  firstWasteIn: string,
  limitDays: number,
  now: string,
  zone: string,
): StorageClock {
  const begun = dayNumber(calendarDay(firstWasteIn, zone));
  const last = begun + limitDays;
  const daysLeft = last - dayNumber(calendarDay(now, zone));
  return {
    lastDay: new Date(last * dayMs).toISOString().slice(0, 10),
    daysLeft,
    shareLeft: limitDays === 0 ? 0 : Math.min(1, Math.max(0, daysLeft / limitDays)),
  };
}

/** Whether the end of the storage time is near enough to be told of. */
export const isDue = ({ daysLeft, shareLeft }: StorageClock): boolean =>
  daysLeft <= dueFrom.days || shareLeft <= dueFrom.share;
