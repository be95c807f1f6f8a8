/** Every byte of what leaves the app is changed in turn: it is refused, and never read as something else. */
import 'fake-indexeddb/auto';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { registerText } from '../../src/paperwork/register/register-data';
import { readBackup } from '../../src/storage/backup/read-backup';
import { can, pour, Scribe, wash } from '../unit/ledger/scribe';
import { registerOf, verdictOf } from '../unit/paperwork/register/any-register';
import {
  anotherPhone,
  backedUp,
  marked,
  opened,
  pdf,
  person,
  picture,
  says,
} from '../unit/storage/backup/invented-record';
import { howMany } from './how-many';

beforeEach(anotherPhone);
afterEach(anotherPhone);

async function bytesOf(passphrase: string | null = null): Promise<Uint8Array<ArrayBuffer>> {
  const record = await opened();
  await says(record, person('Ana'), person('Ben "the pen" Ødegård ☂'), await marked(record, picture(1)));
  await says(record, await marked(record, pdf.slice()));
  return new Uint8Array(await (await backedUp(passphrase)).file.arrayBuffer());
}

/** All bits over, the lowest and the highest bit over, nothing instead: as many of these as there is time for. */
const allChanges: readonly ((byte: number) => number)[] = [
  (byte) => byte ^ 0xff,
  (byte) => byte ^ 1,
  (byte) => byte ^ 0x80,
  () => 0,
];
const changes = allChanges.slice(0, howMany.ways);

const changed = (bytes: Uint8Array<ArrayBuffer>, at: number, change: (byte: number) => number) => {
  const other = bytes.slice();
  other[at] = change(bytes[at] ?? 0);
  return other;
};

const refusedAs = async (bytes: Uint8Array<ArrayBuffer>, passphrase?: string): Promise<string | null> => {
  const result = await readBackup(bytes, passphrase);
  return result.ok ? null : result.refusal.code;
};

describe('a backup', () => {
  test('of which any one byte is another is refused, whatever it became', async () => {
    const bytes = await bytesOf();
    expect(await refusedAs(bytes)).toBeNull();
    const codes = new Map<string, number>();
    for (let at = 0; at < bytes.length; at++)
      for (const change of changes) {
        const other = changed(bytes, at, change);
        if (other[at] === bytes[at]) continue;
        const code = await refusedAs(other);
        expect(code, `byte ${at} of ${bytes.length}: ${bytes[at]} became ${other[at]}`).not.toBeNull();
        codes.set(code ?? '', (codes.get(code ?? '') ?? 0) + 1);
      }
    console.log(
      `${bytes.length} bytes, ${changes.length} ways each: ${JSON.stringify(Object.fromEntries(codes))}`,
    );
  });

  test('that ends too soon, anywhere, or goes on after its end, is refused', async () => {
    const bytes = await bytesOf();
    for (let length = 0; length < bytes.length; length++)
      expect(await refusedAs(bytes.slice(0, length)), `cut to ${length}`).not.toBeNull();
    for (const more of ['\0', '\n', 'PK'])
      expect(await refusedAs(new Uint8Array([...bytes, ...new TextEncoder().encode(more)]))).not.toBeNull();
  });

  test('of which a byte was taken out, or one put in, anywhere, is refused', async () => {
    const bytes = await bytesOf();
    for (let at = 0; at < bytes.length; at += 3) {
      const less = new Uint8Array([...bytes.subarray(0, at), ...bytes.subarray(at + 1)]);
      const more = new Uint8Array([...bytes.subarray(0, at), 0x20, ...bytes.subarray(at)]);
      expect(await refusedAs(less), `without byte ${at}`).not.toBeNull();
      expect(await refusedAs(more), `with one more at ${at}`).not.toBeNull();
    }
  });

  test('locked with a passphrase, of which a byte is another, is refused', async () => {
    const bytes = await bytesOf('weir yard six');
    expect(await refusedAs(bytes, 'weir yard six')).toBeNull();
    // Each try takes the work that makes guessing slow.
    const last = howMany.places - 1;
    const places = Array.from({ length: howMany.places }, (_, n) =>
      Math.floor(((bytes.length - 1) * n) / last),
    );
    for (const at of places)
      expect(
        await refusedAs(
          changed(bytes, at, (byte) => byte ^ 1),
          'weir yard six',
        ),
        `byte ${at} of ${bytes.length}`,
      ).not.toBeNull();
  });
});

/** What a file says, whatever blanks stand in it; undefined where it says nothing. */
function saidIn(bytes: Uint8Array): unknown {
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch {
    return undefined;
  }
}

describe('a register', () => {
  test('of which any one byte is another is not whole, unless it says the very same', async () => {
    const scribe = new Scribe();
    for (const body of [can(1), wash(1, '3.40'), pour(1, 1, '3.40')]) scribe.write(body);
    const data = registerOf({
      entries: scribe.entries,
      days: { firstDay: '2026-03-01', lastDay: '2026-03-05' },
    });
    const bytes = new TextEncoder().encode(registerText(data));
    expect((await verdictOf(bytes)).whole).toBe(true);
    // An entry of it is tried byte by byte in the gate as well (`verify-register.test.ts`).
    const step = howMany.ways > 1 ? 1 : 5;
    let same = 0;
    for (let at = 0; at < bytes.length; at += step) {
      const other = changed(bytes, at, (byte) => byte ^ (1 << (at % 8)));
      if ((await verdictOf(other)).whole !== true) continue;
      same += 1;
      expect(saidIn(other), `byte ${at}: ${bytes[at]} became ${other[at]}`).toEqual(saidIn(bytes));
    }
    console.log(`${bytes.length} bytes, of which ${same} became another blank`);
    expect(same).toBeLessThan(bytes.length / 10);
  });
});
