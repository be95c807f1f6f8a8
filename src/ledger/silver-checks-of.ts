/** Tests for silver by their batch. */
import type { SilverChecked } from './entries/silver-checks';
import type { State, Told } from './state';

/** The tests of a batch, the newest first. */
export const silverChecksOf = (state: State, batchId: string): readonly Told<SilverChecked>[] =>
  [...state.silverChecks.values()].filter(({ body }) => body.batchId === batchId).toReversed();
