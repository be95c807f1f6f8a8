/** localStorage, which may be blocked, full, or hold what somebody else wrote. */

export type LocalFailure = {
  readonly ok: false;
  readonly failure: { readonly code: 'storage-full' | 'storage-blocked' };
};

/** Runs `use` on localStorage, or gives the failure: even naming it throws where it is blocked. */
export function withStorage<T>(use: (storage: Storage) => T): T | LocalFailure {
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

/** What the text says as JSON; undefined when it says nothing. */
export function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    if (error instanceof SyntaxError) return undefined;
    throw error;
  }
}
