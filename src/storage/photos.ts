/** Photos, and papers that came as a file, beside the entries, each by the SHA-256 of its bytes: keeping, reading, clearing away those of nobody. */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import { subDays } from 'date-fns';
import type { Entry } from '../ledger/entries/entry';
import { hashesIn } from '../ledger/photos-named';
import type { Database } from './database';
import { allDrafts } from './drafts';
import { done, failed, failureOf, type StoreResult } from './failure';
import { whileWriting } from './one-writer';
import { keptType } from './picture-type';
import type { OpenRecord } from './record';

/** A photo as it lies in the store. Its bytes, not a Blob: some browsers lose Blobs that they keep. */
export type StoredPhoto = {
  readonly hash: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
  /** UTC with milliseconds; when it was kept last. Gone once it was seen that an entry names it: then it stays. */
  readonly keptAt?: string;
};

/** `damaged`: the bytes are not those that the hash is of, so nobody can say what was in the picture. */
export type PhotoRead =
  | {
      readonly state: 'there';
      readonly bytes: Uint8Array<ArrayBuffer>;
      readonly type: NonNullable<ReturnType<typeof keptType>>;
    }
  | { readonly state: 'missing' }
  | { readonly state: 'damaged' };

export const photoHash = (bytes: Uint8Array): string => bytesToHex(sha256(bytes));

/** The same by the browser's own code, some five times as quick, where there is one: only behind https or on this machine. */
export async function photoHashQuick(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const subtle = globalThis.crypto?.subtle;
  return subtle ? bytesToHex(new Uint8Array(await subtle.digest('SHA-256', bytes))) : photoHash(bytes);
}

/**
 * Keeps a photo; answers with its hash once it is on the disk. Kept again it is the same one photo, new where it was
 * damaged, and young again.
 */
export const keepPhoto = (
  record: OpenRecord,
  bytes: Uint8Array<ArrayBuffer>,
  now: string,
): Promise<StoreResult<string>> => whileWriting(() => keepNow(record, bytes, now));

async function keepNow(
  { database }: OpenRecord,
  bytes: Uint8Array<ArrayBuffer>,
  now: string,
): Promise<StoreResult<string>> {
  const hash = photoHash(bytes);
  try {
    const transaction = database.transaction('photos', 'readwrite', { durability: 'strict' });
    // Both at once: a promise left behind by a request that fails would be rejected unheard.
    await Promise.all([transaction.done, transaction.store.put({ hash, bytes, keptAt: now })]);
    return done(hash);
  } catch (error) {
    return failed(failureOf(error));
  }
}

/** Reads a photo and checks that it is the one its hash is of. */
export async function readPhoto({ database }: OpenRecord, hash: string): Promise<StoreResult<PhotoRead>> {
  try {
    const stored: Partial<StoredPhoto> | undefined = await database.get('photos', hash);
    if (!stored) return done({ state: 'missing' });
    const { bytes } = stored;
    if (!(bytes instanceof Uint8Array) || photoHash(bytes) !== hash) return done({ state: 'damaged' });
    const type = keptType(bytes);
    return done(type === null ? { state: 'damaged' } : { state: 'there', bytes, type });
  } catch (error) {
    return failed(failureOf(error));
  }
}

/** Those of `hashes` that are not in the store, each once. */
export async function missingPhotos(
  { database }: OpenRecord,
  hashes: readonly string[],
): Promise<StoreResult<readonly string[]>> {
  try {
    const kept = new Set(await database.getAllKeys('photos'));
    return done([...new Set(hashes)].filter((hash) => !kept.has(hash)));
  } catch (error) {
    return failed(failureOf(error));
  }
}

/** Days that a photo stays which nothing names: somebody may still be filling in the form. */
const graceDays = 1;

/** So many entries are looked through at a time. */
const atOnce = 500;

/** Those of `wanted` that any entry on the disk names, also one that cannot be read. */
async function namedOnDisk(database: Database, wanted: readonly string[]): Promise<ReadonlySet<string>> {
  const named = new Set<string>();
  let after: IDBKeyRange | null = null;
  while (named.size < wanted.length) {
    const chunk: readonly Entry[] = await database.getAll('entries', after, atOnce);
    const last = chunk.at(-1);
    if (!last) return named;
    after = IDBKeyRange.lowerBound(last.id, true);
    const hashes = hashesIn(chunk);
    for (const hash of wanted) if (hashes.has(hash)) named.add(hash);
  }
  return named;
}

/** They are not asked for again. */
async function letStay(database: Database, hashes: readonly string[]): Promise<void> {
  if (hashes.length === 0) return;
  const transaction = database.transaction('photos', 'readwrite');
  for (const hash of hashes) {
    const photo = await transaction.store.get(hash);
    if (photo) await transaction.store.put({ hash, bytes: photo.bytes });
  }
  await transaction.done;
}

/** Unless anything was written since they were looked for, or one was kept again. */
async function clearAway(
  database: Database,
  orphans: readonly string[],
  old: IDBKeyRange,
  entries: number,
): Promise<number> {
  const transaction = database.transaction(['entries', 'photos'], 'readwrite');
  const photos = transaction.objectStore('photos');
  if ((await transaction.objectStore('entries').count()) !== entries) return 0;
  const kept = new Set(await photos.index('by-kept').getAllKeys(old));
  const gone = orphans.filter((hash) => kept.has(hash));
  await Promise.all([...gone.map((hash) => photos.delete(hash)), transaction.done]);
  return gone.length;
}

/**
 * Clears away photos that no draft and no entry names, a day after they were kept: their form was given up.
 * @param known entries that the caller has already; the disk is looked through only for photos that none of them names
 * @returns how many went
 */
export async function sweepPhotos(
  { name, database }: Pick<OpenRecord, 'name' | 'database'>,
  known: readonly Entry[],
  now: string,
): Promise<StoreResult<number>> {
  const old = IDBKeyRange.upperBound(subDays(new Date(now), graceDays).toISOString());
  try {
    // Drafts before entries: a form is written into the record first, and its draft dropped after that.
    const drafts = allDrafts(name);
    const kept = drafts === null ? [] : await database.getAllKeysFromIndex('photos', 'by-kept', old);
    if (kept.length === 0) return done(0);
    const inDrafts = hashesIn(drafts);
    const byKnown = hashesIn(known);
    const asked = kept.filter((hash) => !inDrafts.has(hash) && !byKnown.has(hash));
    const entries = await database.count('entries');
    const named = asked.length === 0 ? asked : [...(await namedOnDisk(database, asked))];
    await letStay(database, [...kept.filter((hash) => byKnown.has(hash)), ...named]);
    const orphans = asked.filter((hash) => !named.includes(hash));
    return done(orphans.length === 0 ? 0 : await clearAway(database, orphans, old, entries));
  } catch (error) {
    return failed(failureOf(error));
  }
}
