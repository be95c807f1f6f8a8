/**
 * Walks along the containers: which was made last, what it did not see, which one is under way, what is to be seen on the
 * next, and by when.
 */
import { calendarDay } from '../rules/clocks/calendar-day';
import { type InspectionDue, inspectionDue } from '../rules/clocks/inspection-due';
import type { Item, LookOf } from '../safety/checklist-item';
import { type Checklist, isWalk } from '../safety/checklist-schema';
import { isDoubted } from './container-life';
import type { WalkFinished } from './entries/inspections';
import { levelAgainst } from './level-against';
import type { ChecklistState, ContainerState, FindingState, State, WalkState } from './state';
import { workshopLists } from './workshop-lists';

/** A walk that was left is not gone on with later than this: what was seen then is not seen now. Reasoned: a day's work. */
const leftAfterMs = 12 * 3_600_000;

/** The list of the walk, as this workshop asks it. */
export function walkList(state: Pick<State, 'listChanges'>): Checklist {
  const list = [...workshopLists(state).values()].find(isWalk);
  if (!list) throw new Error('there is a list of the walk');
  return list;
}

/** What is asked of each container, or once of the place as a whole. */
export const looksOf = ({ items }: Checklist, what: LookOf): readonly Item[] =>
  items.filter(({ of }) => of === what);

/** Until then the walk was one list over all containers at once; one that was cleared is a walk that was made. */
const wasWalk = ({ body }: ChecklistState): boolean => isWalk(body) && body.outcome === 'cleared';

const ofAll = new WeakMap<State['checklists'], readonly ChecklistState[]>();

/** Walks that were lists over all containers. Found once: they are asked for at each container. */
function listsOfAll({ checklists }: State): readonly ChecklistState[] {
  const lists = ofAll.get(checklists) ?? [...checklists.values()].filter(wasWalk);
  ofAll.set(checklists, lists);
  return lists;
}

type NotSeen = WalkFinished['notSeen'][number];

export type WalkMade = {
  readonly entryId: string;
  readonly at: string;
  /** Null for a list over all containers. */
  readonly walkId: string | null;
  readonly notSeen: readonly NotSeen[];
};

/** The last walk that was finished; null while none was. */
export function lastWalk(state: State): WalkMade | null {
  const lists = listsOfAll(state);
  const walks = [...state.walks.values()].flatMap(({ finished }) => (finished ? [finished] : []));
  const made: WalkMade[] = [
    ...lists.map(({ entryId, at }) => ({ entryId, at, walkId: null, notSeen: [] })),
    ...walks.map(({ entryId, at, body: { walkId, notSeen } }) => ({ entryId, at, walkId, notSeen })),
  ];
  return made.reduce<WalkMade | null>((last, one) => (last && last.at > one.at ? last : one), null);
}

/** When a container was last looked at; null where it never was. A list over all of them saw what stood there then. */
export function lastSeen(state: State, { at, inspections }: ContainerState): string | null {
  const lists = listsOfAll(state).filter((told) => told.at >= at);
  const seen = [...lists, ...inspections].map((told) => told.at);
  return seen.reduce<string | null>((last, one) => (last !== null && last > one ? last : one), null);
}

/** By the record there is nothing in it, not even what is left where all went off; nobody doubts it or has read a level on it. */
const isEmpty = (container: ContainerState): boolean =>
  container.contents.length === 0 &&
  container.doubtfulSince === null &&
  (levelAgainst(container)?.level.isZero() ?? true);

/** Gone containers are not looked at, nor empty ones that are sound. */
export const isToSee = (container: ContainerState): boolean =>
  container.goneSince === null && (container.damagedSince !== null || !isEmpty(container));

/** What must be seen first: a broken vessel, then one of which nobody knows what is in it. */
const urgency = (state: State, container: ContainerState): number =>
  container.damagedSince !== null ? 0 : isDoubted(state, container) ? 1 : 2;

/** Rank of each text by where it first came up. */
function firstCome(texts: readonly string[]): (text: string) => number {
  const order = [...new Set(texts)];
  return (text) => order.indexOf(text);
}

/**
 * Containers to be looked at, in the order in which they are walked along: what is damaged, what is in doubt, then place by
 * place and tray by tray, as the shelf stands.
 */
export function walkOrder(state: State): readonly ContainerState[] {
  const all = [...state.containers.values()].filter(({ goneSince }) => goneSince === null);
  const placeOf = ({ body }: ContainerState): string => body.place ?? '';
  const trayOf = (one: ContainerState): string => JSON.stringify([placeOf(one), one.body.tray ?? '']);
  const [place, tray] = [firstCome(all.map(placeOf)), firstCome(all.map(trayOf))];
  return all
    .filter(isToSee)
    .sort(
      (a, b) =>
        urgency(state, a) - urgency(state, b) ||
        place(placeOf(a)) - place(placeOf(b)) ||
        tray(trayOf(a)) - tray(trayOf(b)),
    );
}

/** The walk that was begun and not finished, if it was not left long ago; the newest. */
export function walkUnderWay(state: State, now: string): WalkState | null {
  const since = new Date(Date.parse(now) - leftAfterMs).toISOString();
  const lastOf = ({ inspected }: WalkState): string => inspected.at(-1)?.at ?? '';
  return [...state.walks.values()]
    .filter((walk) => walk.finished === null && lastOf(walk) >= since)
    .reduce<WalkState | null>((last, one) => (last && lastOf(last) > lastOf(one) ? last : one), null);
}

/** Whether something begun at a moment was left so long ago that it is begun anew. */
export const wasLeft = (at: string, now: string): boolean => Date.parse(now) - Date.parse(at) > leftAfterMs;

/** What of the order is still to be seen on a walk. @param passed those that could not be seen */
export function stillToSee(
  state: State,
  walkId: string,
  passed: readonly string[],
): readonly ContainerState[] {
  const seen = new Set(state.walks.get(walkId)?.inspected.map(({ body }) => body.containerId));
  return walkOrder(state).filter(
    ({ body: { containerId } }) => !seen.has(containerId) && !passed.includes(containerId),
  );
}

/** What the last walk could not see, and nobody has looked at since. */
export const notSeenSince = (state: State): readonly NotSeen[] => {
  const last = lastWalk(state);
  return (last?.notSeen ?? []).filter(({ containerId }) => {
    const container = state.containers.get(containerId);
    return container && isToSee(container) && !((lastSeen(state, container) ?? '') > (last?.at ?? ''));
  });
};

export type WalkDue = InspectionDue & {
  /** Days between walks, and whether the workshop's authority has said so; else those of the list, the careful ones. */
  readonly days: number;
  readonly stated: boolean;
  /** The container that is due first. */
  readonly containerId: string;
};

/** Days between walks that hold here. */
export function walkDays(state: State): Pick<WalkDue, 'days' | 'stated'> {
  const rule = state.rules.get('inspection-days')?.body.stated;
  return rule?.rule === 'inspection-days'
    ? { days: Number(rule.value.value), stated: true }
    : { days: Math.floor(walkList(state).validHours / 24), stated: false };
}

/** Since when it is to be looked at: the first waste; where none is known, the doubt or the damage. */
const toSeeSince = ({ firstWasteIn, doubtfulSince, damagedSince, at }: ContainerState): string =>
  firstWasteIn ?? doubtfulSince ?? damagedSince ?? at;

/** By when a container must be looked at; null while nothing in it asks for it. @param zone where the workshop is */
export function lookDue(state: State, container: ContainerState, now: string, zone: string): WalkDue | null {
  const { days, stated } = walkDays(state);
  const today = calendarDay(now, zone);
  const seen = lastSeen(state, container);
  const seenOn = seen === null ? null : calendarDay(seen, zone);
  const due = inspectionDue(calendarDay(toSeeSince(container), zone), seenOn, days, today);
  return due && { ...due, days, stated, containerId: container.body.containerId };
}

/**
 * By when the next walk must be made: the earliest of its containers, each counted from when it was last seen. Those that
 * the last walk could not see are due by themselves, unless there are no others. Null while there is nothing to see.
 * @param zone where the workshop is
 */
export function walkDue(state: State, now: string, zone: string): WalkDue | null {
  const missed = new Set(notSeenSince(state).map(({ containerId }) => containerId));
  const all = walkOrder(state);
  const others = all.filter(({ body }) => !missed.has(body.containerId));
  const due = (others.length > 0 ? others : all).flatMap(
    (container) => lookDue(state, container, now, zone) ?? [],
  );
  return due.reduce<WalkDue | null>((first, one) => (first && first.due <= one.due ? first : one), null);
}

/** What walks found at a container, or of the place with null; the open ones first, then the newest. */
export function findingsAt(state: State, containerId: string | null): readonly FindingState[] {
  const found = [...state.findings.values()].filter((finding) => finding.containerId === containerId);
  const newest = found.toReversed();
  return [...newest.filter(({ closed }) => !closed), ...newest.filter(({ closed }) => closed)];
}
