/** Closing an envelope: its hash over the canonical JSON (RFC 8785) of everything else in it. */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import canonicalize from 'canonicalize';
import type { Entry, UnsealedEntry } from './entries/entry';

/** RFC 8785. Members that are undefined do not count. @throws on what JSON cannot say */
export function canonicalText(value: unknown): string {
  const text = canonicalize(value);
  if (text === undefined) throw new Error('only what JSON can say has a canonical text');
  return text;
}

/** SHA-256 of the canonical JSON of `value`, in lower-case hexadecimal. Members that are undefined do not count. */
export const hashOf = (value: unknown): string => bytesToHex(sha256(utf8ToBytes(canonicalText(value))));

/**
 * The entry with its hash. What comes back is a plain copy without undefined members, so that it is equal to itself
 * after any journey through JSON.
 */
export function seal(unsealed: UnsealedEntry): Entry {
  const plain = JSON.parse(canonicalText(unsealed)) as UnsealedEntry;
  return { ...plain, hash: hashOf(plain) };
}
