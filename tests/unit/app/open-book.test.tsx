import 'fake-indexeddb/auto';
import { afterEach, expect, it, vi } from 'vitest';
import { openBook } from '../../../src/app/open-book';
import { deleteRecord } from '../../../src/storage/database';
import { keepDraft } from '../../../src/storage/drafts';
import { keepPhoto } from '../../../src/storage/photos';
import { openRecord } from '../../../src/storage/record';

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
