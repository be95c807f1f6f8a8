/** An open record as signals and commands: the one place where decisions, seals and the store meet. */
import { type ReadonlySignal, type Signal, signal } from '@preact/signals';
import { v7 } from 'uuid';
import { decide } from '../ledger/decide';
import type { Entry } from '../ledger/entries/entry';
import { applyAll, foldAll } from '../ledger/fold';
import type { Intention } from '../ledger/intention';
import { photosOfChanged } from '../ledger/photos-named';
import type { Refusal } from '../ledger/refusal';
import { emptyState, type State } from '../ledger/state';
import type { SinceBackup } from '../ledger/would-be-lost';
import type { Performed, ReadWhole } from '../screens/shell';
import { append, watch } from '../storage/append';
import { sinceBackup } from '../storage/backup/since-backup';
import type { RecordName } from '../storage/database';
import { done, failed, type StoreFailure, type StoreResult } from '../storage/failure';
import { noteHeads } from '../storage/marker';
import { type HowFar, type WholeRecord, wholeRecord } from '../storage/pages-of-entries';
import { noteTry } from '../storage/persist';
import { keepPhoto, type PhotoRead, readPhoto, sweepPhotos } from '../storage/photos';
import { readInPieces } from '../storage/read-in-pieces';
import { type Corrupted, type OpenRecord, openRecord } from '../storage/record';
import type { Soundness } from '../storage/soundness';
import { goneOnWithout, type Trouble, troubleAtOpen, troubleOfCorrupted } from '../storage/trouble';
import { idle } from '../ui/idle';
import { moment, zoneNow } from './clock';
import { readToBegin } from './opening';
import { readingForAll } from './reading-for-all';

export type Book = {
  readonly name: RecordName;
  readonly state: ReadonlySignal<State>;
  readonly corrupted: ReadonlySignal<readonly Corrupted[]>;
  readonly whole: WholeRecord;
  /** Has the whole record at hand, until it is closed: a long one takes a while and much memory. */
  readonly readWhole: ReadWhole;
  /** The store was shut from outside; the record must be opened again. */
  readonly shut: ReadonlySignal<boolean>;
  /** What this page knows is not what is on the disk any more; it must begin anew. */
  readonly outdated: Signal<boolean>;
  readonly perform: (intention: Intention, who: string | null, happenedAt?: string) => Promise<Performed>;
  /** Keeps the bytes of a photo and gives their hash. */
  readonly keepPhoto: (bytes: Uint8Array<ArrayBuffer>) => Promise<StoreResult<string>>;
  readonly photo: (hash: string) => Promise<StoreResult<PhotoRead>>;
  /** What is wrong with the record as a whole; while anything is, nothing is written. */
  readonly trouble: Signal<readonly Trouble[]>;
  /** What the last look at everything found. */
  readonly lastCheck: Signal<Soundness | null>;
  /** What lies on this phone and in no backup. */
  readonly sinceBackup: () => Promise<SinceBackup | null>;
  readonly close: () => void;
};

const readOnly: StoreFailure = { code: 'read-only' };

/** An error of our own while deciding: the transaction was undone, and the form says so. */
function ownError(cause: unknown): { readonly ok: false; readonly failure: StoreFailure } {
  // The browser's own console keeps the trace for whoever mends it.
  console.error(cause);
  const { name, message } = cause instanceof Error ? cause : new Error(String(cause));
  return { ok: false, failure: { code: 'store-failed', name, message } };
}

/**
 * Also an error of our own on the way is a record that does not open, told as such; nothing waits for ever.
 * @param onFree hears that another tab stands in the way no more, where the answer was `blocked`
 */
export async function openBook(name: RecordName, onFree = (): void => {}): Promise<StoreResult<Book>> {
  try {
    return await opening(name, onFree);
  } catch (error) {
    const { name: kind, message } = error instanceof Error ? error : new Error(String(error));
    return { ok: false, failure: { code: 'store-failed', name: kind, message } };
  }
}

async function opening(name: RecordName, onFree: () => void): Promise<StoreResult<Book>> {
  const shut = signal(false);
  const opened = await openRecord(name, {
    newId: v7,
    onClosed: () => {
      shut.value = true;
    },
    onFree,
  });
  if (!opened.ok) return opened.failure.code === 'vanished' ? done(bookOfNothing(name)) : opened;
  const record = opened.value;
  try {
    const reading = readToBegin(record);
    const [read, trouble] = await Promise.all([
      reading,
      troubleAtOpen(
        record,
        reading.then((all) => (all.ok ? all.value.corrupted : [])),
      ),
    ]);
    if (!read.ok) {
      record.close();
      return read;
    }
    if (!trouble.ok) {
      record.close();
      return trouble;
    }
    const { state, corrupted } = read.value;
    // Nobody waits for it, and what it leaves lying does no harm. An entry that is lost may have named what nothing names now.
    if (trouble.value.length === 0 && goneOnWithout(name).length === 0)
      idle(() => void sweepPhotos(record, state.log, moment()));
    return done(bookOf(record, state, { corrupted, trouble: trouble.value }, shut));
  } catch (error) {
    record.close();
    throw error;
  }
}

/** Whether it changes an entry that is not at hand. */
function isOfOldEntry({ log, earlier }: State, intention: Intention): boolean {
  if (earlier === null || (intention.do !== 'correct-entry' && intention.do !== 'withdraw-entry'))
    return false;
  const target = intention.do === 'correct-entry' ? intention.corrects : intention.withdraws;
  return !log.some(({ id }) => id === target);
}

const isNamed = (trouble: readonly Trouble[], id: string): boolean =>
  trouble.some(
    (one) => one.code === 'damaged' && one.wrong.some((wrong) => wrong.what === 'entry' && wrong.id === id),
  );

const drawn = (): Promise<void> =>
  typeof requestAnimationFrame === 'undefined' || document.visibilityState === 'hidden'
    ? Promise.resolve()
    : new Promise((over) => requestAnimationFrame(() => setTimeout(over)));

function bookOf(
  record: OpenRecord,
  first: State,
  found: { readonly corrupted: readonly Corrupted[]; readonly trouble: readonly Trouble[] },
  shut: Signal<boolean>,
): Book {
  const state = signal(first);
  const corrupted = signal(found.corrupted);
  const trouble = signal(found.trouble);
  const outdated = signal(false);
  /** Reads the whole record, where not all of it is at hand. */
  async function readingAll(tell: (howFar: HowFar) => void, signal: AbortSignal): Promise<StoreResult<null>> {
    const read = await readInPieces(record, tell, signal);
    if (!read.ok) return read;
    if (!read.value) return done(null);
    // The page says so before it stands still.
    await drawn();
    const broken = new Set(read.value.corrupted.map(({ id }) => id));
    // What was written meanwhile is known already; what cannot be read any more is not known, though an opening had it.
    const log = state.peek().log.filter(({ id }) => !broken.has(id));
    state.value = foldAll(applyAll(read.value.entries), log);
    take([], read.value.corrupted);
    return done(null);
  }
  const readingOnce = readingForAll(readingAll);
  const readAllOfIt: ReadWhole = (tell, signal) =>
    state.peek().earlier === null ? Promise.resolve(done(null)) : readingOnce(tell, signal);
  const take = (entries: readonly Entry[], broken: readonly Corrupted[]): void => {
    if (entries.length > 0) {
      state.value = foldAll(state.value, entries);
      // It changes what came before all that is at hand.
      if (state.peek().earlier?.reachedBehind)
        void readAllOfIt().then((read) => {
          // Nobody goes on with what is known to be wrong.
          if (!read.ok) shut.value = true;
        });
      if (trouble.peek().length === 0) noteHeads(record.name, entries);
    }
    const known = new Set(corrupted.peek().map(({ id }) => id));
    const fresh = broken.filter(({ id }) => !known.has(id));
    if (fresh.length === 0) return;
    corrupted.value = [...corrupted.peek(), ...fresh];
    // The last entries were looked at when the record was opened.
    const unnamed = fresh.filter(({ id }) => id === null || !isNamed(trouble.peek(), id));
    trouble.value = [...trouble.peek(), ...troubleOfCorrupted(unnamed, goneOnWithout(record.name))];
  };
  const stopWatching = watch(record, (news) => {
    if (news.ok) take(news.value.entries, news.value.corrupted);
    // A page that was frozen was not told: it finds out when it thaws.
    else if (news.failure.code === 'closed') shut.value = true;
    else if (news.failure.code === 'outdated') outdated.value = true;
  });

  async function perform(intention: Intention, who: string | null, happenedAt?: string): Promise<Performed> {
    if (trouble.peek().length > 0) return { ok: false, failure: readOnly };
    if (isOfOldEntry(state.peek(), intention)) {
      const read = await readAllOfIt();
      if (!read.ok) return read;
    }
    const now = moment();
    const stamp = {
      now,
      zone: zoneNow(),
      who,
      newId: v7,
      ...(happenedAt === undefined ? {} : { happenedAt }),
    };
    const result = await append<Refusal | 'all-needed'>(record, stamp, (fresh) => {
      const before = foldAll(state.value, fresh);
      if (before.earlier?.reachedBehind) return { ok: false, refusal: 'all-needed' };
      const decided = decide(before, intention, { now, newId: v7, who });
      return decided.ok ? { ...decided, named: photosOfChanged(before, decided.bodies) } : decided;
    }).catch(ownError);
    if ('failure' in result) {
      if (result.failure.code === 'outdated') outdated.value = true;
      noteTry(result.failure.code === 'disk-full' ? 'none' : 'room');
      return { ok: false, failure: result.failure satisfies StoreFailure };
    }
    take(result.fresh, result.corrupted);
    if (!result.ok) {
      const { refusal } = result;
      // What it names may be told of in an entry that is not at hand.
      if (refusal !== 'all-needed' && (refusal.code !== 'unknown' || state.peek().earlier === null))
        return { ok: false, refusal };
      const read = await readAllOfIt();
      return read.ok ? perform(intention, who, happenedAt) : read;
    }
    take(result.written, []);
    noteTry('room');
    return { ok: true, written: result.written };
  }

  const close = (): void => {
    stopWatching();
    record.close();
  };
  return {
    name: record.name,
    state,
    corrupted,
    whole: wholeRecord(record),
    readWhole: readAllOfIt,
    shut,
    outdated,
    perform,
    keepPhoto: async (bytes) => {
      if (trouble.peek().length > 0) return failed(readOnly);
      const kept = await keepPhoto(record, bytes, moment());
      noteTry(!kept.ok && kept.failure.code === 'disk-full' ? 'none' : 'room');
      return kept;
    },
    photo: (hash) => readPhoto(record, hash),
    trouble,
    lastCheck: signal(null),
    sinceBackup: () => sinceBackup(record),
    close,
  };
}

/** Stands in for a record that does not open, so that an emergency card still does: it knows nothing and writes nothing. */
export const bookNotOpen = (name: RecordName, failure: StoreFailure): Book => ({
  name,
  state: signal(emptyState),
  corrupted: signal([]),
  whole: {
    device: '',
    count: async () => ({ ok: false, failure }),
    page: async () => ({ ok: false, failure }),
    entry: async () => ({ ok: false, failure }),
    lookThrough: async () => ({ ok: false, failure }),
  },
  readWhole: async () => ({ ok: false, failure }),
  shut: signal(false),
  outdated: signal(false),
  perform: async () => ({ ok: false, failure }),
  keepPhoto: async () => ({ ok: false, failure }),
  photo: async () => ({ ok: false, failure }),
  trouble: signal([]),
  lastCheck: signal(null),
  sinceBackup: async () => null,
  close: () => undefined,
});

/** Stands in for a record that the marker tells of and that is not on the phone any more. */
const bookOfNothing = (name: RecordName): Book => ({
  ...bookNotOpen(name, readOnly),
  trouble: signal([{ code: 'gone' }]),
});
