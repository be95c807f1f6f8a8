/**
 * What every start reads first, read while the rest of the app still comes: it imports little, and what it gives is gone on
 * from only where it still holds (`openings.ts`).
 */
import type { StoredOpening } from './openings';

/** An opening as it was read: JSON of which nothing is known but that its bytes come to `sha256`. */
export type OpeningRead = Pick<StoredOpening, 'sha256' | 'heads'> & { readonly json: unknown };

const isHead = (one: unknown): boolean => {
  const { device, counter, hash } = (one ?? {}) as Partial<StoredOpening['heads'][number]>;
  return typeof device === 'string' && Number.isInteger(counter) && typeof hash === 'string';
};

/** Whatever lies there must not keep the record from being opened. */
function isStored(kept: unknown): kept is StoredOpening {
  const { bytes, sha256, heads } = (kept ?? {}) as Partial<StoredOpening>;
  return (
    bytes instanceof Uint8Array && typeof sha256 === 'string' && Array.isArray(heads) && heads.every(isHead)
  );
}

/** @param hash of bytes, in hexadecimal digits. @returns null where it is no opening, the bytes are not what was kept, or no JSON */
export async function openingRead(
  kept: unknown,
  hash: (bytes: Uint8Array<ArrayBuffer>) => Promise<string>,
): Promise<OpeningRead | null> {
  if (!isStored(kept)) return null;
  const { bytes, sha256, heads } = kept;
  if ((await hash(bytes)) !== sha256) return null;
  try {
    return { json: JSON.parse(new TextDecoder().decode(bytes)), sha256, heads };
  } catch (error) {
    if (error instanceof SyntaxError) return null;
    throw error;
  }
}

/** @throws where the page is not served as it should be: there is no `subtle` then */
export async function quickHash(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

let early: { readonly database: string; readonly read: Promise<OpeningRead | null> } | null = null;

const answered = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

async function read(database: string): Promise<OpeningRead | null> {
  const opening = indexedDB.open(database);
  // There is none: none is made.
  opening.onupgradeneeded = () => opening.transaction?.abort();
  const opened = await answered(opening);
  opened.onversionchange = () => opened.close();
  try {
    const stored = await answered(opened.transaction('openings').objectStore('openings').get('last'));
    return await openingRead(stored, quickHash);
  } finally {
    opened.close();
  }
}

/** Begins to read the opening of a record that may be there. Where that fails it is read again when it is wanted. */
export function readEarly(database: string): void {
  early = { database, read: read(database).catch(() => null) };
}

/** What was read early of this database: null where that is nothing. Handed out once. */
export async function takeEarly(database: string): Promise<OpeningRead | null> {
  const taken = early;
  early = null;
  return taken?.database === database ? taken.read : null;
}
