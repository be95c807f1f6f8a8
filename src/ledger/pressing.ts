/** All that is wrong or due now in one order, the most pressing first. */
import { calendarDay, monthOf } from '../rules/clocks/calendar-day';
import type { HeldAgainst, Standing } from '../rules/quantities/held-against';
import { runningClocks } from './clocks-running';
import { massOf } from './container-mixture';
import { type Due, dues } from './due';
import { type Flag, flags, type Pressing } from './flags';
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

/** A walk that is under way is told of, however far off its last day is. @param zone where the workshop is */
export function pressing(state: State, now: string, zone: string): readonly Pressed[] {
  const underWay = walkUnderWay(state, now) !== null;
  const told = dues(state, now, zone).filter(({ near, kind }) => near || (kind === 'walk' && underWay));
  const all: readonly Pressed[] = [
    ...flags(state).map((flag) => ({ what: 'flag', flag }) as const),
    ...told.map((due) => ({ what: 'due', due }) as const),
    ...amountsNear(state, now, zone).map((amount) => ({ what: 'amount', amount }) as const),
  ];
  // Within a rank the orders of flags and of days stay as they are.
  return all.toSorted((a, b) => ranks.indexOf(rankOf(a)) - ranks.indexOf(rankOf(b)));
}

/** How many things are due today or since before: days, amounts, clocks and hoods. What is wrong with the record is not. */
export function dueNow(state: State, now: string, zone: string): number {
  const late = (rank: Rank): boolean => rank === 'over' || rank === 'today';
  const days = dues(state, now, zone).filter((due) => late(rankOfDue(due)));
  const amounts = amountsNear(state, now, zone).filter(({ standing }) => standing === 'over');
  const clocks = runningClocks(state, now).filter(({ overdue }) => overdue);
  const hoods = hoodsDue(state, calendarDay(now, zone)).filter(({ due }) => 'since' in due);
  return days.length + amounts.length + clocks.length + hoods.length;
}

/** `dueNow` in small steps, for where nobody waits for it: of many containers the amounts take long, one after the other not. */
export function* countingDue(state: State, now: string, zone: string): Generator<undefined, number> {
  const month = monthOf(now, zone);
  for (const stream of state.streams.values()) {
    if (monthOf(stream.at, zone) === month) massOfStream(state, stream);
    yield;
  }
  for (const container of state.containers.values()) {
    if (container.goneSince === null) massOf(state, container);
    yield;
  }
  return dueNow(state, now, zone);
}
