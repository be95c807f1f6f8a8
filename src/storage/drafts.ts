/**
 * Half-filled forms, kept at once in localStorage so that they survive a reload, a call or an update. A draft is a
 * convenience: where it cannot be kept the form goes on without, and the caller is told.
 */
import type * as z from 'zod/mini';
import type { RecordName } from './database';

export type DraftKept =
  | { readonly ok: true }
  | { readonly ok: false; readonly failure: { readonly code: 'storage-full' | 'storage-blocked' } };

const prefix = (record: RecordName): string => `leesbook:draft:${record}:`;
const keyOf = (record: RecordName, form: string): string => `${prefix(record)}${form}`;

/** Runs `use` on localStorage, or gives the failure: even naming it throws where it is blocked. */
function withStorage<T>(use: (storage: Storage) => T): T | Extract<DraftKept, { ok: false }> {
  try {
    return use(globalThis.localStorage);
  } catch (error) {
    const full = error instanceof DOMException && error.name === 'QuotaExceededError';
    const blocked =
      error instanceof DOMException || error instanceof TypeError || error instanceof ReferenceError;
    if (!blocked) throw error;
    return { ok: false, failure: { code: full ? 'storage-full' : 'storage-blocked' } };
  }
}

/** Keeps what has been filled in so far. `value` must be what JSON can say. */
export function keepDraft(record: RecordName, form: string, value: unknown): DraftKept {
  const text = JSON.stringify(value);
  return withStorage((storage): DraftKept => {
    storage.setItem(keyOf(record, form), text);
    return { ok: true };
  });
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    if (error instanceof SyntaxError) return undefined;
    throw error;
  }
}

/** The draft of a form, or null when there is none or it no longer fits (then it is of an older version of the form). */
export function readDraft<S extends z.ZodMiniType>(
  record: RecordName,
  form: string,
  schema: S,
): z.infer<S> | null {
  const text = withStorage((storage) => storage.getItem(keyOf(record, form)));
  if (typeof text !== 'string') return null;
  const read = schema.safeParse(parsed(text));
  return read.success ? read.data : null;
}

/** Drops the draft: the form was written into the record, or given up. */
export function clearDraft(record: RecordName, form: string): void {
  withStorage((storage) => storage.removeItem(keyOf(record, form)));
}

function keysOf(storage: Storage, record: RecordName): readonly string[] {
  const keys = Array.from({ length: storage.length }, (_, place) => storage.key(place));
  return keys.filter((key) => key?.startsWith(prefix(record)) === true) as string[];
}

/** Drops every draft of a record. */
export function forgetDrafts(record: RecordName): void {
  withStorage((storage) => {
    for (const key of keysOf(storage, record)) storage.removeItem(key);
  });
}

/** All drafts of a record as they stand, whatever form they are of; null where they cannot be looked at. */
export function allDrafts(record: RecordName): readonly unknown[] | null {
  const texts = withStorage((storage) => keysOf(storage, record).map((key) => storage.getItem(key) ?? ''));
  return Array.isArray(texts) ? texts.map(parsed) : null;
}
