/**
 * What is due by the calendar: waste that must leave, the walk, what is too much beside the work, proofs that have not come. By
 * the careful last day, the earlier of two readings of "no more than so many days". Only limits that were entered run.
 */
import { calendarDay, daysBetween } from '../rules/clocks/calendar-day';
import { proofDue } from '../rules/clocks/proof-due';
import { retention } from '../rules/clocks/retention';
import { isDue, storageClock } from '../rules/clocks/storage-clock';
import { accumulationStart } from './accumulation';
import { nearWork } from './near-work';
import type { ContainerState, State } from './state';
import { walkDue } from './walks';

export type Due = {
  /** The same for the same thing at every time, so that a calendar knows it again. */
  readonly id: string;
  readonly kind: 'leave' | 'walk' | 'move-excess' | 'proof';
  readonly containerId: string | null;
  /** The last day by the careful reading. */
  readonly day: string;
  /** By the other reading; the same where there is only one. */
  readonly lastDay: string;
  /** Whole days to the careful one; negative once it has passed. */
  readonly daysLeft: number;
  /** Share of the time that is left, 0 to 1; absent where no time has a beginning. */
  readonly shareLeft?: number;
  /** Near enough to be told of, or over. */
  readonly near: boolean;
};

/** A walk or a proof is told of from so many days before on. Our own choice, no rule of law. */
const toldFrom = 3;

type Asked = { readonly state: State; readonly now: string; readonly zone: string; readonly today: string };

function leaving({ state, now, zone }: Asked, container: ContainerState): Due[] {
  const rule = state.rules.get('storage-days')?.body.stated;
  const start = accumulationStart(state, container);
  if (rule?.rule !== 'storage-days' || start === null) return [];
  const clock = storageClock(start, Number(rule.value.value), now, zone);
  const { containerId } = container.body;
  return [
    {
      id: `leave/${containerId}`,
      kind: 'leave',
      containerId,
      day: clock.carefulLastDay,
      lastDay: clock.lastDay,
      daysLeft: clock.carefulDaysLeft,
      shareLeft: clock.shareLeft,
      near: isDue({ ...clock, daysLeft: clock.carefulDaysLeft }),
    },
  ];
}

function proofOf({ state, zone, today }: Asked, container: ContainerState): Due[] {
  const { goneSince, proofFiledAt, body } = container;
  const rule = state.rules.get('proof-days')?.body.stated;
  if (rule?.rule !== 'proof-days' || goneSince === null || proofFiledAt !== null) return [];
  const due = proofDue(calendarDay(goneSince, zone), null, Number(rule.value.value), today);
  if (due.state === 'received') return [];
  return [
    {
      id: `proof/${body.containerId}`,
      kind: 'proof',
      containerId: body.containerId,
      day: due.carefulLastDay,
      lastDay: due.lastDay,
      daysLeft: due.carefulDaysLeft,
      near: due.carefulDaysLeft <= toldFrom,
    },
  ];
}

function walk({ state, now, zone }: Asked): Due[] {
  const due = walkDue(state, now, zone);
  if (!due) return [];
  const { due: day, daysLeft } = due;
  return [
    { id: 'walk', kind: 'walk', containerId: null, day, lastDay: day, daysLeft, near: daysLeft <= toldFrom },
  ];
}

/** It may be over already by the high end of what is read off the vessels: then the days run. */
function excess({ state, now, zone }: Asked): Due[] {
  const near = nearWork(state, now, zone);
  const passed = near?.passed ?? near?.mayHavePassed;
  if (!passed) return [];
  return [
    {
      id: `move-excess/${passed.since}`,
      kind: 'move-excess',
      containerId: null,
      day: passed.carefulLastDay,
      lastDay: passed.lastDay,
      daysLeft: passed.carefulDaysLeft,
      near: true,
    },
  ];
}

/** Most pressing first. @param zone where the workshop is */
export function dues(state: State, now: string, zone: string): readonly Due[] {
  const asked = { state, now, zone, today: calendarDay(now, zone) };
  const containers = [...state.containers.values()];
  return [
    ...excess(asked),
    ...walk(asked),
    ...containers.flatMap((container) => leaving(asked, container)),
    ...containers.flatMap((container) => proofOf(asked, container)),
  ].sort((a, b) => a.daysLeft - b.daysLeft);
}

export type Standing = {
  readonly containerId: string;
  readonly since: string;
  /** Whole days that the waste in it has stood. */
  readonly days: number;
};

/** How long waste has stood, where no limit was entered to count down from: nothing is known to be in time then. */
export function standingWithoutLimit(state: State, now: string, zone: string): readonly Standing[] {
  if (state.rules.has('storage-days')) return [];
  const today = calendarDay(now, zone);
  return [...state.containers.values()].flatMap((container) => {
    const since = accumulationStart(state, container);
    if (since === null) return [];
    const days = daysBetween(calendarDay(since, zone), today);
    return [{ containerId: container.body.containerId, since, days }];
  });
}

/** Until when the records of a container that is gone are kept; null while it is here, or no such rule was entered. */
export function recordsKept(state: State, { goneSince }: ContainerState, now: string, zone: string) {
  const rule = state.rules.get('retention-years')?.body.stated;
  if (rule?.rule !== 'retention-years' || goneSince === null) return null;
  return retention(calendarDay(goneSince, zone), Number(rule.value.value), calendarDay(now, zone));
}
