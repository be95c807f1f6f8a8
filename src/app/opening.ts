/** What is at hand of a record at the start: a short one whole, of a long one what its opening holds and what came since. */
import { signal } from '@preact/signals';
import { failed, type StoreResult } from '../storage/failure';
import { noteOpening } from '../storage/opening-note';
import { type AtHand, countOf, longRecord, readAtHand, readWhole, wantsOpening } from '../storage/openings';
import type { OpenRecord } from '../storage/record';
import { ownScript } from '../ui/own-script';
import { moment } from './clock';
import type { Book } from './open-book';
import type { OpeningWanted } from './opening-worker';
import openingWorker from './opening-worker?worker&url';

/** The whole of a long record is being read, which takes a while: entries it has; null while it is not. */
export const readingThrough = signal<number | null>(null);

/** Where it fails the start reads the whole record, which takes longer and tells the same. */
function makeInWorker(name: OpenRecord['name']): Promise<StoreResult<string | null>> {
  if (typeof Worker === 'undefined')
    return Promise.resolve(failed({ code: 'store-failed', name: 'Worker', message: 'none here' }));
  const worker = new Worker(ownScript(openingWorker), { type: 'module' });
  const wanted: OpeningWanted = { name, now: moment() };
  return new Promise<StoreResult<string | null>>((resolve) => {
    worker.addEventListener('message', ({ data }: MessageEvent<StoreResult<string | null>>) => {
      if (data.ok && data.value !== null) noteOpening(name, data.value);
      resolve(data);
    });
    worker.addEventListener('error', ({ message }) =>
      resolve(failed({ code: 'store-failed', name: 'Worker', message })),
    );
    worker.postMessage(wanted);
  }).finally(() => worker.terminate());
}

/** What is at hand, after an opening was made where a long record has none. */
export async function readToBegin(record: OpenRecord): Promise<StoreResult<AtHand>> {
  const near = await readAtHand(record);
  if (!near.ok) return near;
  if (near.value) return { ok: true, value: near.value };
  const entries = await countOf(record.database);
  if (entries < longRecord) return readWhole(record);
  readingThrough.value = entries;
  try {
    await makeInWorker(record.name);
    const again = await readAtHand(record);
    if (!again.ok) return again;
    return again.value ? { ok: true, value: again.value } : await readWhole(record);
  } finally {
    readingThrough.value = null;
  }
}

/** So long the page has for itself before the next opening is made, ms. Status: reasoned. */
const restMs = 20_000;

/** Makes the next opening where the next start would be quicker with it. @returns ends it, begun or not */
export function makeOpeningAfterStart(book: Pick<Book, 'name' | 'state' | 'trouble'>): () => void {
  const timer = setTimeout(() => {
    if (book.trouble.peek().length === 0 && wantsOpening(book.state.peek())) void makeInWorker(book.name);
  }, restMs);
  return () => clearTimeout(timer);
}
