/** When a waste came about, and as what it counts. */
import { isCemented } from './batch-streams';
import type { Contents } from './container-load';
import { changesOf } from './contents-followed';
import type { State, StreamState } from './state';
import { treatedFor } from './waste-origin';

/** `in-work`: leach liquor on its way to cementation; `left-of-treating`: measured in what a treatment left; `determined`: in the place of what the record held. */
export type CameAs = 'arose' | 'in-work' | 'left-of-treating' | 'determined';

export const holdsNothing = ({ liquid, residues, unaccounted }: Contents): boolean =>
  !liquid && residues.length === 0 && !unaccounted;

/** When a waste arose: as it was logged, or as it was first put somewhere, should that be earlier. */
export function arosenAt(state: State): ReadonlyMap<string, string> {
  const first = new Map([...state.streams].map(([id, { at }]) => [id, at]));
  for (const { at, body } of state.happenings) {
    if (body.kind !== 'stream-placed' && body.kind !== 'contents-determined') continue;
    const before = first.get(body.streamId);
    if (before !== undefined && at < before) first.set(body.streamId, at);
  }
  return first;
}

const ofDetermining = new WeakMap<State, ReadonlySet<string>>();

/** Wastes that were logged because somebody said what is in a container of which the record held something else. */
function replacing(state: State): ReadonlySet<string> {
  const known = ofDetermining.get(state);
  if (known) return known;
  const found = new Set(
    changesOf(state).flatMap(({ happening: { body }, before }) =>
      body.kind === 'contents-determined' && !holdsNothing(before) ? [body.streamId] : [],
    ),
  );
  ofDetermining.set(state, found);
  return found;
}

/** A determined waste stands in for what the record held: it does not arise once more. What was found in an empty vessel does. */
export function cameAs(state: State, stream: StreamState): CameAs {
  const { stream: kind, batchId, streamId } = stream.body;
  if (replacing(state).has(streamId)) return 'determined';
  const batch = state.batches.get(batchId ?? '');
  if (kind === 'leach-liquor' && batch && isCemented(state, batch)) return 'in-work';
  return treatedFor(state, stream).length > 0 ? 'left-of-treating' : 'arose';
}
