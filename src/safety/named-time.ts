/** The hour at which somebody named in the answers rings: one that has passed says nothing any more. */
import type { Answered, Run, Who } from './run-schema';

/** Somebody named with an hour that is over at `now`. */
type Passed = Answered & { readonly who: Who & { readonly at: string } };

const isPassed = (one: Answered, now: string): one is Passed =>
  one.who?.at !== undefined && one.who.at <= now;

/** The last one named, where that hour has passed; null where it is still to come, or nobody was named with an hour. */
export function hourPassed(run: Run, now: string): Passed | null {
  const last = run.answered.findLast(({ who }) => who !== undefined);
  return last && isPassed(last, now) ? last : null;
}

/** The same answer with another hour. */
export const namedFor = (run: Run, item: string, at: string): Run => ({
  ...run,
  answered: run.answered.map((one) =>
    one.item === item && one.who ? { ...one, who: { ...one.who, at } } : one,
  ),
});
