/** What can go wrong with a store that a correct program must expect, as values. */

export type StoreFailure =
  /** Nothing was written; space must be made first. */
  | { readonly code: 'disk-full' }
  /** What was to be written names photos that are not in the store. Nothing was written; they must be taken again. */
  | { readonly code: 'photo-missing'; readonly hashes: readonly string[] }
  /** Another tab deleted or upgraded the record, or the browser shut it: open it again. */
  | { readonly code: 'closed' }
  /** Another tab holds an older version open: close it. */
  | { readonly code: 'blocked' }
  /** The record was written by a newer version of the app. */
  | { readonly code: 'newer-version' }
  /** The browser gives no store here, as in some private windows. */
  | { readonly code: 'no-store' }
  /** There is no such record on the phone, and none was made. */
  | { readonly code: 'vanished' }
  /** A backup was brought in behind what this page knows, or somebody went on without something: the page must begin anew. */
  | { readonly code: 'outdated' }
  /** The record is not whole: it is read and taken out, and nothing is written until somebody decides. */
  | { readonly code: 'read-only' }
  | { readonly code: 'store-failed'; readonly name: string; readonly message: string };

export type StoreResult<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly failure: StoreFailure };

export const done = <T>(value: T): { readonly ok: true; readonly value: T } => ({ ok: true, value });
export const failed = (failure: StoreFailure): { readonly ok: false; readonly failure: StoreFailure } => ({
  ok: false,
  failure,
});

const codes: Readonly<Record<string, 'disk-full' | 'closed' | 'newer-version' | 'no-store'>> = {
  QuotaExceededError: 'disk-full',
  InvalidStateError: 'closed',
  VersionError: 'newer-version',
  SecurityError: 'no-store',
};

/** The failure that an error of IndexedDB or localStorage stands for. An error of our own program is thrown on. */
export function failureOf(error: unknown): StoreFailure {
  if (!(error instanceof DOMException)) throw error;
  const code = codes[error.name];
  return code ? { code } : { code: 'store-failed', name: error.name, message: error.message };
}
