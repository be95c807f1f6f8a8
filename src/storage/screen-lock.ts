/**
 * The lock of the screen: the hash of a PIN, and after how long out of view it closes. It hides pages and encrypts
 * nothing, so it lies in localStorage beside the preferences, and whoever can read that can read the record as well.
 */
import * as z from 'zod/mini';
import { Instant } from '../ledger/entries/moments';
import { type LocalFailure, parsed, withStorage } from './local';

const Hex = z.string().check(z.regex(/^([0-9a-f]{2})+$/));

const ScreenLock = z.strictObject({
  v: z.literal(1),
  salt: Hex,
  hash: Hex,
  rounds: z.int().check(z.minimum(1)),
  /** Out of view for so long, minutes, and the pages are hidden. */
  minutes: z.int().check(z.minimum(1)),
  /** Wrong PINs since the last right one. */
  wrong: z.int().check(z.minimum(0)),
  /** When somebody who does not have the PIN asked that the lock be taken off. */
  removalAskedAt: z.nullable(Instant),
});
export type ScreenLock = z.infer<typeof ScreenLock>;

export const screenLockKey = 'leesbook:screen-lock';

/** Null where there is none. One that cannot be read is none: it protects no secret, and must keep nobody from the record. */
export function readScreenLock(): ScreenLock | null {
  const text = withStorage((storage) => storage.getItem(screenLockKey));
  if (typeof text !== 'string') return null;
  const fits = ScreenLock.safeParse(parsed(text));
  return fits.success ? fits.data : null;
}

export const keepScreenLock = (lock: ScreenLock): { readonly ok: true } | LocalFailure =>
  withStorage((storage) => {
    storage.setItem(screenLockKey, JSON.stringify(lock));
    return { ok: true } as const;
  });

export const dropScreenLock = (): { readonly ok: true } | LocalFailure =>
  withStorage((storage) => {
    storage.removeItem(screenLockKey);
    return { ok: true } as const;
  });

/**
 * Of PBKDF2 with SHA-256: a quarter of a second on a slow phone (status: reasoned). More would only make its owner wait: all PINs
 * of six digits are tried through in a day whatever this is, and the lock keeps nobody but a passer-by.
 */
const rounds = 100_000;

const hex = (bytes: Uint8Array): string =>
  Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');

const bytesOf = (text: string): Uint8Array<ArrayBuffer> =>
  Uint8Array.from(text.match(/../g) ?? [], (pair) => Number.parseInt(pair, 16));

async function hashOf(pin: string, salt: Uint8Array<ArrayBuffer>, iterations: number): Promise<string> {
  const key = await crypto.subtle.importKey('raw', new TextEncoder().encode(pin), 'PBKDF2', false, [
    'deriveBits',
  ]);
  const bits = await crypto.subtle.deriveBits(
    { name: 'PBKDF2', hash: 'SHA-256', salt, iterations },
    key,
    256,
  );
  return hex(new Uint8Array(bits));
}

/** What is kept of a PIN. */
export async function sealPin(pin: string): Promise<Pick<ScreenLock, 'salt' | 'hash' | 'rounds'>> {
  const salt = crypto.getRandomValues(new Uint8Array(16));
  return { salt: hex(salt), hash: await hashOf(pin, salt, rounds), rounds };
}

export const pinFits = async (lock: ScreenLock, pin: string): Promise<boolean> =>
  (await hashOf(pin, bytesOf(lock.salt), lock.rounds)) === lock.hash;
