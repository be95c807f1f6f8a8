/**
 * Brings a backup that was found whole into the record on this device. Photos first: as long as no entry names them they are
 * nothing, and are swept away a day later. Then every entry in one transaction: all of them, or none.
 *
 * The device goes on under a new name wherever entries of its own were brought in, or any behind the end of a chain, which tells
 * other open pages that they must begin anew (`append.ts`). An old name is never taken over from a backup: two phones that both went on from the same last entry would each write the next one, and then no record could hold
 * both. The old chain stays as it is; should the old phone be found again, what it wrote since joins like that of any other.
 */
import type { IDBPTransaction } from 'idb';
import { isWithin } from '../../ledger/chains';
import type { Entry } from '../../ledger/entries/entry';
import { hashesIn } from '../../ledger/photos-named';
import { type Database, type DeviceHead, openDatabase, type RecordName, type Shape } from '../database';
import { headOfDevice } from '../device-heads';
import { failureOf, type StoreFailure } from '../failure';
import type { Without } from '../marker';
import { oneWriter } from '../one-writer';
import type { BackupFile } from './manifest';
import type { Planned, RestorePlan } from './plan-restore';
import { type TellBackup, untold } from './progress';
import type { Backup } from './read-backup';
import { NotTaken } from './refusal';

/** `without`: what the record goes on without from now on, because of the backup. The marker is to be told of it. */
export type Restored =
  | {
      readonly ok: true;
      readonly entries: number;
      readonly files: number;
      readonly without: readonly Without[];
    }
  /** Nothing was changed. */
  | { readonly ok: false; readonly failure: StoreFailure }
  /** Something was written here since the plan: make it anew. Nothing was changed. */
  | { readonly ok: false; readonly failure: { readonly code: 'changed-meanwhile' } }
  /** The file is not there any more, or not as it was when the plan was made. Nothing was changed. */
  | { readonly ok: false; readonly failure: { readonly code: 'file-changed' } }
  /** The plan says that it must not be. */
  | { readonly ok: false; readonly failure: { readonly code: 'conflicts' } };

export type RestoreWanted = {
  readonly record: RecordName;
  /** UTC with milliseconds. */
  readonly now: string;
  /** A fresh UUID of version 7: the name of this device, should it need a new one. */
  readonly newDevice: string;
};

/** Bytes of photos that wait for the disk together. */
const filesAtOnceBytes = 8 * 1024 * 1024;

/** Entries handed to the store before anybody waits for it. */
const entriesAtOnce = 200;

type Kept = { readonly sha256: string; readonly bytes: Uint8Array<ArrayBuffer> };

async function keepFiles(database: Database, files: readonly Kept[], now: string): Promise<void> {
  const transaction = database.transaction('photos', 'readwrite', { durability: 'strict' });
  const puts = files.map(({ sha256: hash, bytes }) => transaction.store.put({ hash, bytes, keptAt: now }));
  await Promise.all([transaction.done, ...puts]);
}

class FileChanged extends Error {}

/** Somebody may have pulled out the card, or written over the file, while the plan was read. */
async function readAgain(backup: Backup, file: BackupFile): Promise<Uint8Array<ArrayBuffer>> {
  try {
    return await backup.file(file);
  } catch (error) {
    if (error instanceof DOMException || error instanceof NotTaken) throw new FileChanged();
    throw error;
  }
}

async function bringFiles(
  database: Database,
  backup: Backup,
  files: readonly BackupFile[],
  now: string,
  tell: TellBackup,
): Promise<void> {
  let [held, heldBytes]: [Kept[], number] = [[], 0];
  for (const [at, file] of files.entries()) {
    held.push({ sha256: file.sha256, bytes: await readAgain(backup, file) });
    heldBytes += file.bytes;
    if (heldBytes < filesAtOnceBytes && at + 1 < files.length) continue;
    await keepFiles(database, held, now);
    [held, heldBytes] = [[], 0];
    tell({ stage: 'writing-files', done: at + 1, of: files.length });
  }
}

/** Those of `hashes` that some entry names by now: another tab may have brought them in as well. */
async function namedAmong(
  entries: { readonly getAll: (range: IDBKeyRange | null, count: number) => Promise<readonly Entry[]> },
  hashes: ReadonlySet<string>,
): Promise<ReadonlySet<string>> {
  const named = new Set<string>();
  let beyond: IDBKeyRange | null = null;
  for (;;) {
    const found: readonly Entry[] = await entries.getAll(beyond, entriesAtOnce);
    const last = found.at(-1);
    if (!last) return named;
    for (const hash of hashesIn(found)) if (hashes.has(hash)) named.add(hash);
    beyond = IDBKeyRange.lowerBound(last.id, true);
  }
}

/** What was brought for nothing makes room again: on a full disk nothing could be written any more. */
async function takeFilesAway(database: Database, { files, filesMended }: Planned): Promise<void> {
  const fresh = new Set(files.flatMap(({ sha256 }) => (filesMended.has(sha256) ? [] : [sha256])));
  try {
    const transaction = database.transaction(['entries', 'photos'], 'readwrite');
    const named = await namedAmong(transaction.objectStore('entries'), fresh);
    const photos = transaction.objectStore('photos');
    const gone = [...fresh].filter((hash) => !named.has(hash)).map((hash) => photos.delete(hash));
    await Promise.all([transaction.done, ...gone]);
  } catch (error) {
    // They stay, and are swept away a day later.
    if (!(error instanceof DOMException)) throw error;
  }
}

type Writing = IDBPTransaction<Shape, ['entries', 'meta', 'openings'], 'readwrite'>;

/** A day: further ahead of this phone one of the two clocks is wrong, and nobody follows it there. */
const mostAheadMs = 24 * 60 * 60 * 1000;

const latest = (a: string | null, b: string | null): string | null => (a === null || (b ?? '') > a ? b : a);

/**
 * From where this device goes on. What it writes sorts behind what was brought in, so that no entry comes before one that it
 * builds on.
 */
async function headAfter(
  transaction: Writing,
  brought: {
    readonly devices: ReadonlySet<string>;
    readonly latest: string | null;
    readonly isBehind: boolean;
  },
  { newDevice, now }: RestoreWanted,
): Promise<DeviceHead> {
  const head = headOfDevice(await transaction.objectStore('meta').get('head'));
  const utmost = new Date(Date.parse(now) + mostAheadMs).toISOString();
  const behind = brought.latest !== null && brought.latest <= utmost ? brought.latest : null;
  const writtenAt = latest(head?.writtenAt ?? null, behind);
  if (!head || brought.isBehind || brought.devices.has(head.device))
    return { device: newDevice, counter: 0, hash: null, writtenAt };
  const index = transaction.objectStore('entries').index('by-device');
  const last = (await index.get([head.device, head.counter])) as Partial<Entry> | undefined;
  const goesOn = head.counter === 0 || last?.hash === head.hash;
  return goesOn ? { ...head, writtenAt } : { device: newDevice, counter: 0, hash: null, writtenAt };
}

async function write(
  transaction: Writing,
  backup: Backup,
  { add, giveWay, isBehind }: Planned,
  wanted: RestoreWanted,
  tell: TellBackup,
): Promise<number> {
  const entries = transaction.objectStore('entries');
  for (const key of giveWay) await entries.delete(key);
  const devices = new Set<string>();
  let [written, newest]: [number, string | null] = [0, null];
  let waiting: Promise<unknown>[] = [];
  for (const entry of backup.entries()) {
    if (!add.has(entry.id)) continue;
    const added = entries.add(entry);
    // Whatever ends the transaction is heard where it ends.
    added.catch(() => undefined);
    waiting.push(added);
    devices.add(entry.device);
    newest = latest(newest, entry.writtenAt);
    written += 1;
    if (waiting.length < entriesAtOnce) continue;
    await Promise.all(waiting);
    waiting = [];
    tell({ stage: 'writing-entries', done: written, of: add.size });
  }
  await Promise.all(waiting);
  const head = await headAfter(transaction, { devices, latest: newest, isBehind }, wanted);
  await transaction.objectStore('meta').put(head, 'head');
  // It knows nothing of what came between: the next start makes another.
  await transaction.objectStore('openings').clear();
  return written;
}

/** What a request says after its transaction was ended by something else. */
const isEcho = (error: unknown): boolean =>
  error instanceof DOMException &&
  ['AbortError', 'InvalidStateError', 'TransactionInactiveError'].includes(error.name);

async function bringEntries(
  database: Database,
  backup: Backup,
  planned: Planned,
  wanted: RestoreWanted,
  tell: TellBackup,
): Promise<number> {
  const transaction = database.transaction(['entries', 'meta', 'openings'], 'readwrite', {
    durability: 'strict',
  });
  // Heard here, so that a transaction that fails on the way is not rejected unheard.
  const over = transaction.done.then(
    () => null,
    (error: unknown) => error,
  );
  try {
    const written = await write(transaction, backup, planned, wanted, tell);
    await transaction.done;
    return written;
  } catch (error) {
    abandon(transaction);
    const ended = await over;
    throw isEcho(error) ? (ended ?? error) : error;
  }
}

function abandon(transaction: Writing): void {
  try {
    transaction.abort();
  } catch (error) {
    // It was over already.
    if (!(error instanceof DOMException)) throw error;
  }
}

/** Other tabs, and this page, hear of it as of any entry. */
function tellTabs(record: RecordName): void {
  if (typeof BroadcastChannel === 'undefined') return;
  const channel = new BroadcastChannel(`leesbook-record-${record}`);
  channel.postMessage('written');
  channel.close();
}

function failureIn(error: unknown): Restored {
  if (error instanceof FileChanged) return { ok: false, failure: { code: 'file-changed' } };
  // An id or a place in a chain was taken since the plan.
  if (error instanceof DOMException && error.name === 'ConstraintError')
    return { ok: false, failure: { code: 'changed-meanwhile' } };
  return { ok: false, failure: failureOf(error) };
}

/** Whoever brings it in has read what it lacks, and decides by it: the same as to go on without it. */
const withoutBy = ({ lacks }: RestorePlan, backup: Backup, at: string): readonly Without[] => [
  ...backup.without,
  ...lacks.gaps
    .filter((gap) => !backup.without.some((one) => one.what === 'missing' && isWithin(gap, one)))
    .map((gap) => ({ what: 'missing', at, ...gap }) as const),
  ...lacks.unfit.map(
    ({ id, hash, device, counter }) => ({ what: 'entry', at, id, hash, device, counter }) as const,
  ),
];

/** @param planned of this very backup and record; what it calls a conflict is not written over */
export async function restore(
  backup: Backup,
  planned: Planned,
  wanted: RestoreWanted,
  tell: TellBackup = untold,
): Promise<Restored> {
  const { plan, files } = planned;
  if (plan.otherRecord || plan.conflicts.length > 0) return { ok: false, failure: { code: 'conflicts' } };
  const opened = await openDatabase(wanted.record, () => undefined, 'make');
  if (!opened.ok) return opened;
  const database = opened.value;
  try {
    await bringFiles(database, backup, files, wanted.now, tell);
    const entries = await oneWriter(`leesbook-write-${wanted.record}`, () =>
      bringEntries(database, backup, planned, wanted, tell),
    );
    tellTabs(wanted.record);
    const without = withoutBy(plan, backup, wanted.now);
    return { ok: true, entries, files: files.length, without };
  } catch (error) {
    await takeFilesAway(database, planned);
    return failureIn(error);
  } finally {
    database.close();
  }
}
