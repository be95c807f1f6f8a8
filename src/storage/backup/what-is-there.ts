/**
 * Everything that lies in the database of a record, whatever state it is in: opened without changing anything, of an older or a
 * newer version too, and read in pieces so that one that cannot be read keeps no other from being read.
 */
import { type IDBPDatabase, openDB } from 'idb';
import type { RecordName, Shape } from '../database';
import { databaseName } from '../database-name';
import { endOf } from '../device-heads';
import { done, failed, failureOf, type StoreResult } from '../failure';
import { photoHashQuick } from '../photos';

type There = IDBPDatabase<Shape>;

/** Entries in memory at once. */
const atOnce = 500;

/** Opens what there is at the version that it has; makes nothing where there is nothing. */
export async function openWhatIsThere(name: RecordName): Promise<StoreResult<There>> {
  if (typeof indexedDB === 'undefined') return failed({ code: 'no-store' });
  let none = false;
  try {
    const database = await openDB<Shape>(databaseName(name), undefined, {
      // Only where there was none: it must not be begun by looking for it.
      upgrade: (_database, _before, _after, transaction) => {
        none = true;
        transaction.done.catch(() => undefined);
        transaction.abort();
      },
      blocking: (_current, _wanted, event) => (event.target as IDBDatabase).close(),
    });
    if (database.objectStoreNames.contains('entries')) return done(database);
    database.close();
    return failed({ code: 'vanished' });
  } catch (error) {
    return failed(none ? { code: 'vanished' } : failureOf(error));
  }
}

/** The last counter of each device, by the index: what is written from now on lies behind it. */
export async function countersNow(database: There): Promise<ReadonlyMap<string, number>> {
  const index = database.transaction('entries').store.index('by-device');
  const counters = new Map<string, number>();
  let first = await index.openKeyCursor();
  while (first) {
    const [device] = first.key;
    const last = await index.openKeyCursor(IDBKeyRange.bound([device, 0], endOf(device)), 'prev');
    if (last) counters.set(device, last.key[1]);
    first = await index.openKeyCursor(IDBKeyRange.lowerBound(endOf(device)));
  }
  return counters;
}

type Raw = { readonly id?: unknown; readonly device?: unknown; readonly counter?: unknown };

/** Nothing but a fault of the store itself is passed over. */
function passOver(error: unknown): void {
  if (!(error instanceof DOMException)) throw error;
}

async function* inOrder(database: There): AsyncGenerator<readonly unknown[]> {
  let beyond: IDBKeyRange | undefined;
  for (;;) {
    const found = await database.getAllFromIndex('entries', 'in-order', beyond, atOnce);
    const last = found.at(-1);
    if (!last) return;
    yield found;
    beyond = IDBKeyRange.lowerBound([last.writtenAt, last.device, last.counter], true);
  }
}

/** `unreadable` counts those that the browser itself could not give. */
export type Told = { unreadable: number };

/** One by one, what the order did not bring: too damaged to stand in it, or behind a place that cannot be read. */
async function* others(database: There, seen: ReadonlySet<unknown>, told: Told): AsyncGenerator<unknown> {
  for (const key of await database.getAllKeys('entries')) {
    if (seen.has(key)) continue;
    try {
      yield await database.get('entries', key);
    } catch (error) {
      passOver(error);
      told.unreadable += 1;
    }
  }
}

/** Every entry that can be read, in the order of the record as far as they have one. Nothing about them is sure. */
export async function* entriesThere(database: There, told: Told): AsyncGenerator<readonly unknown[]> {
  const seen = new Set<unknown>();
  let complete = true;
  try {
    for await (const found of inOrder(database)) {
      for (const { id } of found as readonly Raw[]) seen.add(id);
      yield found;
    }
  } catch (error) {
    passOver(error);
    complete = false;
  }
  if (complete && (await database.count('entries')) <= seen.size) return;
  for await (const raw of others(database, seen, told)) yield [raw];
}

export async function fileHashesThere(database: There): Promise<ReadonlySet<string>> {
  try {
    return new Set(database.objectStoreNames.contains('photos') ? await database.getAllKeys('photos') : []);
  } catch (error) {
    passOver(error);
    return new Set();
  }
}

/** The bytes that a hash is of; null where they are damaged or cannot be read. */
export async function fileThere(database: There, hash: string): Promise<Uint8Array<ArrayBuffer> | null> {
  try {
    const bytes: unknown = (await database.get('photos', hash))?.bytes;
    if (!(bytes instanceof Uint8Array)) return null;
    const copy = new Uint8Array(bytes);
    return (await photoHashQuick(copy)) === hash ? copy : null;
  } catch (error) {
    passOver(error);
    return null;
  }
}
