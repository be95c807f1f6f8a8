/**
 * The most that may stand near the work where waste arises, and the days to move what is over it. A level is put to the
 * limit at its high end first: from then on it may be passed; at its value it is.
 */
import type { Figure } from '../../quantities/figure';
import { calendarDay } from './calendar-day';
import { type TimeLimit, timeLimit } from './time-limit';

/** What stood there from a moment on, all containers of one place together; of several at one moment the last counts. */
export type Level = { readonly at: string; readonly volume: Figure<'L'> };

/** When the limit was passed, and until when the excess may stay. */
export type Passed = TimeLimit & { readonly since: string };

export type NearTheWork = {
  /** The last level; null where nothing was ever put there. */
  readonly now: Level | null;
  /** By the value, and by the high end of the range: null where what stands there now is not over. */
  readonly passed: Passed | null;
  readonly mayHavePassed: Passed | null;
};

/** The day on which the run of levels over the limit, up to the last one, began. */
function overSince(levels: readonly Level[], over: (level: Level) => boolean, zone: string): string | null {
  const lastUnder = levels.findLastIndex((level) => !over(level));
  const first = levels[lastUnder + 1];
  return first ? calendarDay(first.at, zone) : null;
}

/**
 * @param levels in the order in time
 * @param limit as the workshop's authority has said; just reaching it is not passing it
 * @param days consecutive calendar days to move the excess
 * @param today the calendar day where the workshop is
 */
export function nearTheWork(
  levels: readonly Level[],
  limit: Figure<'L'>,
  days: number,
  today: string,
  zone: string,
): NearTheWork {
  // Pouring from one container there into another takes no time, and begins nothing anew.
  const settled = levels.filter(({ at }, index) => levels[index + 1]?.at !== at);
  const passed = (over: (level: Level) => boolean): Passed | null => {
    const since = overSince(settled, over, zone);
    return since === null ? null : { since, ...timeLimit(since, { count: days, unit: 'days' }, today) };
  };
  return {
    now: settled.at(-1) ?? null,
    passed: passed(({ volume }) => volume.value.gt(limit.value)),
    mayHavePassed: passed(({ volume }) => volume.high.gt(limit.value)),
  };
}
