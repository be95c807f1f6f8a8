/**
 * What is due by the calendar: waste that must leave, the walk and what it could not see, what is too much beside the work,
 * proofs that have not come. By the careful last day, the earlier of two readings of "no more than so many days". Only limits
 * that were entered run, but for the walk, which has a careful one of its own.
 */
import { calendarDay, dayAfter, daysBetween } from '../rules/clocks/calendar-day';
import { proofDue } from '../rules/clocks/proof-due';
import { type Retention, retention } from '../rules/clocks/retention';
import { isDue, storageClock } from '../rules/clocks/storage-clock';
import type { TimeLimit } from '../rules/clocks/time-limit';
import { accumulationStart } from './accumulation';
import type { RuleName } from './entries/local-rules';
import { daysToMove, nearWork } from './near-work';
import type { ContainerState, HandOverState, State } from './state';
import { lookDue, notSeenSince, type WalkDue, walkDue } from './walks';

export type Due = {
  /** The same for the same thing at every time, so that a calendar knows it again. */
  readonly id: string;
  readonly kind: 'leave' | 'walk' | 'look' | 'move-excess' | 'proof';
  readonly containerId: string | null;
  /** The load whose proof is awaited, of all its containers together. */
  readonly handOverId?: string;
  /** The calendar day from which it counts. */
  readonly from: string;
  /** Days that are allowed, and the local rule that says so; `stated` is false where a careful number is taken. */
  readonly limit: { readonly days: number; readonly rule: RuleName; readonly stated: boolean };
  /** The last day by the careful reading. */
  readonly day: string;
  /** By the other reading; the same where there is only one. */
  readonly lastDay: string;
  /** Whole days to the careful one; negative once it has passed. */
  readonly daysLeft: number;
  /** Share of the time that is left, 0 to 1. */
  readonly shareLeft: number;
  /** Near enough to be told of, or over. */
  readonly near: boolean;
  /** Only by the high end of what was read: it may be so. */
  readonly unsure?: true;
};

/** So many days before its end each is told of. Our own choice, no rule of law; storage time has one of its own. */
export const toldFrom = { walk: 1, proof: 7 } as const;

type Asked = { readonly state: State; readonly now: string; readonly zone: string; readonly today: string };

const daysOf = (state: State, rule: RuleName): number | null => {
  const stated = state.rules.get(rule)?.body.stated;
  return stated && 'value' in stated && typeof stated.value === 'object' && 'value' in stated.value
    ? Number(stated.value.value)
    : null;
};

const shareOf = (daysLeft: number, days: number): number =>
  days === 0 ? 0 : Math.min(1, Math.max(0, daysLeft / days));

/** Both readings. A limit of no days at all ends on the day itself, and not before it. */
function counted(from: string, { carefulLastDay, lastDay }: TimeLimit, days: number, today: string) {
  const day = carefulLastDay < from ? from : carefulLastDay;
  const daysLeft = daysBetween(today, day);
  return { from, day, lastDay, daysLeft, shareLeft: shareOf(daysLeft, days) };
}

function leaving({ state, now, zone, today }: Asked, container: ContainerState): Due[] {
  const days = daysOf(state, 'storage-days');
  const start = accumulationStart(state, container);
  if (days === null || start === null) return [];
  const clock = storageClock(start, days, now, zone);
  const { containerId } = container.body;
  const counts = counted(calendarDay(start, zone), clock, days, today);
  return [
    {
      ...counts,
      id: `leave/${containerId}`,
      kind: 'leave',
      containerId,
      limit: { days, rule: 'storage-days', stated: true },
      near: isDue({ ...clock, daysLeft: counts.daysLeft }),
    },
  ];
}

/** What runs from the day on which something left; none where no such rule was entered. */
function proofFrom({ state, zone, today }: Asked, leftAt: string) {
  const days = daysOf(state, 'proof-days');
  if (days === null) return null;
  const from = calendarDay(leftAt, zone);
  const due = proofDue(from, null, days, today);
  if (due.state === 'received') return null;
  const counts = counted(from, due, days, today);
  return {
    ...counts,
    kind: 'proof' as const,
    limit: { days, rule: 'proof-days' as const, stated: true },
    near: counts.daysLeft <= toldFrom.proof,
  };
}

/** Of a container that went some other way than by a hand-over. */
function proofOf(asked: Asked, { goneSince, handOverId, proofFiledAt, body }: ContainerState): Due[] {
  if (goneSince === null || handOverId !== null || proofFiledAt !== null) return [];
  const { containerId } = body;
  const runs = proofFrom(asked, goneSince);
  return runs ? [{ ...runs, id: `proof/${containerId}`, containerId }] : [];
}

/** Of a load, until the proof of all that did not come back is there. */
function proofOfLoad(asked: Asked, handOver: HandOverState): Due[] {
  const { handOverId } = handOver.body;
  const runs = awaited(asked.state, handOver).length > 0 ? proofFrom(asked, handOver.at) : null;
  return runs ? [{ ...runs, id: `proof/${handOverId}`, containerId: null, handOverId }] : [];
}

/** The careful day by which proof of a load must be here; null where none is awaited or no rule says when. */
export function proofDueOf(state: State, handOver: HandOverState, now: string, zone: string): string | null {
  const [due] = proofOfLoad({ state, now, zone, today: calendarDay(now, zone) }, handOver);
  return due?.day ?? null;
}

/** Containers of a load that left with it, did not come back, and of which no proof is filed. */
export const awaited = (state: State, { body, parts }: HandOverState): readonly string[] =>
  parts.flatMap(({ containerId, proofAt }) => {
    const container = state.containers.get(containerId);
    const away = container?.handOverId === body.handOverId && container.proofFiledAt === null;
    return away && proofAt === null ? [containerId] : [];
  });

/** A walk has one last day: its interval is from one look to the next. */
const ofWalk = ({ due: day, daysLeft, days, stated }: WalkDue) => ({
  from: dayAfter(day, { count: -days, unit: 'days' }),
  limit: { days, rule: 'inspection-days' as const, stated },
  day,
  lastDay: day,
  daysLeft,
  shareLeft: shareOf(daysLeft, days),
});

function walk({ state, now, zone }: Asked): Due[] {
  const due = walkDue(state, now, zone);
  if (!due) return [];
  const near = due.daysLeft <= toldFrom.walk;
  return [{ ...ofWalk(due), id: 'walk', kind: 'walk', containerId: null, near }];
}

/** What the last walk could not see is told of at once, whenever the next look at it is due. */
const looks = ({ state, now, zone }: Asked): Due[] =>
  notSeenSince(state).flatMap(({ containerId }) => {
    const container = state.containers.get(containerId);
    const due = container && lookDue(state, container, now, zone);
    return due ? [{ ...ofWalk(due), id: `look/${containerId}`, kind: 'look', containerId, near: true }] : [];
  });

/** It may be over already by the high end of what is read off the vessels: from then on the days run, the earlier way. */
function excess({ state, now, zone, today }: Asked): Due[] {
  const near = nearWork(state, now, zone);
  const passed = near?.mayHavePassed ?? near?.passed;
  if (!near || !passed) return [];
  const limit = daysToMove(state);
  return [
    {
      ...counted(passed.since, passed, limit.days, today),
      id: `move-excess/${passed.since}`,
      kind: 'move-excess',
      containerId: null,
      limit: { ...limit, rule: 'near-work-days' },
      near: true,
      ...(near.passed ? {} : { unsure: true }),
    },
  ];
}

/** Storage time and proof of one container, as they run; none where neither does. @param zone where the workshop is */
export function duesOf(state: State, container: ContainerState, now: string, zone: string): readonly Due[] {
  const asked = { state, now, zone, today: calendarDay(now, zone) };
  const load = state.handOvers.get(container.handOverId ?? '');
  const ofLoad = load && awaited(state, load).includes(container.body.containerId);
  return [
    ...leaving(asked, container),
    ...proofOf(asked, container),
    ...(ofLoad ? proofOfLoad(asked, load) : []),
  ];
}

/** Most pressing first. @param zone where the workshop is */
export function dues(state: State, now: string, zone: string): readonly Due[] {
  const asked = { state, now, zone, today: calendarDay(now, zone) };
  const containers = [...state.containers.values()];
  return [
    ...excess(asked),
    ...looks(asked),
    ...walk(asked),
    ...containers.flatMap((container) => leaving(asked, container)),
    ...containers.flatMap((container) => proofOf(asked, container)),
    ...[...state.handOvers.values()].flatMap((handOver) => proofOfLoad(asked, handOver)),
  ].sort((a, b) => a.daysLeft - b.daysLeft);
}

/** Until when the records of a container that is gone are kept; null while it is here, or no such rule was entered. */
export function recordsKept(
  state: State,
  { goneSince }: ContainerState,
  now: string,
  zone: string,
): Retention | null {
  const years = daysOf(state, 'retention-years');
  if (years === null || goneSince === null) return null;
  return retention(calendarDay(goneSince, zone), years, calendarDay(now, zone));
}
