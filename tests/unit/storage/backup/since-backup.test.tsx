import 'fake-indexeddb/auto';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { sinceBackup } from '../../../../src/storage/backup/since-backup';
import { noteAlsoWithout, noteBackup } from '../../../../src/storage/marker';
import { anotherPhone, marked, monday, opened, person, says } from './invented-record';

beforeEach(async () => {
  localStorage.clear();
  await anotherPhone();
});
afterEach(anotherPhone);

describe('since the last backup', () => {
  test('everything, when none was noted', async () => {
    const record = await opened();
    await says(record, person('Ana'), await marked(record));
    expect(await sinceBackup(record)).toEqual({ lastAt: null, entries: 2, files: 1, oldest: monday });
  });

  test('nothing, once one was noted; then what is written after it', async () => {
    const record = await opened();
    const written = await says(record, person('Ana'), await marked(record));
    const heads = written.slice(-1).map(({ device, counter, hash }) => ({ device, counter, hash }));
    noteBackup('real', { at: monday, entries: written.length, heads });
    expect(await sinceBackup(record)).toEqual({ lastAt: monday, entries: 0, files: 0, oldest: null });
    await says(record, person('Ben'));
    expect(await sinceBackup(record)).toEqual({ lastAt: monday, entries: 1, files: 0, oldest: monday });
  });

  test('counts what is there, not what was given up; the oldest is the oldest that is there', async () => {
    const record = await opened();
    const [first] = await says(record, person('Ana'));
    const written = await says(record, person('Ben'), person('Cleo'), person('Dora'));
    const device = record.device;
    for (const lost of [first, written[1]]) await record.database.delete('entries', lost?.id ?? '');
    noteAlsoWithout('real', [
      { what: 'missing', at: monday, device, from: 1, to: 1 },
      { what: 'missing', at: monday, device, from: 3, to: 3 },
    ]);
    expect(await sinceBackup(record)).toEqual({ lastAt: null, entries: 2, files: 0, oldest: monday });
    const heads = written.slice(0, 1).map(({ counter, hash }) => ({ device, counter, hash }));
    noteBackup('real', { at: monday, entries: 1, heads });
    expect(await sinceBackup(record)).toMatchObject({ entries: 1 });
  });
});
