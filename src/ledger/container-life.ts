/**
 * Where a container is in its life, and what may be said of it there. Several things can be so at once (a closed one is
 * damaged): the life is the one that decides what to do; each mark still has its own undoing.
 */
import { isNothing } from './amounts';
import type { ContainerMarked } from './entries/containers';
import { fillLimit, takesUp } from './fill';
import type { ContainerMovement, ContainerState, State, Told } from './state';
import { wasteKinds } from './waste-kinds';
import { wholeOf } from './whole-of';

/** In the order in which one covers the other. */
const lives = [
  'gone',
  'damaged',
  'not-determined',
  'held',
  'leaving',
  'closed',
  'full',
  'emptied',
  'filling',
  'opened',
] as const;
export type LifeName = (typeof lives)[number];

/** `since` is when it became so; null where the record does not tell. */
export type Life = { readonly is: LifeName; readonly since: string | null };

/** The word of somebody who emptied it, unless something was put in since. */
export function saidEmpty({
  marks,
  movements,
}: Pick<ContainerState, 'marks' | 'movements'>): Told<ContainerMarked> | null {
  const emptied = marks.findLast((told) => told.body.mark === 'emptied');
  if (!emptied || movements.some(({ way, at }) => way === 'in' && at > emptied.at)) return null;
  return emptied;
}

/** Nothing is in it any more: where all the water went off, what was dissolved still is. */
const emptiedBy = ({ after, purpose }: ContainerMovement): boolean =>
  isNothing(after) && purpose !== 'evaporated';

/** How what is in it came about; what befell the container before it was last empty may not be at hand. */
export const sinceLastEmpty = ({
  movements,
}: Pick<ContainerState, 'movements'>): readonly ContainerMovement[] =>
  movements.slice(movements.findLastIndex(emptiedBy) + 1);

/** When the first thing that no logged waste accounts for came in, or was left as the water went off, where its entry tells so. */
export function unaccountedSince(state: State, container: ContainerState): string | null {
  const told = sinceLastEmpty(container);
  const unlogged = ({ purpose, streamId, after }: ContainerMovement): boolean =>
    purpose === 'placed' ? !state.streams.has(streamId ?? '') : purpose === 'evaporated' && isNothing(after);
  return told.find(unlogged)?.at ?? null;
}

/** When it came to its fill limit for the last time; null while it is under it. */
function fullSince(state: State, container: ContainerState): string | null {
  const limit = fillLimit(state, container);
  const full = (held: ContainerState['holds']): boolean => takesUp(held).gte(limit);
  const { holds, movements, at } = container;
  if (!full(holds)) return null;
  const under = movements.findLastIndex(({ after }) => !full(after));
  return movements[under + 1]?.at ?? at;
}

function emptySince(container: ContainerState): string | null {
  const said = saidEmpty(container);
  if (said) return said.at;
  const last = container.movements.at(-1);
  return last && isNothing(container.holds) ? last.at : null;
}

/** Each life that a container is in just now, with when it began; undefined where it is not in it. */
function allOf(state: State, container: ContainerState): Partial<Record<LifeName, Life['since']>> {
  const { goneSince, damagedSince, doubtfulSince, heldSince, leavingSince, closedAt, holds } = container;
  const unaccounted = wasteKinds(state, container.body.containerId).unaccounted;
  const held = (since: string | null) => since ?? undefined;
  const all: Readonly<Record<LifeName, string | null | undefined>> = {
    gone: held(goneSince),
    damaged: held(damagedSince),
    'not-determined': held(doubtfulSince) ?? (unaccounted ? unaccountedSince(state, container) : undefined),
    held: held(heldSince),
    leaving: held(leavingSince),
    closed: held(closedAt),
    full: held(fullSince(state, container)),
    emptied: held(emptySince(container)),
    filling: isNothing(holds) ? undefined : container.firstWasteIn,
    opened: container.at,
  };
  return Object.fromEntries(Object.entries(all).filter(([, since]) => since !== undefined));
}

export function lifeOf(state: State, container: ContainerState): Life {
  const all = allOf(state, container);
  const is = lives.find((life) => life in all) ?? 'opened';
  return { is, since: all[is] ?? null };
}

/** Whether nobody knows for sure what is in it: somebody doubts it, or something in it is in no log. */
export const isDoubted = (state: State, { doubtfulSince, body }: ContainerState): boolean =>
  doubtfulSince !== null || wasteKinds(state, body.containerId).unaccounted;

/** What may be done with a container, or said of it. */
export type Doing =
  | 'put-in'
  | 'take-out'
  | 'move-all'
  | 'say-what-it-is'
  | 'read-level'
  | 'lab-report'
  | 'water-lost'
  | 'change-vessel'
  | 'hand-over'
  | ContainerMarked['mark'];

/** The likeliest in each life. */
const likeliest: Readonly<Record<LifeName, Doing>> = {
  gone: 'proof-filed',
  damaged: 'move-all',
  'not-determined': 'say-what-it-is',
  held: 'let-go',
  leaving: 'hand-over',
  closed: 'leaving',
  full: 'take-out',
  emptied: 'put-in',
  filling: 'put-in',
  opened: 'put-in',
};

const fillable: ReadonlySet<LifeName> = new Set(['opened', 'filling', 'emptied']);

/** What makes sense, in the order in which it is offered. */
function sensible(state: State, container: ContainerState): Readonly<Record<Doing, boolean>> {
  const { closedAt, heldSince, leavingSince, goneSince, damagedSince, proofFiledAt } = container;
  const { doubtfulSince, holds, body } = container;
  const { is } = lifeOf(state, container);
  const here = goneSince === null;
  const sound = here && damagedSince === null;
  const nothing = wholeOf(container).length === 0;
  const doubted = isDoubted(state, container);
  const logged = !isNothing(holds) && !wasteKinds(state, body.containerId).unaccounted;
  return {
    'put-in': fillable.has(is),
    'move-all': here && damagedSince !== null && !nothing,
    'say-what-it-is': here && doubted,
    // Its parts are logged: only somebody's doubt stands in the way.
    'contents-known': here && doubtfulSince !== null && logged,
    'take-out': here && !nothing,
    'read-level': here,
    'lab-report': here && (!nothing || doubted),
    'proof-filed': !here && proofFiledAt === null,
    'came-back': !here,
    mended: here && damagedSince !== null,
    'let-go': here && heldSince !== null,
    staying: here && leavingSince !== null,
    reopened: here && closedAt !== null,
    closed: sound && closedAt === null && !nothing,
    leaving: sound && leavingSince === null && (!nothing || doubted),
    'hand-over': here && (!nothing || doubted),
    gone: here,
    held: sound && heldSince === null,
    'change-vessel': here,
    'water-lost': here && !holds.volume.isZero(),
    emptied: here && !nothing,
    'contents-doubtful': here && doubtfulSince === null,
    damaged: sound,
  };
}

/** What there is to do with it now, the likeliest first. Nothing here says that it is allowed: a plan is asked for that. */
export function mayBeDone(state: State, container: ContainerState): readonly Doing[] {
  const sense = sensible(state, container);
  const first = likeliest[lifeOf(state, container).is];
  const rest = (Object.keys(sense) as Doing[]).filter((doing) => doing !== first);
  return [first, ...rest].filter((doing) => sense[doing]);
}
