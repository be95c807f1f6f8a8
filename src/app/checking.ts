/**
 * Everything on the disk is looked at after a start, away from the page, and whenever somebody asks. That takes long for a long
 * record, which is looked at once a day.
 */
import { differenceInHours } from 'date-fns';
import { entriesIn } from '../ledger/opening';
import { checkRecordInWorker, type RunningCheck } from '../screens/keeping/check-record';
import { openDatabase } from '../storage/database';
import { dropOpening, longRecord } from '../storage/openings';
import type { CheckProgress } from '../storage/soundness';
import { goneOnWithout, troubleAfterCheck } from '../storage/trouble';
import { moment } from './clock';
import type { Book } from './open-book';
import { forget, recall, remember } from './preferences';

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
      // What is wrong is found anew at each start, until it is mended or somebody goes on without it.
      if (trouble.length === 0) remember(checkedAt(book), moment());
      else {
        forget(checkedAt(book));
        void forgetOpening(book.name);
      }
      book.trouble.value = trouble;
    }
    return found;
  });
  return { checked, cancel: running.cancel };
}

const checkedAt = ({ name }: Book): string => `checked:${name}`;

const isCheckedToday = (book: Book): boolean => {
  const last = recall(checkedAt(book));
  return last !== null && Math.abs(differenceInHours(moment(), last)) < 24;
};

/** So long the page has for itself after the start, ms. Status: reasoned; the target for a start is half of it. */
const restMs = 3000;

/** @returns ends it, begun or not */
export function checkAfterStart(book: Book): () => void {
  if (typeof Worker === 'undefined' || book.trouble.peek().some(({ code }) => code === 'gone'))
    return () => undefined;
  if (entriesIn(book.state.peek()) >= longRecord && isCheckedToday(book)) return () => undefined;
  let running: RunningCheck | undefined;
  const timer = setTimeout(() => {
    running = checkBook(book);
  }, restMs);
  return () => {
    clearTimeout(timer);
    running?.cancel();
  };
}
