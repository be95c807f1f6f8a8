/**
 * From entries to state. The state depends only on which entries there are, not on the order in which they arrived:
 * each fold sorts what is new into the log, and works out again what rests on it.
 */

import type { Carried, Followed } from './contents';
import type { Body } from './entries/body';
import type { Entry } from './entries/entry';
import { linked } from './links';
import { isSame, type Memory, Remembering } from './memory';
import { compareEntries, joined } from './order';
import { knows, referencesOf, type UnknownBefore } from './references';
import { type Sorted, sorted } from './sorted-facts';
import { namedBy, type Standing, standing } from './standing';
import type { Earlier, State } from './state';

const memories = new WeakMap<State, Memory>();

type Before = { readonly memory?: Memory | undefined; readonly earlier: Earlier | null };

/** Another limit beside the work may have been passed for long. */
const isOfOlder = (body: Body): boolean =>
  body.kind === 'local-rule-stated' && body.stated.rule === 'near-work-limit';

/** Whether anything was told that the opening cannot tell of: before its end, of an older time, or of what is not at hand. */
function reachesBehind(
  { places, last, from, unknown }: Earlier,
  log: readonly Entry[],
  told: State,
): boolean {
  const ofOlder = ({ happenedAt, body }: Entry): boolean => happenedAt < from || isOfOlder(body);
  const since = log.slice(places.length);
  const changed = new Set(since.flatMap((entry) => namedBy(entry) ?? []));
  return (
    log[places.length - 1] !== last ||
    followedIn(told).reachedBehind ||
    since.some(ofOlder) ||
    (changed.size > 0 && log.some((entry) => changed.has(entry.id) && ofOlder(entry))) ||
    since.some(({ body }) => referencesOf(body).some((named) => !knows(told, named))) ||
    told.troubles.some(({ code, entryId }) => code === 'refers-to-unknown' && !unknown.has(entryId))
  );
}

const withoutThose = <T>(map: ReadonlyMap<string, T>, ids?: ReadonlySet<string>): ReadonlyMap<string, T> =>
  ids && ids.size > 0 ? new Map([...map].filter(([id]) => !ids.has(id))) : map;

/** @param log in order, each entry once @param before what was worked out of an older state is not worked out again */
function derived(log: readonly Entry[], { memory, earlier }: Before): State {
  const told = new Remembering(memory);
  const { history, facts, troubles } = told.once('standing', [log], (last?: Standing) => standing(log, last));
  const { lists, befell } = told.once('facts', [facts], (last?: Sorted) => sorted(facts, last));
  const linkedState = linked(lists, befell, told);
  const state = {
    ...linkedState,
    handOvers: withoutThose(linkedState.handOvers, earlier?.inPart),
    log,
    history,
    troubles: [...troubles, ...linkedState.troubles],
  };
  memories.set(state, told.memory);
  if (!earlier) return state;
  const whole = {
    ...state,
    earlier: { ...earlier, reachedBehind: earlier.reachedBehind || reachesBehind(earlier, log, state) },
  };
  memories.set(whole, told.memory);
  return whole;
}

/** How the contents of its containers were followed. */
export const followedIn = (state: State): Followed => memories.get(state)?.get('contents')?.value as Followed;

/** The state that entries add up to after what an opening carries. */
export function goneOnFrom(
  log: readonly Entry[],
  carried: Carried,
  unknown: UnknownBefore,
  earlier: Earlier,
): State {
  const memory: Memory = new Map<string, { restsOn: readonly unknown[]; value: unknown }>([
    ['contents', { restsOn: [], value: carried }],
    ['unknown', { restsOn: [], value: unknown }],
  ]);
  return derived(log, { memory, earlier });
}

/** Identifiers of a log, and maybe of others that went on from it: who is not among them is surely new. */
const idsOf = new WeakMap<readonly Entry[], Set<string>>();

function idsOfLog(log: readonly Entry[]): Set<string> {
  const known = idsOf.get(log) ?? new Set(log.map(({ id }) => id));
  idsOf.set(log, known);
  return known;
}

/** Whether they come after all of the log, in order, and surely none of them is in it. */
const comeAfter = (log: readonly Entry[], entries: readonly Entry[], ids: ReadonlySet<string>): boolean =>
  new Set(entries.map(({ id }) => id)).size === entries.length &&
  entries.every((entry, i) => {
    const before = i === 0 ? log.at(-1) : entries[i - 1];
    return !ids.has(entry.id) && (!before || compareEntries(before, entry) < 0);
  });

/** The log with the entries that it does not hold yet; the same log when it holds them all. */
function withNew(log: readonly Entry[], entries: readonly Entry[]): readonly Entry[] {
  if (entries.length === 0) return log;
  const ids = idsOfLog(log);
  if (comeAfter(log, entries, ids)) {
    const longer = [...log, ...entries];
    for (const { id } of entries) ids.add(id);
    idsOf.set(longer, ids);
    return longer;
  }
  const all = joined(log, entries);
  return isSame(all, log) ? log : all;
}

/** The state with more entries, in whatever order they come; the same state when it knows them all. */
export function foldAll(state: State, entries: readonly Entry[]): State {
  const log = withNew(state.log, entries);
  return log === state.log ? state : derived(log, { memory: memories.get(state), earlier: state.earlier });
}

/** The state with one more entry. */
export const fold = (state: State, entry: Entry): State => foldAll(state, [entry]);

/** The state that all the entries add up to, in whatever order they come. */
export const applyAll = (entries: readonly Entry[]): State => derived(joined(entries), { earlier: null });
