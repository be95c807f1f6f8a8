/**
 * Half-filled forms, kept at once in localStorage so that they survive a reload, a call or an update. A draft is a
 * convenience: where it cannot be kept the form goes on without, and the caller is told.
 */
import type * as z from 'zod/mini';
import { onComingBack } from './coming-back';
import type { RecordName } from './database';
import { type LocalFailure, parsed, withStorage } from './local';

export type DraftKept = { readonly ok: true } | LocalFailure;

const prefix = (record: RecordName): string => `leesbook:draft:${record}:`;
const keyOf = (record: RecordName, form: string): string => `${prefix(record)}${form}`;

/** What this window kept or read last, by key: all else that stands there is of another window. */
const own = new Map<string, string | null>();

/** Keeps what has been filled in so far. `value` must be what JSON can say. */
export function keepDraft(record: RecordName, form: string, value: unknown): DraftKept {
  const text = JSON.stringify(value);
  return withStorage((storage): DraftKept => {
    storage.setItem(keyOf(record, form), text);
    own.set(keyOf(record, form), text);
    return { ok: true };
  });
}

/** The draft of a form, or null when there is none or it no longer fits (then it is of an older version of the form). */
export function readDraft<S extends z.ZodMiniType>(
  record: RecordName,
  form: string,
  schema: S,
): z.infer<S> | null {
  const text = withStorage((storage) => storage.getItem(keyOf(record, form)));
  own.set(keyOf(record, form), typeof text === 'string' ? text : null);
  if (typeof text !== 'string') return null;
  const read = schema.safeParse(parsed(text));
  return read.success ? read.data : null;
}

/** Drops the draft: the form was written into the record, or given up. */
export function clearDraft(record: RecordName, form: string): void {
  own.set(keyOf(record, form), null);
  withStorage((storage) => storage.removeItem(keyOf(record, form)));
}

/**
 * Hears that another window has typed into the form that is open here, or dropped its draft: written down there, or begun again.
 * @returns ends it
 */
export function watchDraft(
  record: RecordName,
  form: string,
  heard: (there: 'typed' | 'dropped') => void,
): () => void {
  const key = keyOf(record, form);
  const look = (): void => {
    const text = withStorage((storage) => storage.getItem(key));
    if ((text !== null && typeof text !== 'string') || text === (own.get(key) ?? null)) return;
    own.set(key, text);
    heard(text === null ? 'dropped' : 'typed');
  };
  const told = (event: StorageEvent): void => {
    if (event.key === key || event.key === null) look();
  };
  window.addEventListener('storage', told);
  const stop = onComingBack(look);
  return () => {
    window.removeEventListener('storage', told);
    stop();
  };
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
