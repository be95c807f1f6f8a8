/** What is done once the page has rested after a start: the next opening of a long record, and a look at everything. */
import 'fake-indexeddb/auto';
import { signal } from '@preact/signals';
import { v7 } from 'uuid';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { checkAfterStart, checkBook } from '../../../src/app/checking';
import type { Book } from '../../../src/app/open-book';
import { makeOpeningAfterStart } from '../../../src/app/opening';
import type { Entry } from '../../../src/ledger/entries/entry';
import { emptyState } from '../../../src/ledger/state';
import { deleteRecord, openDatabase } from '../../../src/storage/database';
import { longRecord } from '../../../src/storage/openings';
import { openRecord } from '../../../src/storage/record';
import type { Soundness } from '../../../src/storage/soundness';
import type { Trouble } from '../../../src/storage/trouble';

/** Workers that were begun, with what they were asked. */
let begun: Begun[] = [];

class Begun extends EventTarget {
  asked: unknown;
  ended = false;
  constructor(readonly address: string) {
    super();
    begun.push(this);
  }
  postMessage(asked: unknown): void {
    this.asked = asked;
  }
  terminate(): void {
    this.ended = true;
  }
  says(data: unknown): void {
    this.dispatchEvent(new MessageEvent('message', { data }));
  }
}

/** What a browser remembers of a site. */
class Kept {
  readonly #kept = new Map<string, string>();
  getItem = (key: string): string | null => this.#kept.get(key) ?? null;
  setItem = (key: string, value: string): void => void this.#kept.set(key, value);
  removeItem = (key: string): void => void this.#kept.delete(key);
}

const sound: Soundness = {
  entries: 1,
  photos: 0,
  heads: [],
  wrong: [],
  wrongCount: 0,
  untold: { damaged: 0, later: 0, photo: 0 },
  photosElsewhere: 0,
};

const damage: Soundness = {
  ...sound,
  wrong: [
    { what: 'entry', id: v7(), hash: null, device: null, counter: null, why: { code: 'hash' } },
  ] as never,
  wrongCount: 1,
};

const damaged: Trouble = { code: 'damaged', wrong: [], count: 1 };

function bookOf(entries: number, trouble: readonly Trouble[] = []) {
  const log = Array.from({ length: entries }, () => ({}) as Entry);
  return {
    name: 'real',
    state: signal({ ...emptyState, log }),
    trouble: signal(trouble),
    lastCheck: signal<Soundness | null>(null),
  } as unknown as Book;
}

beforeEach(() => {
  begun = [];
  vi.stubGlobal('Worker', Begun);
  vi.stubGlobal('document', { baseURI: 'https://book.example/' });
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
});

afterEach(async () => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
  await deleteRecord('real');
});

const anHour = 3_600_000;

test('the next opening of a long record is made, away from the page, once it has rested', () => {
  makeOpeningAfterStart(bookOf(longRecord));
  vi.advanceTimersByTime(5000);
  expect(begun).toEqual([]);
  vi.advanceTimersByTime(anHour);
  expect(begun).toHaveLength(1);
  expect(begun[0]?.address).toMatch(/opening-worker/);
  expect(begun[0]?.asked).toMatchObject({ name: 'real', now: expect.stringMatching(/^\d{4}-.*Z$/) });
});

test.each([
  ['of a short one', bookOf(longRecord - 1)],
  ['of one with which something is wrong', bookOf(longRecord, [damaged])],
])('none is made %s', (_, book) => {
  makeOpeningAfterStart(book);
  vi.advanceTimersByTime(anHour);
  expect(begun).toEqual([]);
});

test('nor once the page has gone', () => {
  makeOpeningAfterStart(bookOf(longRecord))();
  vi.advanceTimersByTime(anHour);
  expect(begun).toEqual([]);
});

test('everything is looked at once the page has rested, and what is found stands in the book', async () => {
  const book = bookOf(1);
  checkAfterStart(book);
  expect(begun).toEqual([]);
  vi.advanceTimersByTime(anHour);
  const [look] = begun;
  expect(look?.address).toMatch(/check-record-worker/);
  look?.says({ checked: { ok: true, value: sound } });
  await vi.waitFor(() => expect(book.lastCheck.value).toEqual(sound));
  expect(book.trouble.value).toEqual([]);
  await vi.waitFor(() => expect(look?.ended).toBe(true));
});

test('a long record is looked at after each start, however lately it was', async () => {
  vi.stubGlobal('localStorage', new Kept());
  for (const start of [1, 2]) {
    const book = bookOf(longRecord);
    checkAfterStart(book);
    vi.advanceTimersByTime(anHour);
    expect(begun).toHaveLength(start);
    begun.at(-1)?.says({ checked: { ok: true, value: sound } });
    await vi.waitFor(() => expect(book.lastCheck.value).toEqual(sound));
  }
});

test('a look that has begun ends with the page', async () => {
  const stop = checkAfterStart(bookOf(1));
  vi.advanceTimersByTime(anHour);
  stop();
  await vi.waitFor(() => expect(begun[0]?.ended).toBe(true));
});

test('of a record that is gone nothing is looked at', () => {
  checkAfterStart(bookOf(1, [{ code: 'gone' }]));
  vi.advanceTimersByTime(anHour);
  expect(begun).toEqual([]);
});

test('damage stands in the book, and throws away the opening that may have been worked out of it', async () => {
  vi.useRealTimers();
  const opened = await openRecord('real', { newId: v7, onClosed: () => undefined });
  if (!opened.ok) throw new Error(opened.failure.code);
  const { database, close } = opened.value;
  const kept = { bytes: new Uint8Array([1]), sha256: 'a'.repeat(64), heads: [] };
  await database.put('openings', kept, 'last');
  const book = bookOf(1);
  const { checked } = checkBook(book);
  begun[0]?.says({ checked: { ok: true, value: sound } });
  await checked;
  // Whoever threw it away would have opened the database before.
  const after = await openDatabase('real', () => undefined, 'only-if-there');
  if (!after.ok) throw new Error(after.failure.code);
  expect(await after.value.get('openings', 'last')).toBeDefined();
  after.value.close();
  const again = checkBook(book);
  begun[1]?.says({ checked: { ok: true, value: damage } });
  await again.checked;
  expect(book.trouble.value).toMatchObject([{ code: 'damaged', count: 1 }]);
  await vi.waitFor(async () => expect(await database.get('openings', 'last')).toBeUndefined());
  close();
});
