/** The ends of the chains as they lie on the disk, found through an index: the cost does not grow with the record. */
import type { Head } from '../ledger/verify';
import type { Database } from './database';

/** An array sorts after every number and every text in a key. */
const endOf = (device: string): [string, number] => [device, []] as unknown as [string, number];

/** The last entry of a chain; `writtenAt` is null where it says none. */
export type HeadOnDisk = Head & { readonly writtenAt: string | null };

/** What an entry states of itself, as far as it can be told. */
function stated(raw: unknown): HeadOnDisk | null {
  const { device, counter, hash, writtenAt } = (raw ?? {}) as Partial<HeadOnDisk>;
  return typeof device === 'string' && typeof counter === 'number' && typeof hash === 'string'
    ? { device, counter, hash, writtenAt: typeof writtenAt === 'string' ? writtenAt : null }
    : null;
}

/** Last entry of each device; a device whose last entry does not state its hash is left out. */
export async function headsOnDisk(database: Database): Promise<readonly HeadOnDisk[]> {
  const index = database.transaction('entries').store.index('by-device');
  const heads: HeadOnDisk[] = [];
  let first = await index.openKeyCursor();
  while (first) {
    const [device] = first.key;
    const last = await index.openCursor(IDBKeyRange.bound([device, 0], endOf(device)), 'prev');
    const head = stated(last?.value);
    if (head) heads.push(head);
    first = await index.openKeyCursor(IDBKeyRange.lowerBound(endOf(device)));
  }
  return heads;
}

/** Those of `heads` that are not on the disk as they are stated. */
export async function headsMissing(database: Database, heads: readonly Head[]): Promise<readonly Head[]> {
  const index = database.transaction('entries').store.index('by-device');
  const missing: Head[] = [];
  for (const head of heads) {
    const found = stated(await index.get([head.device, head.counter]));
    if (found?.hash !== head.hash) missing.push(head);
  }
  return missing;
}

/** Whether this device can go on from where its head says; null when it can. */
export async function wrongWithHead(database: Database): Promise<'missing' | 'not-its-last-entry' | null> {
  const transaction = database.transaction(['entries', 'meta']);
  const head = await transaction.objectStore('meta').get('head');
  const index = transaction.objectStore('entries').index('by-device');
  if (!head) return (await index.openKeyCursor()) ? 'missing' : null;
  const { device, counter, hash } = head;
  const last = await index.openCursor(IDBKeyRange.bound([device, 0], endOf(device)), 'prev');
  const found = stated(last?.value);
  if (!last) return counter === 0 ? null : 'not-its-last-entry';
  return found?.counter === counter && found.hash === hash ? null : 'not-its-last-entry';
}
