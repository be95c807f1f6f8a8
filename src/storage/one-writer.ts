/**
 * One writer at a time over all tabs, by the browser's own locks, and what is being written here, for whoever must wait for
 * its end. No lock is what keeps the record whole: that is the transaction, and the index that gives no counter twice. So a
 * lock that does not come is not waited for longer than a person waits, and where there are no locks none is missed.
 */

/** A transaction takes milliseconds. Whoever holds a lock for longer has been stopped in the middle, or is at a long work. */
const patienceMs = 4_000;

const underWay = new Set<Promise<unknown>>();

/** Counts as being written until it has an answer. */
export async function whileWriting<T>(work: () => Promise<T>): Promise<T> {
  const writing = work();
  underWay.add(writing);
  try {
    return await writing;
  } finally {
    underWay.delete(writing);
  }
}

/** Waits until nothing is being written here, and whoever waited for that has heard the answer: a form drops its draft on it. */
export async function untilWritten(): Promise<void> {
  while (underWay.size > 0) {
    await Promise.allSettled(underWay);
    await new Promise((resolve) => setTimeout(resolve));
  }
}

/** @param name of what is written: writers of one name go one after the other, in the order in which they asked */
export async function oneWriter<T>(name: string, work: () => Promise<T>): Promise<T> {
  const locks = typeof navigator === 'undefined' ? undefined : navigator.locks;
  if (!locks) return work();
  let isMine = false;
  const impatience = new AbortController();
  const timer = setTimeout(() => impatience.abort(), patienceMs);
  try {
    // Awaited here, so that the timer runs until it is granted.
    return await locks.request(name, { signal: impatience.signal }, () => {
      isMine = true;
      return work();
    });
  } catch (error) {
    if (isMine) throw error;
    // Not given, or refused: the transaction waits for its turn by itself.
    return work();
  } finally {
    clearTimeout(timer);
  }
}
