/** All that is wrong or due now in one order, the most pressing first. */
import { calendarDay, monthOf } from '../rules/clocks/calendar-day';
import type { HeldAgainst, Standing } from '../rules/quantities/held-against';
import { runningClocks } from './clocks-running';
import { massOf } from './container-mixture';
import { type Due, dues } from './due';
import { type Flag, flags, flagsInSteps, type Pressing } from './flags';
import { massOfStream } from './generation';
import { hoodsDue } from './hoods-due';
import { monthHeld, onSiteNow } from './quantities-now';
import type { State } from './state';
import { walkUnderWay } from './walks';

export type Pressed =
  | { readonly what: 'flag'; readonly flag: Flag }
  | { readonly what: 'due'; readonly due: Due }
  | { readonly what: 'amount'; readonly amount: AmountNear };

/** An amount that is not well under the workshop's own limit. */
export type AmountNear = {
  readonly of: 'month' | 'on-site';
  readonly against: HeldAgainst;
  readonly standing: Exclude<Standing, 'under'>;
};

/** Somebody may get hurt, before a last day that has passed, before today's, before a record that is wrong, before what is near. */
const ranks = ['hurt', 'over', 'today', 'wrong', 'near', 'know'] as const;
export type Rank = (typeof ranks)[number];

const rankOfFlag: Readonly<Record<Pressing, Rank>> = { now: 'hurt', soon: 'wrong', know: 'know' };

const rankOfDue = ({ daysLeft }: Due): Rank => (daysLeft < 0 ? 'over' : daysLeft === 0 ? 'today' : 'near');

export function rankOf(pressed: Pressed): Rank {
  if (pressed.what === 'flag') return rankOfFlag[pressed.flag.pressing];
  if (pressed.what === 'due') return rankOfDue(pressed.due);
  return pressed.amount.standing === 'over' ? 'over' : 'near';
}

function amountsNear(state: State, now: string, zone: string): readonly AmountNear[] {
  const all = [
    { of: 'month', against: monthHeld(state, monthOf(now, zone), zone).against },
    { of: 'on-site', against: onSiteNow(state).against },
  ] as const;
  return all.flatMap(({ of, against }) => {
    const standing = against.own?.standing;
    return standing === undefined || standing === 'under' ? [] : [{ of, against, standing }];
  });
}

/** Within a rank the orders of flags and of days stay as they are. */
const inOrder = (all: readonly Pressed[]): readonly Pressed[] =>
  all.toSorted((a, b) => ranks.indexOf(rankOf(a)) - ranks.indexOf(rankOf(b)));

/** A walk that is under way is told of, however far off its last day is. */
function daysTold(state: State, now: string, zone: string): readonly Pressed[] {
  const underWay = walkUnderWay(state, now) !== null;
  const told = dues(state, now, zone).filter(({ near, kind }) => near || (kind === 'walk' && underWay));
  return told.map((due) => ({ what: 'due', due }) as const);
}

/** The days alone: they are known at once, what is wrong and amounts only once all contents are followed. */
export const daysPressing = (state: State, now: string, zone: string): readonly Pressed[] =>
  inOrder(daysTold(state, now, zone));

/** @param zone where the workshop is */
export const pressing = (state: State, now: string, zone: string): readonly Pressed[] =>
  inOrder([
    ...flags(state).map((flag) => ({ what: 'flag', flag }) as const),
    ...daysTold(state, now, zone),
    ...amountsNear(state, now, zone).map((amount) => ({ what: 'amount', amount }) as const),
  ]);

/** How many things are due today or since before: days, amounts, clocks and hoods. What is wrong with the record is not. */
export function dueNow(state: State, now: string, zone: string): number {
  const late = (rank: Rank): boolean => rank === 'over' || rank === 'today';
  const days = dues(state, now, zone).filter((due) => late(rankOfDue(due)));
  const amounts = amountsNear(state, now, zone).filter(({ standing }) => standing === 'over');
  const clocks = runningClocks(state, now).filter(({ overdue }) => overdue);
  const hoods = hoodsDue(state, calendarDay(now, zone)).filter(({ due }) => 'since' in due);
  return days.length + amounts.length + clocks.length + hoods.length;
}

/** What the amounts take long for: weighing all that stands here, and what the month made. */
function* weighing(state: State, now: string, zone: string): Generator<undefined, void> {
  const month = monthOf(now, zone);
  for (const stream of state.streams.values()) {
    if (monthOf(stream.at, zone) === month) massOfStream(state, stream);
    yield;
  }
  for (const container of state.containers.values()) {
    if (container.goneSince === null) massOf(state, container);
    yield;
  }
  amountsNear(state, now, zone);
  yield;
}

/** What `pressing` takes long for, in small steps: of this state it is quick after them. */
export function* pressingInSteps(state: State, now: string, zone: string): Generator<undefined, void> {
  yield* flagsInSteps(state);
  yield* weighing(state, now, zone);
}

/** `dueNow` in small steps, for where nobody waits for it: of many containers the amounts take long, one after the other not. */
export function* countingDue(state: State, now: string, zone: string): Generator<undefined, number> {
  yield* weighing(state, now, zone);
  return dueNow(state, now, zone);
}
