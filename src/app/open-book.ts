/** An open record as signals and commands: the one place where decisions, seals and the store meet. */
import { type ReadonlySignal, signal } from '@preact/signals';
import { v7 } from 'uuid';
import { decide } from '../ledger/decide';
import type { Entry } from '../ledger/entries/entry';
import { applyAll, fold } from '../ledger/fold';
import type { Intention } from '../ledger/intention';
import type { Refusal } from '../ledger/refusal';
import { emptyState, type State } from '../ledger/state';
import type { Performed } from '../screens/shell';
import { append, watch } from '../storage/append';
import type { RecordName } from '../storage/database';
import type { StoreFailure, StoreResult } from '../storage/failure';
import { type WholeRecord, wholeRecord } from '../storage/pages-of-entries';
import { keepPhoto, type PhotoRead, readPhoto, sweepPhotos } from '../storage/photos';
import { type Corrupted, type OpenRecord, openRecord, readAll } from '../storage/record';
import { moment, zone } from './clock';

export type Book = {
  readonly name: RecordName;
  readonly state: ReadonlySignal<State>;
  readonly corrupted: ReadonlySignal<readonly Corrupted[]>;
  readonly whole: WholeRecord;
  /** The store was shut from outside; the record must be opened again. */
  readonly shut: ReadonlySignal<boolean>;
  readonly perform: (intention: Intention, who: string | null, happenedAt?: string) => Promise<Performed>;
  /** Keeps the bytes of a photo and gives their hash. */
  readonly keepPhoto: (bytes: Uint8Array<ArrayBuffer>) => Promise<StoreResult<string>>;
  readonly photo: (hash: string) => Promise<StoreResult<PhotoRead>>;
  readonly close: () => void;
};

const foldAll = (state: State, entries: readonly Entry[]): State => entries.reduce(fold, state);

/** Also an error of our own on the way is a record that does not open, told as such; nothing waits for ever. */
export async function openBook(name: RecordName): Promise<StoreResult<Book>> {
  try {
    return await opening(name);
  } catch (error) {
    const { name: kind, message } = error instanceof Error ? error : new Error(String(error));
    return { ok: false, failure: { code: 'store-failed', name: kind, message } };
  }
}

async function opening(name: RecordName): Promise<StoreResult<Book>> {
  const shut = signal(false);
  const opened = await openRecord(name, {
    newId: v7,
    onClosed: () => {
      shut.value = true;
    },
  });
  if (!opened.ok) return opened;
  const record = opened.value;
  try {
    const read = await readAll(record);
    if (!read.ok) {
      record.close();
      return read;
    }
    const { entries, corrupted } = read.value;
    // Nobody waits for it, and what it leaves lying does no harm.
    void sweepPhotos(record, entries, moment());
    return { ok: true, value: bookOf(record, applyAll(entries), corrupted, shut) };
  } catch (error) {
    record.close();
    throw error;
  }
}

function bookOf(
  record: OpenRecord,
  first: State,
  damaged: readonly Corrupted[],
  shut: ReadonlySignal<boolean>,
): Book {
  const state = signal(first);
  const corrupted = signal(damaged);
  const take = (entries: readonly Entry[], broken: readonly Corrupted[]): void => {
    if (entries.length > 0) state.value = foldAll(state.value, entries);
    if (broken.length > 0) corrupted.value = [...corrupted.value, ...broken];
  };
  const stopWatching = watch(record, (news) => {
    if (news.ok) take(news.value.entries, news.value.corrupted);
  });

  async function perform(intention: Intention, who: string | null, happenedAt?: string): Promise<Performed> {
    const now = moment();
    const stamp = { now, zone, who, newId: v7, ...(happenedAt === undefined ? {} : { happenedAt }) };
    const result = await append<Refusal>(record, stamp, (fresh) =>
      decide(foldAll(state.value, fresh), intention, { now, newId: v7, who }),
    );
    if ('failure' in result) return { ok: false, failure: result.failure satisfies StoreFailure };
    take(result.fresh, result.corrupted);
    if (!result.ok) return { ok: false, refusal: result.refusal };
    take(result.written, []);
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
    shut,
    perform,
    keepPhoto: (bytes) => keepPhoto(record, bytes, moment()),
    photo: (hash) => readPhoto(record, hash),
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
  shut: signal(false),
  perform: async () => ({ ok: false, failure }),
  keepPhoto: async () => ({ ok: false, failure }),
  photo: async () => ({ ok: false, failure }),
  close: () => undefined,
});
