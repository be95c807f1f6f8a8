/** Reading all of a long record while its page stays usable: a piece at a time, with a rest in between. */
import { done, failed, failureOf, type StoreResult } from './failure';
import type { HowFar } from './pages-of-entries';
import { markSeen, type OpenRecord, type Reading, readAll, reading } from './record';

/** Read and looked at in less time than a person notices. Status: reasoned. */
const atOnce = 500;

const rest = (): Promise<void> => new Promise((rested) => setTimeout(rested));

/** Whether some have no device or place in its chain to be found by. */
async function isAnyBesides({ database }: OpenRecord): Promise<boolean> {
  const { store } = database.transaction('entries');
  const [all, placed] = await Promise.all([store.count(), store.index('by-device').count()]);
  return all > placed;
}

/**
 * Device by device, so that what is counted as handed over is whole up to there. What is written meanwhile is among it, or
 * handed over as anything new.
 * @returns null where it was stopped by the signal; then nothing counts as handed over
 */
export async function readInPieces(
  record: OpenRecord,
  tell: (howFar: HowFar) => void,
  signal: AbortSignal,
): Promise<StoreResult<Reading | null>> {
  try {
    if (await isAnyBesides(record)) return await readAll(record);
    const of = await record.database.count('entries');
    const pieces: Reading[] = [];
    let beyond: IDBKeyRange | undefined;
    for (let passed = 0; ; ) {
      if (signal.aborted) return done(null);
      const found = await record.database.getAllFromIndex('entries', 'by-device', beyond, atOnce);
      const last = found.at(-1);
      if (!last) break;
      beyond = IDBKeyRange.lowerBound([last.device, last.counter], true);
      pieces.push(reading(found));
      passed += found.length;
      tell({ done: Math.min(passed, of), of });
      await rest();
    }
    const entries = pieces.flatMap((piece) => piece.entries);
    markSeen(record, entries);
    return done({ entries, corrupted: pieces.flatMap((piece) => piece.corrupted) });
  } catch (error) {
    return failed(failureOf(error));
  }
}
