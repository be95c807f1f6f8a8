/**
 * What of waste came, left and stood here over a time, as chemistry: every entry that tells of that time counts as it is known
 * now, whenever it was written or corrected.
 */
import type { Contents } from './container-load';
import { changesOf } from './contents-followed';
import type { Held, State } from './state';
import { arosenAt } from './year-arising';
import { type Days, type When, whenIn } from './year-days';
import { type Flow, type Leaving, leftAs, type Portion, Shelf } from './year-shelf';

export type Flows = {
  readonly start: readonly Portion[];
  readonly flows: readonly Flow[];
  readonly end: readonly Portion[];
  /** Containers here at the start and at the end, with what they held. */
  readonly standing: Readonly<Record<'start' | 'end', ReadonlyMap<string, Contents>>>;
  /** Of a waste what is in no container, where that is anything. */
  readonly loose: Readonly<Record<'start' | 'end', ReadonlyMap<string, Held>>>;
  readonly leavings: readonly Leaving[];
  /** Containers here at the end of which nobody knows what is in them, whatever the record held. */
  readonly doubtful: readonly string[];
  /** Movements that the record could not follow, with the container. */
  readonly notFollowed: readonly { readonly entryId: string; readonly containerId: string }[];
};

/** What arose at a moment goes before what happened to it, and that before what left or came back. */
type Turn = {
  readonly at: string;
  readonly rank: 0 | 1 | 2;
  readonly takes: (shelf: Shelf, when: When) => void;
};

function turnsOf(state: State): readonly Turn[] {
  const arosen = arosenAt(state);
  const place = new Map(state.log.map(({ id }, i) => [id, i]));
  const marks = [...state.containers.values()]
    .flatMap(({ marks }) => marks)
    .toSorted((a, b) => (place.get(a.entryId) ?? 0) - (place.get(b.entryId) ?? 0));
  const turns: Turn[] = [
    ...[...state.streams.values()].map(
      (stream): Turn => ({
        at: arosen.get(stream.body.streamId) ?? stream.at,
        rank: 0,
        takes: (shelf, when) => shelf.arises(when, stream),
      }),
    ),
    ...changesOf(state).map(
      (change): Turn => ({
        at: change.happening.at,
        rank: 1,
        takes: (shelf, when) => shelf.changes(when, change),
      }),
    ),
    ...marks.flatMap(({ at, entryId, body: { mark, containerId } }): Turn[] => {
      if (mark === 'gone')
        return [{ at, rank: 2, takes: (shelf, when) => shelf.leaves(when, containerId, entryId, at) }];
      return mark === 'came-back'
        ? [{ at, rank: 2, takes: (shelf, when) => shelf.comesBack(when, containerId, entryId) }]
        : [];
    }),
  ];
  return turns.sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : a.rank - b.rank));
}

/** @param zone where the workshop is */
export function flowsOf(state: State, days: Days, zone: string): Flows {
  const when = whenIn(days, zone);
  const shelf = new Shelf(state);
  const turns = turnsOf(state);
  const take = (which: When): void => {
    for (const turn of turns) if (when(turn.at) === which) turn.takes(shelf, which);
  };
  take('before');
  const before = { start: shelf.portions(), standing: shelf.standing(), loose: shelf.unplaced() };
  take('in');
  const left = shelf.leavings.filter(({ cameBack }) => !cameBack).map(leftAs);
  return {
    start: before.start,
    flows: [...shelf.flows, ...left],
    end: shelf.portions(),
    standing: { start: before.standing, end: shelf.standing() },
    loose: { start: before.loose, end: shelf.unplaced() },
    leavings: shelf.leavings,
    doubtful: [...state.containers.values()].flatMap(({ body: { containerId }, doubtfulSince: since }) =>
      since !== null && when(since) !== 'after' && shelf.isHere(containerId) ? [containerId] : [],
    ),
    notFollowed: shelf.notFollowed,
  };
}
