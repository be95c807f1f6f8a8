import 'fake-indexeddb/auto';
import { deleteDB } from 'idb';
import { v7 } from 'uuid';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { type Book, openBook } from '../../../src/app/open-book';
import { deleteRecord } from '../../../src/storage/database';
import { databaseName } from '../../../src/storage/database-name';
import { keepDraft } from '../../../src/storage/drafts';
import { goOnWithout } from '../../../src/storage/go-on';
import { readMarker } from '../../../src/storage/marker';
import { keepPhoto } from '../../../src/storage/photos';
import { type OpenRecord, openRecord } from '../../../src/storage/record';
import { troubleAfterCheck } from '../../../src/storage/trouble';

afterEach(() => deleteRecord('real'));

it('opening the record clears away the photos of forms given up long ago, and no others', async () => {
  const opened = await openRecord('real', {
    newId: () => '0190b3b0-0000-7000-8000-000000000001',
    onClosed: () => undefined,
  });
  if (!opened.ok) throw new Error(opened.failure.code);
  const keep = async (last: number): Promise<string> => {
    const kept = await keepPhoto(
      opened.value,
      new Uint8Array([0xff, 0xd8, 0xff, last]),
      '2020-01-01T00:00:00.000Z',
    );
    return kept.ok ? kept.value : '';
  };
  const [givenUp, inForm] = [await keep(1), await keep(2)];
  keepDraft('real', 'any', { photos: [{ hash: inForm }] });
  opened.value.close();

  const book = await openBook('real');
  if (!book.ok) throw new Error(book.failure.code);
  await vi.waitFor(async () =>
    expect(await book.value.photo(givenUp)).toEqual({ ok: true, value: { state: 'missing' } }),
  );
  expect(await book.value.photo(inForm)).toMatchObject({ value: { state: 'there', type: 'image/jpeg' } });
  book.value.close();
});

describe('a record that is not whole', () => {
  const described = {
    do: 'describe-workshop',
    name: 'Weir Yard',
    address: 'Weir Yard 6, Ostermill',
    emergencyNumber: '112',
  } as const;

  async function bookOf(name: 'real' | 'demo' = 'real'): Promise<Book> {
    const book = await openBook(name);
    if (!book.ok) throw new Error(book.failure.code);
    return book.value;
  }

  /** Two entries: a workshop and a person. */
  async function written(): Promise<void> {
    const book = await bookOf();
    expect(await book.perform(described, null)).toMatchObject({ ok: true });
    expect(await book.perform({ do: 'add-person', name: 'Maren' }, null)).toMatchObject({ ok: true });
    book.close();
  }

  async function harmed(how: (database: OpenRecord['database']) => Promise<unknown>): Promise<void> {
    const opened = await openRecord('real', { newId: v7, onClosed: () => undefined });
    if (!opened.ok) throw new Error(opened.failure.code);
    await how(opened.value.database);
    opened.value.close();
  }

  const cutShort = () =>
    harmed(async (database) => {
      const [last] = (await database.getAll('entries')).filter(({ counter }) => counter === 2);
      await database.delete('entries', last?.id ?? '');
    });

  const heldEntries = async (book: Book): Promise<number> => book.state.value.log.length;

  it('has a marker that goes along with every entry', async () => {
    await written();
    expect(readMarker('real')).toMatchObject({ state: 'there', marker: { entries: 2 } });
  });

  it('shows what is there, writes nothing, and keeps no photo', async () => {
    await written();
    await cutShort();
    const book = await bookOf();
    expect(book.trouble.value.map(({ code }) => code)).toEqual(['shorter', 'damaged']);
    expect(book.state.value.workshop?.body.name).toBe('Weir Yard');
    const refused = { ok: false, failure: { code: 'read-only' } };
    expect(await book.perform({ do: 'add-person', name: 'Tobias' }, null)).toEqual(refused);
    expect(await book.keepPhoto(new Uint8Array([0xff, 0xd8, 0xff, 1]))).toEqual(refused);
    expect(await heldEntries(book)).toBe(1);
    book.close();
    expect(readMarker('real')).toMatchObject({ marker: { entries: 2 } });
  });

  it('keeps photos that nothing names any more: the entry that is lost may have named them', async () => {
    await written();
    const opened = await openRecord('real', { newId: v7, onClosed: () => undefined });
    if (!opened.ok) throw new Error(opened.failure.code);
    const bytes = new Uint8Array([0xff, 0xd8, 0xff, 7]);
    const kept = await keepPhoto(opened.value, bytes, '2020-01-01T00:00:00.000Z');
    opened.value.close();
    await cutShort();
    const hash = kept.ok ? kept.value : '';
    const broken = await bookOf();
    const decided = { newId: v7, now: '2026-05-01T08:00:00.000Z' };
    await goOnWithout('real', broken.trouble.value, decided);
    broken.close();
    const book = await bookOf();
    expect(book.trouble.value).toEqual([]);
    expect(await book.perform({ do: 'add-person', name: 'Tobias' }, null)).toMatchObject({ ok: true });
    expect(await book.photo(hash)).toMatchObject({ value: { state: 'there' } });
    book.close();
  });

  it('that is gone opens as an empty book that writes nothing, and makes no database', async () => {
    await written();
    await deleteDB(databaseName('real'));
    const book = await bookOf();
    expect(book.trouble.value).toEqual([{ code: 'gone' }]);
    expect(await book.perform(described, null)).toEqual({ ok: false, failure: { code: 'read-only' } });
    expect(await indexedDB.databases()).toEqual([]);
  });

  it('takes back the refusal once everything is found to be there', async () => {
    await written();
    const book = await bookOf();
    book.trouble.value = [{ code: 'damaged', wrong: [{ what: 'head', why: 'missing' }], count: 1 }];
    const refused = { ok: false, failure: { code: 'read-only' } };
    expect(await book.perform({ do: 'add-person', name: 'Tobias' }, null)).toEqual(refused);
    const sound = {
      entries: 2,
      photos: 0,
      heads: [],
      wrong: [],
      wrongCount: 0,
      untold: { damaged: 0, later: 0, photo: 0 },
      photosElsewhere: 0,
    };
    book.trouble.value = troubleAfterCheck(book.trouble.value, sound, []);
    expect(await book.perform({ do: 'add-person', name: 'Tobias' }, null)).toMatchObject({ ok: true });
    book.close();
  });

  it('an entry of another tab that cannot be read keeps this one from writing', async () => {
    await written();
    const book = await bookOf();
    await harmed(async (database) => {
      const [first] = await database.getAll('entries');
      const device = '0d000000-0000-7000-8000-000000000001';
      await database.add('entries', { ...first, id: v7(), device, counter: 1, body: {} } as never);
    });
    await book.perform({ do: 'add-person', name: 'Tobias' }, null);
    expect(book.trouble.value).toMatchObject([{ code: 'damaged', count: 1 }]);
    expect(book.corrupted.value).toHaveLength(1);
    const refused = { ok: false, failure: { code: 'read-only' } };
    expect(await book.perform({ do: 'add-person', name: 'Ute' }, null)).toEqual(refused);
    book.close();
  });
});
