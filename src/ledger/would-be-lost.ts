/** What would be lost with this phone now, and how much that presses. */
import { differenceInDays } from 'date-fns';

/** What lies on this phone and in no backup that was noted. */
export type SinceBackup = {
  /** When the last one was made; null when none was. */
  readonly lastAt: string | null;
  readonly entries: number;
  /** Photos and files that these entries name; null when they are too many to look through. */
  readonly files: number | null;
  /** Written-at of the oldest of them; null where there is none. */
  readonly oldest: string | null;
};

/** `quiet` is told where somebody looks for it, `due` among what is near, `pressing` among what is late. */
export type Presses = 'nothing' | 'quiet' | 'due' | 'pressing';

export type WouldBeLost = SinceBackup & {
  /** Whole days since the oldest of them was written. */
  readonly days: number;
  readonly presses: Presses;
};

type Bounds = { readonly entries: number; readonly files: number; readonly days: number };

/**
 * A day at the bench is some ten entries, so these are about two days of work or a week, and two weeks of work or a month: what
 * can still be written again from memory and the labels, and what cannot. Status: reasoned.
 */
const due: Bounds = { entries: 20, files: 5, days: 7 };
const pressing: Bounds = { entries: 150, files: 40, days: 30 };

const reaches = ({ entries, files, days }: Bounds, lost: Bounds): boolean =>
  lost.entries >= entries || lost.files >= files || lost.days >= days;

/** @param now UTC with milliseconds; where the clock was set back no time has passed */
export function wouldBeLost(since: SinceBackup, now: string): WouldBeLost {
  const { entries, oldest } = since;
  const days = oldest === null ? 0 : Math.max(0, differenceInDays(new Date(now), new Date(oldest)));
  const lost = { entries, files: since.files ?? 0, days };
  const presses =
    entries === 0 ? 'nothing' : reaches(pressing, lost) ? 'pressing' : reaches(due, lost) ? 'due' : 'quiet';
  return { ...since, days, presses };
}
