import 'fake-indexeddb/auto';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { sinceBackup } from '../../../../src/storage/backup/since-backup';
import { noteBackup } from '../../../../src/storage/marker';
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
});
