/** The ends of the chains as they lie on the disk, found through an index: the cost does not grow with the record. */
import type { Head } from '../ledger/verify';
import type { Database, DeviceHead } from './database';

/** Behind every counter of a device: an array sorts after every number and every text in a key. */
export const endOf = (device: string): [string, number] => [device, []] as unknown as [string, number];

/** The last entry of a chain; `writtenAt` is null where it says none. */
export type HeadOnDisk = Head & { readonly writtenAt: string | null };

/** What an entry states of itself, as far as it can be told. */
function stated(raw: unknown): HeadOnDisk | null {
  const { device, counter, hash, writtenAt } = (raw ?? {}) as Partial<HeadOnDisk>;
  return typeof device === 'string' && typeof counter === 'number' && typeof hash === 'string'
    ? { device, counter, hash, writtenAt: typeof writtenAt === 'string' ? writtenAt : null }
    : null;
}

/** Last entry of each device, whatever lies there. */
export async function lastEntries(database: Database): Promise<readonly unknown[]> {
  const index = database.transaction('entries').store.index('by-device');
  const lasts: unknown[] = [];
  let first = await index.openKeyCursor();
  while (first) {
    const [device] = first.key;
    const last = await index.openCursor(IDBKeyRange.bound([device, 0], endOf(device)), 'prev');
    if (last) lasts.push(last.value);
    first = await index.openKeyCursor(IDBKeyRange.lowerBound(endOf(device)));
  }
  return lasts;
}

/** Last entries as the ends of their chains; a device whose last entry does not state its hash is left out. */
export const headsOf = (lasts: readonly unknown[]): readonly HeadOnDisk[] =>
  lasts.flatMap((last) => stated(last) ?? []);

export const headsOnDisk = async (database: Database): Promise<readonly HeadOnDisk[]> =>
  headsOf(await lastEntries(database));

/** Those of `heads` that are not on the disk as they are stated. */
export async function headsMissing(database: Database, heads: readonly Head[]): Promise<readonly Head[]> {
  const index = database.transaction('entries').store.index('by-device');
  const found = await Promise.all(heads.map(async (head) => index.get([head.device, head.counter])));
  return heads.filter((head, i) => stated(found[i])?.hash !== head.hash);
}

/** What a store holds in place of a head; undefined where it is none at all. */
export function headOfDevice(kept: unknown): DeviceHead | undefined {
  const { device, counter, hash, writtenAt } = (kept ?? {}) as Partial<DeviceHead>;
  const isTextOrNull = (value: unknown): boolean => value === null || typeof value === 'string';
  const isHead =
    typeof device === 'string' && Number.isInteger(counter) && isTextOrNull(hash) && isTextOrNull(writtenAt);
  return isHead ? (kept as DeviceHead) : undefined;
}

/** Whether this device can go on from where its head says; null when it can. */
export async function wrongWithHead(database: Database): Promise<'missing' | 'not-its-last-entry' | null> {
  const transaction = database.transaction(['entries', 'meta']);
  const head = headOfDevice(await transaction.objectStore('meta').get('head'));
  const entries = transaction.objectStore('entries');
  const index = entries.index('by-device');
  if (!head) return (await index.openKeyCursor()) ? 'missing' : null;
  const { device, counter, hash, writtenAt } = head;
  const last = await index.openCursor(IDBKeyRange.bound([device, 0], endOf(device)), 'prev');
  const found = stated(last?.value);
  // What it writes next would be dated by it: nothing on the disk says so late an hour.
  const [latest] = (await entries.index('in-order').openKeyCursor(null, 'prev'))?.key ?? [];
  const isAhead = writtenAt !== null && latest !== undefined && writtenAt > latest;
  const isEnd = last ? found?.counter === counter && found.hash === hash : counter === 0;
  return isEnd && !isAhead ? null : 'not-its-last-entry';
}
