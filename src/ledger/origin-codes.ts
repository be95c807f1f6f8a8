/**
 * Federal codes of the USA that a waste carries from where it arose: its own as it was logged, and those of what it was made from.
 * Treating takes a code off a waste; the standards for land disposal that came with it stay (40 CFR 268.40).
 */
import type { ContainerState, State, StreamState } from './state';
import { rcraCodesOf, treatedFor } from './waste-origin';

const firing = (state: State, stream: StreamState): readonly string[] =>
  rcraCodesOf(state, stream).flatMap(({ code, standing }) => (standing === 'fires' ? [code] : []));

/** Of every waste in it, and of those that were treated for it. */
export function originCodes(state: State, { contents }: ContainerState): readonly string[] {
  const streams = contents.flatMap(({ streamId }) => state.streams.get(streamId ?? '') ?? []);
  const all = streams.flatMap((stream) => [stream, ...treatedFor(state, stream)]);
  return [...new Set(all.flatMap((stream) => firing(state, stream)))].sort();
}
