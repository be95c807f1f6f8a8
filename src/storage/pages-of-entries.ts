/**
 * Reading a record a page at a time: a long one is never in memory as a whole. Each page brings what corrected or withdrew
 * its entries, so that it can be shown as it stands.
 */
import type { Entry } from '../ledger/entries/entry';
import type { Database } from './database';
import { done, failed, failureOf, type StoreResult } from './failure';
import { type Corrupted, type OpenRecord, reading } from './record';

/** Where an entry stands in the order of the record. */
export type Place = readonly [writtenAt: string, device: string, counter: number];

/** `changes` are what corrected or withdrew an entry of the page, or one of these; `next` goes on behind it, null at the end. */
export type PageOfEntries = {
  readonly entries: readonly Entry[];
  readonly changes: readonly Entry[];
  readonly corrupted: readonly Corrupted[];
  readonly next: Place | null;
};

/** One entry with what became of it; `entry` is null where none has this id. */
export type EntryFound = { readonly entry: Entry | null; readonly changes: readonly Entry[] };

export type HowFar = { readonly done: number; readonly of: number };

/** What looking through the record needs: says of each entry, the oldest first, whether it is wanted. */
export type Looking = {
  readonly takes: (entry: Entry) => boolean;
  /** Where entries are wanted for others that are: ids of those that nothing spoke for when they were passed. */
  readonly missed?: () => readonly string[];
  readonly tell: (howFar: HowFar) => void;
  readonly signal: AbortSignal;
};

/** So many entries are in memory at once: few enough that a page stays at hand while it reads. */
const atOnce = 200;

const placeOf = ({ writtenAt, device, counter }: Entry): Place => [writtenAt, device, counter];

/** What corrects or withdraws these, what does so to that, and so on. */
async function changesOf(database: Database, ids: readonly string[]): Promise<readonly Entry[]> {
  const found = new Map<string, unknown>();
  let asked = ids;
  while (asked.length > 0) {
    const { store } = database.transaction('entries');
    const all = await Promise.all(
      asked.flatMap((id) => [store.index('by-corrected').getAll(id), store.index('by-withdrawn').getAll(id)]),
    );
    const fresh = all.flat().filter(({ id }) => !found.has(id));
    for (const entry of fresh) found.set(entry.id, entry);
    asked = fresh.map(({ id }) => id);
  }
  return reading([...found.values()]).entries;
}

/**
 * So many entries before a place, the newest first; from the end of the record where `before` is null. What cannot be read
 * counts among them.
 */
export async function pageOfEntries(
  { database }: OpenRecord,
  before: Place | null,
  many: number,
): Promise<StoreResult<PageOfEntries>> {
  try {
    const index = database.transaction('entries').store.index('in-order');
    const range = before === null ? null : IDBKeyRange.upperBound(before, true);
    const raw: unknown[] = [];
    let last: Place | null = null;
    let cursor = await index.openCursor(range, 'prev');
    for (; cursor && raw.length < many; cursor = await cursor.continue()) {
      raw.push(cursor.value);
      last = cursor.key;
    }
    const next = cursor ? last : null;
    const { entries, corrupted } = reading(raw);
    const changes = await changesOf(
      database,
      entries.map(({ id }) => id),
    );
    return done({ entries: entries.toReversed(), changes, corrupted, next });
  } catch (error) {
    return failed(failureOf(error));
  }
}

export async function findEntry({ database }: OpenRecord, id: string): Promise<StoreResult<EntryFound>> {
  try {
    const raw = await database.get('entries', id);
    const [entry = null] = raw === undefined ? [] : reading([raw]).entries;
    return done({ entry, changes: entry ? await changesOf(database, [id]) : [] });
  } catch (error) {
    return failed(failureOf(error));
  }
}

/** How many entries lie on the disk, read or not. */
export async function countEntries({ database }: OpenRecord): Promise<StoreResult<number>> {
  try {
    return done(await database.count('entries'));
  } catch (error) {
    return failed(failureOf(error));
  }
}

/** What cannot be read is about nothing: only where it can be read may `takes` fail. */
function wanted(raw: unknown, takes: Looking['takes']): boolean {
  try {
    return takes(raw as Entry);
  } catch (cause) {
    if (reading([raw]).corrupted.length > 0) return false;
    throw cause;
  }
}

async function byIds(database: Database, ids: readonly string[]): Promise<readonly Entry[]> {
  const { store } = database.transaction('entries');
  const raw = await Promise.all(ids.map((id) => store.get(id)));
  return reading(raw.filter((one) => one !== undefined)).entries;
}

/**
 * Goes through the whole record from its beginning and hands over what was wanted, in order. Entries of several devices
 * may name what stands behind them, so it then goes through a second time.
 * @returns what it had found so far when it was stopped by the signal
 */
export async function lookThrough(
  { database }: OpenRecord,
  { takes, missed, tell, signal }: Looking,
): Promise<StoreResult<Pick<PageOfEntries, 'entries' | 'changes'>>> {
  try {
    const of = await database.count('entries');
    const found = new Map<string, Entry>();
    const devices = new Set<string>();
    let rounds = 1;
    let passed = 0;
    for (let round = 0; round < rounds; round += 1) {
      let after: IDBKeyRange | null = null;
      while (!signal.aborted) {
        const raw: readonly unknown[] = await database.getAllFromIndex('entries', 'in-order', after, atOnce);
        const last = raw.at(-1) as Entry | undefined;
        if (!last) break;
        after = IDBKeyRange.lowerBound(placeOf(last), true);
        for (const entry of raw as readonly Entry[]) {
          devices.add(entry.device);
          if (wanted(entry, takes)) found.set(entry.id, entry);
        }
        passed += raw.length;
        if (devices.size > 1 && missed) rounds = 2;
        tell({ done: Math.min(passed, of * rounds), of: of * rounds });
      }
    }
    for (const entry of await byIds(database, missed?.() ?? [])) found.set(entry.id, entry);
    const { entries } = reading([...found.values()]);
    const ids = entries.map(({ id }) => id);
    const changes = await changesOf(database, ids);
    return done({ entries, changes });
  } catch (error) {
    return failed(failureOf(error));
  }
}

/** The whole record as screens read it. */
export type WholeRecord = {
  /** This device, as its entries name it. */
  readonly device: string;
  readonly count: () => Promise<StoreResult<number>>;
  readonly page: (before: Place | null, many: number) => Promise<StoreResult<PageOfEntries>>;
  readonly entry: (id: string) => Promise<StoreResult<EntryFound>>;
  readonly lookThrough: (
    looking: Looking,
  ) => Promise<StoreResult<Pick<PageOfEntries, 'entries' | 'changes'>>>;
};

export const wholeRecord = (record: OpenRecord): WholeRecord => ({
  device: record.device,
  count: () => countEntries(record),
  page: (before, many) => pageOfEntries(record, before, many),
  entry: (id) => findEntry(record, id),
  lookThrough: (looking) => lookThrough(record, looking),
});
