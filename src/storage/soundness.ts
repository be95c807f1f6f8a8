/**
 * Whether everything on the disk is as it was written: every entry by itself and in the chain of its device, the head of
 * this device, every photo by its hash. Read in chunks, so that memory does not grow with the record; it takes long, and
 * a worker does it away from the page (`screens/keeping/check-record.ts`).
 */
import type { Entry } from '../ledger/entries/entry';
import { filesNamed } from '../ledger/photos-named';
import { type Head, laterKind, type Wrong, wrongInChain, wrongInItself } from '../ledger/verify';
import type { Database } from './database';
import { wrongWithHead } from './device-heads';
import { done, failed, failureOf, type StoreResult } from './failure';
import { photoHash } from './photos';

/** One thing that is not as it was written. */
export type Unsound =
  /** `id` and `hash` are what it states, null where it states none; `counter` is its place in the chain of `device`. */
  | {
      readonly what: 'entry';
      readonly id: string | null;
      readonly hash: string | null;
      readonly device: string | null;
      readonly counter: number | null;
      readonly why: Wrong;
      /** It is as it was sealed, and a later version of the app knows what it means. */
      readonly later: boolean;
    }
  /** What this device would go on writing from is not there, or is not its last entry. */
  | { readonly what: 'head'; readonly why: 'missing' | 'not-its-last-entry' }
  | { readonly what: 'photo'; readonly hash: string };

/** `later`: entries of a later version; `damaged`: other entries, and the head. */
export type Untold = Readonly<Record<'damaged' | 'later' | 'photo', number>>;

export type Soundness = {
  readonly entries: number;
  readonly photos: number;
  /** Last entry of each chain. */
  readonly heads: readonly Head[];
  /** In the order found; of a record that is wrong throughout only the first `mostTold` of each sort that nobody has decided on. */
  readonly wrong: readonly Unsound[];
  /** All that is wrong, told or not. */
  readonly wrongCount: number;
  /** So many of each sort are not in `wrong`. */
  readonly untold: Untold;
  /** Photos and files that an entry names and that are not here: nothing wrong where they lie on another device. */
  readonly photosElsewhere: number;
};

/** How far the check is: `done` of `of` entries and photos, of which more may be written meanwhile. */
export type CheckProgress = { readonly done: number; readonly of: number };

export const mostTold = 100;

/** So many entries are in memory at once, and so many photos: few, as somebody who writes waits for the reading of one lot. */
const entriesAtOnce = 200;
const photosAtOnce = 4;

type Walked = { readonly device?: unknown; readonly counter?: unknown; readonly id?: unknown };

const textOf = (value: unknown): string | null => (typeof value === 'string' ? value : null);

/** Device by device, in the order of the counters. An entry whose device or counter is no key at all is not among them. */
async function* byDevice(database: Database): AsyncGenerator<readonly unknown[]> {
  let beyond: IDBKeyRange | undefined;
  for (;;) {
    const found = await database.getAllFromIndex('entries', 'by-device', beyond, entriesAtOnce);
    const last = found.at(-1);
    if (!last) return;
    yield found;
    beyond = IDBKeyRange.lowerBound([last.device, last.counter], true);
  }
}

async function* byId(database: Database): AsyncGenerator<readonly unknown[]> {
  let beyond: IDBKeyRange | undefined;
  for (;;) {
    const found = await database.getAll('entries', beyond, entriesAtOnce);
    const last = found.at(-1);
    if (!last) return;
    yield found;
    beyond = IDBKeyRange.lowerBound(last.id, true);
  }
}

async function* photosOf(database: Database): AsyncGenerator<readonly { hash: string; bytes: unknown }[]> {
  let beyond: IDBKeyRange | undefined;
  for (;;) {
    const found = await database.getAll('photos', beyond, photosAtOnce);
    const last = found.at(-1);
    if (!last) return;
    yield found;
    beyond = IDBKeyRange.lowerBound(last.hash, true);
  }
}

/** What somebody has decided on already. */
export type IsDecided = (found: Unsound) => boolean;

const sortOf = (found: Unsound): keyof Untold =>
  found.what === 'photo' ? 'photo' : found.what === 'entry' && found.later ? 'later' : 'damaged';

/** Gathers what is wrong; the first of each sort in full, and all that was decided on: it must not stand for what was not. */
function gathering(isDecided: IsDecided) {
  const wrong: Unsound[] = [];
  const fresh = { damaged: 0, later: 0, photo: 0 };
  const untold = { damaged: 0, later: 0, photo: 0 };
  let wrongCount = 0;
  const add = (found: Unsound): void => {
    wrongCount += 1;
    const sort = sortOf(found);
    if (!isDecided(found)) fresh[sort] += 1;
    if (fresh[sort] <= mostTold || isDecided(found)) wrong.push(found);
    else untold[sort] += 1;
  };
  return { wrong, add, counts: () => ({ wrongCount, untold }) };
}

export const unsoundEntry = (raw: unknown, why: Wrong): Extract<Unsound, { what: 'entry' }> => {
  const { id, device, counter, hash } = raw as Walked & { readonly hash?: unknown };
  return {
    what: 'entry',
    id: textOf(id),
    hash: textOf(hash),
    device: textOf(device),
    counter: typeof counter === 'number' ? counter : null,
    why,
    later: laterKind(raw, why) !== null,
  };
};

/**
 * Takes the entries of a chain one by one. After a wrong one it goes on from what that one states, so that one fault is
 * told once and not for all that follow.
 */
function chains(add: (found: Unsound) => void) {
  const heads = new Map<string, Head>();
  const take = (raw: unknown): void => {
    const itself = wrongInItself(raw);
    if (itself) add(unsoundEntry(raw, itself));
    const { device, counter, hash } = raw as Partial<Entry>;
    if (typeof device !== 'string' || typeof counter !== 'number' || typeof hash !== 'string') return;
    const why = itself ? null : wrongInChain(raw as Entry, heads.get(device));
    if (why) add(unsoundEntry(raw, why));
    heads.set(device, { device, counter, hash });
  };
  return { take, heads };
}

type Count = (more: number) => void;

async function walkEntries(database: Database, add: (found: Unsound) => void, tell: Count) {
  const { take, heads } = chains(add);
  const named = new Set<string>();
  let entries = 0;
  for await (const chunk of byDevice(database)) {
    for (const raw of chunk) {
      take(raw);
      for (const { hash } of filesNamed((raw as Partial<Entry>).body)) named.add(hash);
    }
    entries += chunk.length;
    tell(chunk.length);
  }
  // More in the store than in its index: some have no device or counter to be found by. Looked for one by one.
  if ((await database.count('entries')) > entries)
    for await (const chunk of byId(database))
      for (const raw of chunk) {
        const { device, counter } = raw as Walked;
        const why = typeof device === 'string' && typeof counter === 'number' ? null : wrongInItself(raw);
        if (!why) continue;
        entries += 1;
        add(unsoundEntry(raw, why));
      }
  return { entries, heads: [...heads.values()], named };
}

async function walkPhotos(database: Database, add: (found: Unsound) => void, tell: Count) {
  const here = new Set<string>();
  for await (const chunk of photosOf(database)) {
    for (const { hash, bytes } of chunk) {
      here.add(hash);
      if (!(bytes instanceof Uint8Array) || photoHash(bytes) !== hash) add({ what: 'photo', hash });
    }
    tell(chunk.length);
  }
  return here;
}

/** Goes through all that is on the disk. Writes nothing. What is written meanwhile is looked at or not. */
export async function checkSoundness(
  database: Database,
  tell: (progress: CheckProgress) => void = () => undefined,
  isDecided: IsDecided = () => false,
): Promise<StoreResult<Soundness>> {
  try {
    const of = (await database.count('entries')) + (await database.count('photos'));
    let passed = 0;
    const count: Count = (more) => {
      passed += more;
      tell({ done: Math.min(passed, of), of });
    };
    const { wrong, add, counts } = gathering(isDecided);
    const head = await wrongWithHead(database);
    if (head) add({ what: 'head', why: head });
    const { entries, heads, named } = await walkEntries(database, add, count);
    const here = await walkPhotos(database, add, count);
    const photosElsewhere = [...named].filter((hash) => !here.has(hash)).length;
    return done({ entries, photos: here.size, heads, wrong, ...counts(), photosElsewhere });
  } catch (error) {
    return failed(failureOf(error));
  }
}
