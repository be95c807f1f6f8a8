/**
 * From entries to state. The state depends only on which entries there are, not on the order in which they arrived:
 * each fold sorts the new entry into the log and works everything out again.
 */
import type { Entry } from './entries/entry';
import { linked } from './links';
import { compareEntries, joined } from './order';
import { happeningsIn, sorted } from './sorted-facts';
import { standing } from './standing';
import type { State } from './state';

/** @param log in order, each entry once */
function derived(log: readonly Entry[]): State {
  const { history, facts, troubles } = standing(log);
  const state = linked(sorted(facts), happeningsIn(facts));
  return { ...state, log, history, troubles: [...troubles, ...state.troubles] };
}

/** The state with one more entry; the same state when it is known already. */
export function fold(state: State, entry: Entry): State {
  const known = state.log.find(({ id }) => id === entry.id);
  if (known?.hash === entry.hash) return state;
  const last = state.log.at(-1);
  if (!known && (!last || compareEntries(last, entry) < 0)) return derived([...state.log, entry]);
  return derived(joined(state.log, [entry]));
}

/** The state that all the entries add up to, in whatever order they come. */
export const applyAll = (entries: readonly Entry[]): State => derived(joined(entries));
