/** A hash as it is typed off a paper, and the entry that it belongs to. */
import type { Entry } from './entries/entry';

/** So many digits at least: that another of 100 000 entries begins alike then has a chance of 100 000 in 16^12 (reasoned). */
export const leastDigits = 12;

export type TypedHash =
  | { readonly ok: true; readonly begins: string }
  | { readonly ok: false; readonly fault: 'too-short' | 'not-a-hash' };

/** Gaps, dots and capital letters do not matter. @example typedHash('1A2B 3c4d 5e6f 7a8b…') */
export function typedHash(typed: string): TypedHash {
  const begins = typed.toLowerCase().replace(/[\s.…·-]/gu, '');
  if (!/^[0-9a-f]*$/.test(begins) || begins.length > 64) return { ok: false, fault: 'not-a-hash' };
  return begins.length < leastDigits ? { ok: false, fault: 'too-short' } : { ok: true, begins };
}

/** `entry`: its own hash begins so; `paper`: it tells of a paper whose content has that hash. */
export function hashOn({ hash, body }: Entry, begins: string): 'entry' | 'paper' | null {
  if (hash.startsWith(begins)) return 'entry';
  return body.kind === 'paper-made' && body.contentHash.startsWith(begins) ? 'paper' : null;
}
