/**
 * An opening: what to go on from without reading all of a long record. It holds the entries that are recent or still matter,
 * and what containers held before that. Worked out from the record, kept beside it, thrown away when in doubt; never the truth.
 */
import { type Carried, type Followed, followed } from './contents';
import type { Entry } from './entries/entry';
import { brings } from './entries-about';
import { followedIn, goneOnFrom } from './fold';
import { type FoundRow, foundRows } from './found-rows';
import type { Pot } from './pot';
import { putAwayRows } from './put-away';
import type { State } from './state';
import { type Kept, stillMatter } from './still-matters';

export type Opening = {
  /** Entries of the whole record that it was worked out from. */
  readonly entries: number;
  /** Those at hand, in order. */
  readonly log: readonly Entry[];
  /** Place in the record of each of them, from 1. */
  readonly places: readonly number[];
  /** From when on all entries are at hand. */
  readonly from: string;
  /** What containers held by what happened first. */
  readonly carried: Carried;
  /** Entries at hand that name what nobody told of, in the whole record. */
  readonly unknown: readonly string[];
  /** What entries at hand name that is told of in others. */
  readonly away: readonly string[];
  /** Batches, containers and hand-overs that are not at hand: asked for when somebody looks for one. */
  readonly putAway: () => readonly FoundRow[];
  /** Codes of those that what is at hand names, by id. */
  readonly named: ReadonlyMap<string, string>;
  /** Hand-overs of which only some containers are at hand. */
  readonly inPart: readonly string[];
};

/** Entries of the whole record, at hand or not. */
export const entriesIn = ({ log, earlier }: State): number =>
  earlier ? earlier.entries + log.length - earlier.places.length : log.length;

/** Place in the whole record, from 1, of an entry of the log. */
export const placeInRecord = (state: State, index: number): number =>
  state.earlier?.places[index] ?? entriesIn(state) - (state.log.length - 1 - index);

/** What befell it before is over. */
const trimmed = (pot: Pot, since: string): Pot => {
  const isNear = ({ at }: { readonly at: string }): boolean => at >= since;
  return {
    ...pot,
    movements: pot.movements.filter(isNear),
    levels: pot.levels.filter(isNear),
    benchTests: pot.benchTests.filter(isNear),
  };
};

const only = <T>(map: ReadonlyMap<string, T>, has: (id: string) => boolean): ReadonlyMap<string, T> =>
  new Map([...map].filter(([id]) => has(id)));

/** What is carried of what was followed, for the things that are at hand. */
function carriedOf(
  before: Followed,
  kept: ReadonlySet<string>,
  ids: ReadonlySet<string>,
  since: Kept['since'],
): Omit<Carried, 'happened'> {
  const has = (id: string): boolean => ids.has(id);
  const pots = [...only(before.pots, has)].map(([id, pot]): [string, Pot] => [
    id,
    trimmed(pot, since.get(id) ?? ''),
  ]);
  return {
    pots: new Map(pots),
    placed: only(before.placed, has),
    placements: only(before.placements, has),
    treated: only(before.treated, has),
    upsets: before.upsets.filter(({ entryId }) => kept.has(entryId)),
    missed: before.missed,
    shutAsked: only(before.shutAsked, has),
    doubtAsked: only(before.doubtAsked, has),
  };
}

/** Everything that entries tell of for the first time. */
const toldIn = (log: readonly Entry[]): ReadonlySet<string> =>
  new Set(log.flatMap(({ id, body }) => brings(id, body).map((named) => named.id)));

const unknownIn = ({ troubles }: State) => troubles.filter(({ code }) => code === 'refers-to-unknown');

const putAwayKinds: ReadonlySet<FoundRow['is']> = new Set(['container', 'batch', 'hand-over', 'paper']);

/** Of a hand-over all containers that anybody told of are at hand, or it is none to speak of. */
const inPartOf = (
  { handOvers, containers: opened }: State,
  ids: ReadonlySet<string>,
  log: readonly Entry[],
): readonly string[] =>
  log.flatMap(({ body }) => {
    if (body.kind !== 'handed-over') return [];
    const containers = handOvers.get(body.handOverId)?.body.containers;
    return containers?.every(({ containerId }) => ids.has(containerId) || !opened.has(containerId))
      ? []
      : body.handOverId;
  });

function putAwayOf(state: State, ids: ReadonlySet<string>): readonly FoundRow[] {
  const now = [...foundRows(state)].flatMap(({ row }) =>
    putAwayKinds.has(row.is) && !ids.has(row.id) ? row : [],
  );
  return [...putAwayRows(state), ...now];
}

/**
 * @param state of the whole record, or gone on from an opening that nothing reached behind
 * @param from entries from then on are all kept, older ones where they still matter
 * @param until what happened before is not followed again: what is told late of an hour before it reaches behind
 */
export function openingOf(
  state: State,
  { from, until }: { readonly from: string; readonly until: string },
): Opening {
  const { log, since } = stillMatter(state, from);
  const kept = new Set(log.map(({ id }) => id));
  const ids = toldIn(log);
  const now = followedIn(state);
  // What another opening carried is not taken apart, though the clock was set back.
  const carriedBefore = now.base?.happenings.length ?? 0;
  const happenings = state.happenings.filter(({ at }, i) => i < carriedBefore || at < until);
  const before = followed(happenings, now.things, now.base ?? undefined);
  const carried = carriedOf(before, kept, ids, since);
  const happened = happenings.filter(({ entryId }) => kept.has(entryId)).length;
  const inPart = inPartOf(state, ids, log);
  const putAway = putAwayOf(state, new Set([...ids, ...kept].filter((id) => !inPart.includes(id))));
  const opening = {
    entries: entriesIn(state),
    from,
    log,
    places: state.log.flatMap(({ id }, i) => (kept.has(id) ? placeInRecord(state, i) : [])),
    carried: { ...carried, happened },
    putAway: () => putAway,
    inPart,
  };
  const really = unknownIn(state);
  const subjects = new Set(really.map(({ subject }) => subject));
  const alone = stateFrom({ ...opening, named: new Map(), unknown: log.map(({ id }) => id), away: [] });
  const away = new Set(unknownIn(alone).flatMap(({ subject }) => (subjects.has(subject) ? [] : subject)));
  return {
    ...opening,
    unknown: really.map(({ entryId }) => entryId),
    away: [...away],
    named: new Map(putAway.flatMap(({ id, code }) => (away.has(id) ? [[id, code]] : []))),
  };
}

/** The state to go on from: as that of the whole record in all that stands, runs, is awaited or is recent. */
export const stateFrom = ({ carried, log, unknown, away, ...opening }: Opening): State =>
  goneOnFrom(
    log,
    carried,
    { entries: new Set(unknown), away: new Set(away) },
    {
      ...opening,
      inPart: new Set(opening.inPart),
      last: log.at(-1),
      unknown: new Set(unknown),
      reachedBehind: false,
    },
  );
