/** Clocks that run: what of their time is left, which are due, and which presses most. */
import { shareLeft } from '../safety/time-left';
import type { ClockOf } from './entries/clocks';
import type { ClockState, State } from './state';

export type RunningClock = {
  readonly clock: ClockState;
  /** From the very moment on at which it is due. */
  readonly overdue: boolean;
  /** 0 to 1; what has no time left, or never had any, is at 0. */
  readonly shareLeft: number;
};

export const runningClock = (clock: ClockState, now: string): RunningClock => ({
  clock,
  overdue: clock.body.due <= now,
  shareLeft: shareLeft(clock.at, clock.body.due, now),
});

/**
 * Once they are due. What grows worse by itself comes before a person who may lie there, since it is done in a minute;
 * a rinse and cleared air that are over harm nobody. Our own order, reasoned.
 */
const onceDue: readonly ClockOf[] = ['ammonia-silver', 'check-in', 'rinse', 'look', 'purge'];

/** Somebody stands under water: nothing comes before that. */
const isRinsing = ({ clock, overdue }: RunningClock): boolean => clock.body.of === 'rinse' && !overdue;

const rank = (running: RunningClock): number => {
  if (isRinsing(running)) return -1;
  return running.overdue ? onceDue.indexOf(running.clock.body.of) : onceDue.length;
};

const before = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Every clock that nobody has ended, the most pressing first: someone under water, what is due, what is due next. */
export function runningClocks(state: State, now: string): readonly RunningClock[] {
  return [...state.clocks.values()]
    .filter(({ stopped }) => stopped === null)
    .map((clock) => runningClock(clock, now))
    .sort(
      (a, b) =>
        rank(a) - rank(b) ||
        before(a.clock.body.due, b.clock.body.due) ||
        before(a.clock.body.clockId, b.clock.body.clockId),
    );
}

/** Whether it comes before everything else that is wrong or due. */
export const presses = (running: RunningClock): boolean => running.overdue || isRinsing(running);

/** The rinse begun last that nobody has ended; null when there is none. */
export function lastRinse(state: State, now: string): RunningClock | null {
  const rinses = runningClocks(state, now).filter(({ clock }) => clock.body.of === 'rinse');
  return rinses.toSorted((a, b) => before(a.clock.at, b.clock.at)).at(-1) ?? null;
}

/** Whether the record has a rinse begun at that very moment, ended or not. */
export const knowsRinse = (state: State, at: string): boolean =>
  [...state.clocks.values()].some((clock) => clock.body.of === 'rinse' && clock.at === at);

/** Next looks at a batch that nobody has taken yet. */
export const looksAwaited = (state: State, batchId: string): readonly ClockState[] =>
  [...state.clocks.values()].filter(
    ({ body, stopped }) => body.of === 'look' && body.batchId === batchId && stopped === null,
  );

/** Minutes and seconds until a moment, seconds begun counting whole; null once it has come. */
export function countdown(
  due: string,
  now: string,
): { readonly minutes: number; readonly seconds: number } | null {
  const left = Math.ceil((Date.parse(due) - Date.parse(now)) / 1000);
  return left > 0 ? { minutes: Math.floor(left / 60), seconds: left % 60 } : null;
}
