/**
 * Everything on the disk is looked at after each start, away from the page, and whenever somebody asks. Of a long record too,
 * however lately it was looked at: what its opening holds does not show that an entry is gone or changed since.
 */
import { checkRecordInWorker, type RunningCheck } from '../screens/keeping/check-record';
import { openDatabase } from '../storage/database';
import { dropOpening } from '../storage/openings';
import type { CheckProgress } from '../storage/soundness';
import { goneOnWithout, troubleAfterCheck } from '../storage/trouble';
import type { Book } from './open-book';

/** What was worked out of entries that are not as they were written is in doubt: the next start works it out anew. */
async function forgetOpening(name: Book['name']): Promise<void> {
  const opened = await openDatabase(name, () => undefined, 'only-if-there');
  if (!opened.ok) return;
  try {
    await dropOpening({ database: opened.value });
  } catch (error) {
    if (!(error instanceof DOMException)) throw error;
  } finally {
    opened.value.close();
  }
}

/** Looks now; what is found stands in the book. */
export function checkBook(book: Book, tell?: (progress: CheckProgress) => void): RunningCheck {
  const running = checkRecordInWorker(book.name, tell);
  const checked = running.checked.then((found) => {
    if (found.ok) {
      book.lastCheck.value = found.value;
      const trouble = troubleAfterCheck(book.trouble.peek(), found.value, goneOnWithout(book.name));
      if (trouble.length > 0) void forgetOpening(book.name);
      book.trouble.value = trouble;
    }
    return found;
  });
  return { checked, cancel: running.cancel };
}

/** So long the page has for itself after the start, ms. Status: reasoned; the target for a start is half of it. */
const restMs = 3000;

/** @returns ends it, begun or not */
export function checkAfterStart(book: Book): () => void {
  if (typeof Worker === 'undefined' || book.trouble.peek().some(({ code }) => code === 'gone'))
    return () => undefined;
  let running: RunningCheck | undefined;
  const timer = setTimeout(() => {
    running = checkBook(book);
  }, restMs);
  return () => {
    clearTimeout(timer);
    running?.cancel();
  };
}
