import 'fake-indexeddb/auto';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { readBackup } from '../../../../src/storage/backup/read-backup';
import {
  anotherPhone,
  backedUp,
  entriesIn,
  marked,
  opened,
  person,
  picture,
  read,
  says,
} from './invented-record';

beforeEach(anotherPhone);
afterEach(anotherPhone);

async function workshop() {
  const record = await opened();
  await says(record, person('Ana'), person('Ben'));
  await says(record, await marked(record));
  return record;
}

describe('a backup', () => {
  test('holds every entry and every photo as they lie in the record', async () => {
    const record = await workshop();
    const { file, ...told } = await backedUp();
    expect(told).toMatchObject({ locked: false, entries: 3, damaged: 0, files: 1, filesMissing: 0 });
    const backup = await read(file);
    expect([...backup.entries()]).toEqual(await entriesIn(record));
    const [photo] = backup.files;
    expect(photo && (await backup.file(photo))).toEqual(picture(1));
  });

  test('locked with a passphrase opens with it, and with no other', async () => {
    await workshop();
    const { file } = await backedUp('correct horse');
    expect((await readBackup(file, 'correct horse')).ok).toBe(true);
    expect(await readBackup(file, 'battery')).toMatchObject({ refusal: { code: 'passphrase-wrong' } });
    expect(await readBackup(file)).toMatchObject({ refusal: { code: 'passphrase-needed' } });
  });

  test('of which any byte was changed is refused', async () => {
    await workshop();
    const bytes = new Uint8Array(await (await backedUp()).file.arrayBuffer());
    for (let at = 0; at < bytes.length; at += 1) {
      const flipped = new Uint8Array(bytes);
      flipped[at] = (flipped[at] ?? 0) ^ (1 << (at % 8));
      const result = await readBackup(flipped);
      expect(result.ok, `byte ${at}`).toBe(false);
    }
  });
});
