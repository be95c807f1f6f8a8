/** One reading of the whole record for all who wait for it at a time. */
import type { ReadWhole } from '../screens/shell';
import type { StoreResult } from '../storage/failure';
import type { HowFar } from '../storage/pages-of-entries';

type Tell = (howFar: HowFar) => void;

type Underway = {
  readonly read: Promise<StoreResult<null>>;
  readonly tellers: Set<Tell>;
  readonly stop: () => void;
  waiting: number;
};

/**
 * @param reading one reading: tells how far it is, and ends early when the signal says so
 * @returns begins one for the first who waits, and stops it once nobody does
 */
export function readingForAll(
  reading: (tell: Tell, signal: AbortSignal) => Promise<StoreResult<null>>,
): ReadWhole {
  let current: Underway | null = null;
  function begin(): Underway {
    const tellers = new Set<Tell>();
    const stop = new AbortController();
    const tell: Tell = (howFar) => {
      for (const teller of tellers) teller(howFar);
    };
    const ended = (): void => {
      if (current === begun) current = null;
    };
    const begun: Underway = {
      tellers,
      waiting: 0,
      stop: () => {
        ended();
        stop.abort();
      },
      read: reading(tell, stop.signal).finally(ended),
    };
    return begun;
  }
  return (tell = () => undefined, signal) => {
    current ??= begin();
    const own = current;
    own.tellers.add(tell);
    own.waiting += 1;
    signal?.addEventListener('abort', () => {
      own.tellers.delete(tell);
      own.waiting -= 1;
      if (own.waiting === 0) own.stop();
    });
    return own.read;
  };
}
