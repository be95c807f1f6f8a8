/** Whether a record is as it was written. */
import { type Entry, Entry as EntrySchema } from './entries/entry';
import { hashOf } from './seal';

/** Last entry of a device's chain. A chain that was cut off at its end shows only against a head kept elsewhere. */
export type Head = { readonly device: string; readonly counter: number; readonly hash: string };

export type Wrong =
  | {
      readonly code: 'schema';
      readonly issues: readonly { readonly path: string; readonly message: string }[];
    }
  | { readonly code: 'hash-differs'; readonly stated: string; readonly computed: string }
  | { readonly code: 'counter-gap'; readonly expected: number; readonly found: number }
  | {
      readonly code: 'previous-does-not-match';
      readonly stated: string | null;
      readonly expected: string | null;
    };

export type Verdict =
  | { readonly whole: true; readonly entries: number; readonly heads: readonly Head[] }
  /** `at` is the place in the array that was given; `id` is null when it could not be read. */
  | { readonly whole: false; readonly at: number; readonly id: string | null; readonly why: Wrong };

type Placed = { readonly entry: Entry; readonly at: number };

const idOf = (raw: unknown): string | null => {
  const id = (raw as { readonly id?: unknown } | null)?.id;
  return typeof id === 'string' ? id : null;
};

/** Text with half a letter in it has no canonical form, and so no hash: then "none". */
export function contentHashOf(content: unknown): string {
  try {
    return hashOf(content);
  } catch {
    return 'none';
  }
}

/** What is wrong with one entry by itself: its shape or its hash; null when nothing is. */
export function wrongInItself(raw: unknown): Wrong | null {
  const read = EntrySchema.safeParse(raw);
  if (!read.success) {
    const issues = read.error.issues.map(({ path, message }) => ({ path: path.join('.'), message }));
    return { code: 'schema', issues };
  }
  // The hash is over what is stored, not over what the schema makes of it.
  const { hash, ...rest } = raw as Entry;
  const computed = contentHashOf(rest);
  return computed === hash ? null : { code: 'hash-differs', stated: hash, computed };
}

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;

/** The kind of an entry as it was sealed, of which a later version knows the kind or the shape; null for any other. */
export function laterKind(raw: unknown, why: Wrong | null): string | null {
  if (why?.code !== 'schema' || !isObject(raw) || !isObject(raw.body)) return null;
  const { hash, ...rest } = raw;
  const { kind, body } = raw.body;
  const about = isObject(body) ? body.kind : kind;
  const isUnknown = why.issues.some(({ path }) => /^body(\.body)?\.(kind|v)$/.test(path));
  return isUnknown && typeof about === 'string' && contentHashOf(rest) === hash ? about : null;
}

/** What is wrong with an entry after the one `before` it on its device; null when nothing is. */
export function wrongInChain(entry: Entry, before: Head | undefined): Wrong | null {
  const expected = (before?.counter ?? 0) + 1;
  if (entry.counter !== expected) return { code: 'counter-gap', expected, found: entry.counter };
  const previous = before?.hash ?? null;
  if (entry.previous === previous) return null;
  return { code: 'previous-does-not-match', stated: entry.previous, expected: previous };
}

/**
 * Checks every entry by itself in the order given, then each device's chain from its first entry.
 * @param entries raw, as read from a file or a store; of any number of devices, in any order
 * @returns whole with the head of each chain, or the first wrong entry and why
 */
export function verifyChain(entries: readonly unknown[]): Verdict {
  for (const [at, raw] of entries.entries()) {
    const why = wrongInItself(raw);
    if (why) return { whole: false, at, id: idOf(raw), why };
  }
  const placed: Placed[] = (entries as readonly Entry[]).map((entry, at) => ({ entry, at }));
  placed.sort((a, b) => a.entry.counter - b.entry.counter);
  const heads = new Map<string, Head>();
  for (const { entry, at } of placed) {
    const why = wrongInChain(entry, heads.get(entry.device));
    if (why) return { whole: false, at, id: entry.id, why };
    heads.set(entry.device, { device: entry.device, counter: entry.counter, hash: entry.hash });
  }
  return { whole: true, entries: entries.length, heads: [...heads.values()] };
}
