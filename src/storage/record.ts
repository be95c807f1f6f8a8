/** A record on this device: opening it, reading it, and adding to it. Entries are only ever added. */
import { type Entry, Entry as EntrySchema } from '../ledger/entries/entry';
import { compareEntries } from '../ledger/order';
import { type Database, type DeviceHead, openDatabase, type RecordName } from './database';
import { headOfDevice } from './device-heads';
import { done, failed, failureOf, type StoreResult } from './failure';
import { readMarker, tellsOfEntries } from './marker';

/** An open record. `seen` is the highest counter handed to the caller, by device. */
export type OpenRecord = {
  readonly name: RecordName;
  readonly device: string;
  readonly database: Database;
  readonly seen: Map<string, number>;
  /** Tells other tabs of new entries; null where the browser has none. */
  readonly channel: BroadcastChannel | null;
  readonly close: () => void;
};

/**
 * What the shell supplies: `newId` gives a fresh UUID of version 7; `onClosed` hears that another tab shut the record,
 * `onFree` that none stands in the way any more, where the answer was `blocked`.
 */
export type ToOpen = {
  readonly newId: () => string;
  readonly onClosed: () => void;
  readonly onFree?: () => void;
};

/** An entry that does not fit its schema: kept as it is, left out of the state, and reported. */
export type Corrupted = {
  readonly id: string | null;
  readonly raw: unknown;
  readonly issues: readonly { readonly path: string; readonly message: string }[];
};

/** Entries in order, and what could not be read. */
export type Reading = { readonly entries: readonly Entry[]; readonly corrupted: readonly Corrupted[] };

/** A head is laid only where nothing was ever written: over what is left of a record nothing is begun unasked. */
async function headOf(database: Database, newId: () => string, isKnown: boolean): Promise<DeviceHead> {
  const transaction = database.transaction(['meta', 'entries'], 'readwrite', { durability: 'strict' });
  const meta = transaction.objectStore('meta');
  const found = headOfDevice(await meta.get('head'));
  const isFirst = !found && !isKnown && !(await transaction.objectStore('entries').openKeyCursor());
  const head = found ?? { device: newId(), counter: 0, hash: null, writtenAt: null };
  if (isFirst) await meta.put(head, 'head');
  await transaction.done;
  return head;
}

/**
 * Opens a record, or makes it on the first start with a name for this device. Where the marker tells of entries none is
 * made: the answer is `vanished` when it is not there, and what is left of it opens without a head (`trouble.ts`).
 */
export async function openRecord(name: RecordName, opening: ToOpen): Promise<StoreResult<OpenRecord>> {
  const channel =
    typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel(`leesbook-record-${name}`);
  const isKnown = tellsOfEntries(readMarker(name));
  const onClosed = (): void => {
    channel?.close();
    opening.onClosed();
  };
  const opened = await openDatabase(name, onClosed, isKnown ? 'only-if-there' : 'make', opening.onFree);
  if (!opened.ok) {
    channel?.close();
    return opened;
  }
  const database = opened.value;
  const close = (): void => {
    channel?.close();
    database.close();
  };
  try {
    const { device } = await headOf(database, opening.newId, isKnown);
    return done({ name, device, database, seen: new Map(), channel, close });
  } catch (error) {
    close();
    return failed(failureOf(error));
  }
}

/** Reads what a store gave: entries in order, and what does not fit its schema. */
export function reading(stored: readonly unknown[]): Reading {
  const entries: Entry[] = [];
  const corrupted: Corrupted[] = [];
  for (const raw of stored) {
    const read = EntrySchema.safeParse(raw);
    // The stored object itself, not the schema's copy: its hash is over exactly this.
    if (read.success) entries.push(raw as Entry);
    else {
      const id = (raw as { readonly id?: unknown }).id;
      const issues = read.error.issues.map(({ path, message }) => ({ path: path.join('.'), message }));
      corrupted.push({ id: typeof id === 'string' ? id : null, raw, issues });
    }
  }
  return { entries: entries.sort(compareEntries), corrupted };
}

/** Marks entries as handed to the caller. */
export function markSeen({ seen }: OpenRecord, entries: readonly Entry[]): void {
  for (const { device, counter } of entries) seen.set(device, Math.max(seen.get(device) ?? 0, counter));
}

/** The whole record. */
export async function readAll(record: OpenRecord): Promise<StoreResult<Reading>> {
  try {
    const all = reading(await record.database.getAll('entries'));
    markSeen(record, all.entries);
    return done(all);
  } catch (error) {
    return failed(failureOf(error));
  }
}
