/** Thousands of made-up files given as a backup: each is refused with a reason, and nothing is changed by it. */
import 'fake-indexeddb/auto';
import fc from 'fast-check';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { planRestore } from '../../src/storage/backup/plan-restore';
import { readBackup } from '../../src/storage/backup/read-backup';
import { restore } from '../../src/storage/backup/restore';
import {
  anotherPhone,
  backedUp,
  marked,
  monday,
  newId,
  opened,
  person,
  says,
} from '../unit/storage/backup/invented-record';
import { packed, partsOf } from './forged-backup';
import { forgeries, reasonsFor } from './forgeries';
import { howMany } from './how-many';

const wanted = howMany.files;

beforeEach(anotherPhone);
afterEach(anotherPhone);

async function whole() {
  const record = await opened();
  await says(record, person('Ana'), person('Ben'), person('Cleo'));
  await says(record, await marked(record));
  const bytes = new Uint8Array(await (await backedUp()).file.arrayBuffer());
  return { record, bytes, parts: partsOf(bytes) };
}

/** Bytes that were never packed as ours are. */
const anyBytes = (whole: Uint8Array<ArrayBuffer>): fc.Arbitrary<Uint8Array<ArrayBuffer>> =>
  fc.oneof(
    fc.uint8Array({ maxLength: 400 }).map((bytes) => new Uint8Array(bytes)),
    fc.tuple(fc.nat(whole.length), fc.uint8Array({ maxLength: 60 })).map(([at, more]) => {
      const after = whole.subarray(Math.min(whole.length, at + more.length + 1));
      return new Uint8Array([...whole.subarray(0, at), ...more, ...after]);
    }),
    fc.nat(whole.length - 1).map((length) => whole.slice(0, length)),
    fc.string().map((text) => new TextEncoder().encode(`age-encryption.org/v1\n${text}`)),
    fc.string().map((text) => new TextEncoder().encode(`PK\u0003\u0004${text}`)),
  );

/** Only what says the very same as the whole one may be taken. */
test('each of thousands is refused with a reason, whatever was forged, and the record stays as it is', async () => {
  const { record, bytes, parts } = await whole();
  const before = await record.database.getAll('entries');
  const [head, photos] = [
    await record.database.get('meta', 'head'),
    await record.database.getAllKeys('photos'),
  ];
  const reasons = new Map<string, number>();
  let tried = 0;
  const expectRefused = async (file: Uint8Array<ArrayBuffer>, how: string): Promise<void> => {
    tried += 1;
    const result = await readBackup(file);
    if (!result.ok) {
      const { code } = result.refusal;
      expect(reasonsFor[how] ?? [code], how).toContain(code);
      reasons.set(code, (reasons.get(code) ?? 0) + 1);
      return;
    }
    expect([...result.backup.entries()], how).toEqual(before);
    const plan = await planRestore('real', result.backup);
    if (!plan.ok) throw new Error(plan.failure.code);
    await restore(result.backup, plan.value, { record: 'real', now: monday, newDevice: newId() });
  };
  const each = Math.ceil(wanted / (Object.keys(forgeries).length + 5));
  for (const [how, forgery] of Object.entries(forgeries)) {
    const refusedBefore = [...reasons.values()].reduce((sum, count) => sum + count, 0);
    await fc.assert(
      fc.asyncProperty(forgery, async (forge) => expectRefused(await packed(await forge(parts)), how)),
      { numRuns: each },
    );
    const refused = [...reasons.values()].reduce((sum, count) => sum + count, 0) - refusedBefore;
    expect(refused, `${how}: hardly any was refused`).toBeGreaterThan(each * 0.8);
  }
  await fc.assert(
    fc.asyncProperty(anyBytes(bytes), (file) => expectRefused(file, 'bytes')),
    { numRuns: each * 5 },
  );
  expect(tried).toBeGreaterThanOrEqual(wanted);
  console.log(`${tried} files: ${JSON.stringify(Object.fromEntries(reasons))}`);
  expect(reasons.size).toBeGreaterThanOrEqual(12);
  expect(await record.database.getAll('entries')).toEqual(before);
  expect(await record.database.get('meta', 'head')).toEqual(head);
  expect(await record.database.getAllKeys('photos')).toEqual(photos);
  expect(globalThis).not.toHaveProperty('ran');
  expect(Object.prototype).not.toHaveProperty('x');
});
