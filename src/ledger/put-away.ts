/** Things that are over and of which the state holds no more than a row to find them by. */
import type { FoundRow } from './found-rows';
import type { Reference } from './references';
import type { State } from './state';

const none: readonly FoundRow[] = [];

export const putAwayRows = (state: State): readonly FoundRow[] => state.earlier?.putAway() ?? none;

/** Made once for the rows of an opening: many entries name the same things. */
const known = new WeakMap<readonly FoundRow[], ReadonlyMap<string, FoundRow>>();

function rowOf(state: State, is: Reference['to'], id: string): FoundRow | undefined {
  const rows = putAwayRows(state);
  const byName = known.get(rows) ?? new Map(rows.map((row) => [`${row.is} ${row.id}`, row]));
  known.set(rows, byName);
  return byName.get(`${is} ${id}`);
}

const codeOf = (state: State, is: 'container' | 'batch', id: string): string | undefined =>
  state.earlier?.named.get(id) ?? rowOf(state, is, id)?.code;

/** What stands on a container, also on one that is long gone; undefined where nobody told of it, and of none. */
export const codeOfContainer = (state: State, id: string | null | undefined): string | undefined =>
  id === null || id === undefined
    ? undefined
    : (state.containers.get(id)?.body.code ?? codeOf(state, 'container', id));

/** Of no batch there is none. */
export const codeOfBatch = (state: State, id: string | null | undefined): string | undefined =>
  id === null || id === undefined
    ? undefined
    : (state.batches.get(id)?.body.code ?? codeOf(state, 'batch', id));

/** Whether there is such a batch, container or hand-over that is not at hand, so that only the whole record tells of it. */
export const isPutAway = (state: State, is: Reference['to'], id: string): boolean =>
  rowOf(state, is, id) !== undefined;
