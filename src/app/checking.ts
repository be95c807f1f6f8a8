/** Everything on the disk is looked at once after each start, away from the page, and whenever somebody asks. */
import { checkRecordInWorker, type RunningCheck } from '../screens/keeping/check-record';
import type { CheckProgress } from '../storage/soundness';
import { goneOnWithout, troubleAfterCheck } from '../storage/trouble';
import type { Book } from './open-book';

/** Looks now; what is found stands in the book. */
export function checkBook(book: Book, tell?: (progress: CheckProgress) => void): RunningCheck {
  const running = checkRecordInWorker(book.name, tell);
  const checked = running.checked.then((found) => {
    if (found.ok) {
      book.lastCheck.value = found.value;
      book.trouble.value = troubleAfterCheck(book.trouble.peek(), found.value, goneOnWithout(book.name));
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
