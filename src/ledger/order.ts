/** The order of entries, the same on every device: written-at, then device, then counter. */
import type { Entry } from './entries/entry';

type Place = Pick<Entry, 'writtenAt' | 'device' | 'counter'>;

const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Negative when `a` comes first. */
export const compareEntries = (a: Place, b: Place): number =>
  compareText(a.writtenAt, b.writtenAt) || compareText(a.device, b.device) || a.counter - b.counter;

/**
 * Every entry once, in order: all that joining the records of two devices takes. Should two entries claim the same id,
 * which only tampering brings about, the first in order is kept, whichever came first.
 */
export function joined(...records: readonly (readonly Entry[])[]): readonly Entry[] {
  // Of the same entry read twice the first stays, so that nothing is worked out again for the second.
  const byHash = new Map(
    records
      .flat()
      .toReversed()
      .map((entry) => [entry.hash, entry]),
  );
  const inOrder = [...byHash.values()].sort((a, b) => compareEntries(a, b) || compareText(a.hash, b.hash));
  const ids = new Set<string>();
  return inOrder.filter(({ id }) => !ids.has(id) && ids.add(id));
}
