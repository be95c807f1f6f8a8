/** The shape of a record in IndexedDB, and how one is opened and removed. */
import {
  type DBSchema,
  deleteDB,
  type IDBPDatabase,
  type IDBPTransaction,
  openDB,
  type StoreNames,
} from 'idb';
import type { Entry } from '../ledger/entries/entry';
import { databaseName } from './database-name';
import { forgetDrafts } from './drafts';
import { done, failed, failureOf, type StoreResult } from './failure';
import { forgetMarker } from './marker';
import { forgetOpeningNote } from './opening-note';
import type { StoredOpening } from './openings';
import type { StoredPhoto } from './photos';

/** `demo` is a record to try things in; the two share nothing. */
export type RecordName = 'real' | 'demo';

/** This device in the record, with the end of its chain; `counter` 0 and `hash` null before its first entry. */
export type DeviceHead = {
  readonly device: string;
  readonly counter: number;
  readonly hash: string | null;
  readonly writtenAt: string | null;
};

export interface Shape extends DBSchema {
  entries: {
    key: string;
    value: Entry;
    indexes: {
      'in-order': [string, string, number];
      'by-device': [string, number];
      /** Only corrections are in it, by the entry that they correct, and only withdrawals in the other. */
      'by-corrected': string;
      'by-withdrawn': string;
    };
  };
  meta: { key: 'head'; value: DeviceHead };
  photos: { key: string; value: StoredPhoto; indexes: { 'by-kept': string } };
  /** Made from the entries, and thrown away when in doubt. */
  openings: { key: 'last'; value: StoredOpening };
}

export type Database = IDBPDatabase<Shape>;
type Upgrading = IDBPTransaction<Shape, StoreNames<Shape>[], 'versionchange'>;

const version = 4;

function lay(db: Database, before: number, upgrading: Upgrading): void {
  if (before < 1) {
    const entries = db.createObjectStore('entries', { keyPath: 'id' });
    entries.createIndex('in-order', ['writtenAt', 'device', 'counter']);
    // Unique, so that no two tabs can ever give the same counter twice.
    entries.createIndex('by-device', ['device', 'counter'], { unique: true });
    db.createObjectStore('meta');
  }
  if (before < 2) db.createObjectStore('photos', { keyPath: 'hash' }).createIndex('by-kept', 'keptAt');
  if (before < 3) {
    const entries = upgrading.objectStore('entries');
    entries.createIndex('by-corrected', 'body.corrects');
    entries.createIndex('by-withdrawn', 'body.withdraws');
  }
  if (before < 4) db.createObjectStore('openings');
}

/**
 * Opens the database. When another tab stands in the way the answer is `blocked` at once, not a wait without end.
 * @param onClosed called when the connection was shut from outside
 * @param make `only-if-there` answers `vanished` where there is none, and makes none
 * @param onFree called when the answer was `blocked` and what stood in the way is gone: it can be opened now
 */
export function openDatabase(
  name: RecordName,
  onClosed: () => void,
  make: 'make' | 'only-if-there' = 'make',
  onFree: () => void = () => undefined,
): Promise<StoreResult<Database>> {
  if (typeof indexedDB === 'undefined') return Promise.resolve(failed({ code: 'no-store' }));
  return new Promise((resolve, reject) => {
    let answered = false;
    let vanished = false;
    const answer = (result: StoreResult<Database>): void => {
      if (answered) {
        // Opened after all, though the answer was given: nobody uses this connection.
        if (result.ok) result.value.close();
        onFree();
        return;
      }
      answered = true;
      resolve(result);
    };
    openDB<Shape>(databaseName(name), version, {
      upgrade: (db, before, _version, transaction) => {
        // Also one without any store: somebody opened it by its name when it was gone already.
        const isNew = before === 0 || db.objectStoreNames.length === 0;
        vanished = isNew && make === 'only-if-there';
        // That it failed is told by opening itself.
        transaction.done.catch(() => undefined);
        // Ended before anything is laid, it leaves no database behind.
        if (vanished) transaction.abort();
        else lay(db, isNew ? 0 : before, transaction);
      },
      blocked: () => answer(failed({ code: 'blocked' })),
      blocking: (_current, _wanted, event) => {
        (event.target as IDBDatabase).close();
        onClosed();
      },
      terminated: onClosed,
    })
      .then(
        (db) => answer(done(db)),
        (error: unknown) => answer(failed(vanished ? { code: 'vanished' } : failureOf(error))),
      )
      .catch(reject);
  });
}

/**
 * Removes a record, its drafts and its marker without a trace. Other tabs that have it open are asked to let go; when one does not,
 * the answer is `blocked`, and the record goes as soon as that tab is closed.
 */
export function deleteRecord(name: RecordName): Promise<StoreResult<null>> {
  forgetDrafts(name);
  forgetMarker(name);
  forgetOpeningNote(name);
  return new Promise((resolve, reject) => {
    deleteDB(databaseName(name), { blocked: () => resolve(failed({ code: 'blocked' })) })
      .then(
        () => resolve(done(null)),
        (error: unknown) => resolve(failed(failureOf(error))),
      )
      .catch(reject);
  });
}
