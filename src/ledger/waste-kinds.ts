/** Which kinds of waste a container holds, as far as the record tells. */
import type { StreamKind } from '../safety/stream-kind';
import type { State } from './state';

export type WasteKinds = {
  /** Of the streams in it, and of the liquors that its wet solids still hold. */
  readonly kinds: readonly StreamKind[];
  /** Something is in it that no stream accounts for. */
  readonly unaccounted: boolean;
};

/** The kind of a stream, and of the liquor that it holds if it is a wet solid. */
export function kindsOfStream(state: State, streamId: string): readonly StreamKind[] {
  const stream = state.streams.get(streamId)?.body;
  const held = stream?.solid?.holds.liquor;
  const mother = held === undefined || held === 'not-determined' ? undefined : state.streams.get(held)?.body;
  return [...(stream ? [stream.stream] : []), ...(mother ? [mother.stream] : [])];
}

export function wasteKinds(state: State, containerId: string): WasteKinds {
  const parts = state.containers.get(containerId)?.contents ?? [];
  const kinds = parts.flatMap(({ streamId }) => (streamId === null ? [] : kindsOfStream(state, streamId)));
  return { kinds: [...new Set(kinds)], unaccounted: parts.some(({ streamId }) => streamId === null) };
}
