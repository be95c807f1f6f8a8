/** Thousands of made-up files given as a backup: each is refused with a reason, and nothing is changed by it. */
import 'fake-indexeddb/auto';
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import fc from 'fast-check';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { Entry } from '../../src/ledger/entries/entry';
import { canonicalText, seal } from '../../src/ledger/seal';
import { names } from '../../src/storage/backup/manifest';
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
import {
  linesOf,
  type Parts,
  packed,
  partsOf,
  textOf,
  withEnds,
  withLines,
  withManifest,
  withPart,
} from './forged-backup';
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

type Forge = (parts: Parts) => Parts | Promise<Parts>;

const entry = (line: string | undefined): Entry => JSON.parse(line ?? '{}') as Entry;

/** Sealed anew, so that the hash of the entry itself fits. */
function resealed(line: string | undefined, change: Partial<Entry>): string {
  const { hash: _, ...rest } = entry(line);
  return canonicalText(seal({ ...rest, ...change }));
}

const replaced = (parts: Parts, at: number, by: string): Parts =>
  withLines(
    parts,
    linesOf(parts, names.entries).map((line, n) => (n === at ? by : line)),
  );

/** Texts that were something else in another program. */
const harmful = [
  '<script>globalThis.ran = true</script>',
  '"><img src=x onerror="globalThis.ran = true">',
  'javascript:globalThis.ran=true',
  '=HYPERLINK("http://example.invalid")',
  '../../../../etc/passwd',
  '__proto__',
  '\u202e\u0000',
];

const anyHarm = fc.constantFrom(...harmful);

/** Names of files that lead out of wherever they are unpacked, or that no archive of ours has. */
const anyPath = fc.oneof(
  fc.constantFrom(
    '../manifest.json',
    '/etc/passwd',
    'C:/autorun.inf',
    'files/../../x',
    'files/',
    'manifest.json/',
    'MANIFEST.JSON',
    'files/index.html',
  ),
  fc.string({ minLength: 1, maxLength: 40 }).map((text) => `x${text.replace(/[^ -~]/g, '_')}`),
);

const deep = (depth: number): string => `${'['.repeat(depth)}${']'.repeat(depth)}`;

/** Each is wrong in a way of its own, with every hash made to fit again where a forger could. */
const forgeries: Readonly<Record<string, fc.Arbitrary<Forge>>> = {
  'a part that is none of ours': fc.tuple(anyPath, fc.uint8Array({ maxLength: 50 })).map(
    ([name, bytes]): Forge =>
      (parts) =>
        withPart(parts, name, bytes),
  ),
  'a part that is missing': fc.nat(3).map(
    (n): Forge =>
      (parts) =>
        new Map([...parts].filter((_, at) => at !== n)),
  ),
  'a line twice': fc.nat(3).map(
    (n): Forge =>
      (parts) => {
        const lines = linesOf(parts, names.entries);
        return withEnds(withLines(parts, [...lines, lines[n] ?? '']));
      },
  ),
  'two entries of one id': fc.nat(3).map(
    (n): Forge =>
      (parts) => {
        const lines = linesOf(parts, names.entries);
        const [first, last] = [entry(lines[n]), entry(lines.at(-1))];
        const more = resealed(lines.at(-1), { id: first.id, counter: last.counter + 1, previous: last.hash });
        return withEnds(withLines(parts, [...lines, more]));
      },
  ),
  'two entries at one place of a chain': fc.nat(3).map(
    (n): Forge =>
      (parts) => {
        const lines = linesOf(parts, names.entries);
        return withEnds(withLines(parts, [...lines, resealed(lines[n], { id: newId() })]));
      },
  ),
  'an entry that is missing': fc.nat(3).map(
    (n): Forge =>
      (parts) =>
        withManifest(
          withLines(
            parts,
            linesOf(parts, names.entries).filter((_, at) => at !== n),
          ),
        ),
  ),
  'an entry that was changed and sealed anew': fc.nat(2).map(
    (n): Forge =>
      (parts) => {
        const lines = linesOf(parts, names.entries);
        return withManifest(replaced(parts, n, resealed(lines[n], { body: person('Somebody else') })));
      },
  ),
  'a hash that does not fit': fc.tuple(fc.nat(3), anyHarm).map(
    ([n, name]): Forge =>
      (parts) => {
        const line = entry(linesOf(parts, names.entries)[n]);
        return withManifest(replaced(parts, n, canonicalText({ ...line, body: { ...line.body, name } })));
      },
  ),
  'a field that no entry has': fc.tuple(fc.nat(3), anyHarm, fc.json()).map(
    ([n, field, value]): Forge =>
      (parts) => {
        const changed = { [`${field}x`]: JSON.parse(value) as unknown } as unknown as Partial<Entry>;
        return withManifest(replaced(parts, n, resealed(linesOf(parts, names.entries)[n], changed)));
      },
  ),
  'a line that is no entry': fc.tuple(fc.nat(3), fc.oneof(fc.json(), anyHarm)).map(
    ([n, line]): Forge =>
      (parts) =>
        withManifest(replaced(parts, n, line.replaceAll('\n', ' '))),
  ),
  'objects within objects': fc.tuple(fc.nat(3), fc.integer({ min: 33, max: 200_000 })).map(
    ([n, depth]): Forge =>
      (parts) =>
        withManifest(replaced(parts, n, deep(depth))),
  ),
  'a line without end': fc.constant<Forge>((parts) =>
    withManifest(withPart(parts, names.entries, `${textOf(parts, names.entries)}{"a":1`)),
  ),
  'bytes that are no text': fc.uint8Array({ minLength: 1, maxLength: 60 }).map(
    (bytes): Forge =>
      (parts) => {
        const before = parts.get(names.entries) ?? new Uint8Array();
        return withManifest(
          withPart(parts, names.entries, new Uint8Array([...before, 0xff, ...bytes, 0x0a])),
        );
      },
  ),
  'a part that swells': fc.integer({ min: 1, max: 8 }).map(
    (megabytes): Forge =>
      (parts) =>
        withManifest(withPart(parts, names.entries, new Uint8Array(megabytes * 1024 * 1024))),
  ),
  'a manifest with another value': fc
    .tuple(
      fc.constantFrom('v', 'format', 'record', 'madeAt', 'heads', 'gaps', 'entries', 'files', 'damaged'),
      fc.json(),
    )
    .map(
      ([key, value]): Forge =>
        (parts) => {
          const said = JSON.parse(value) as unknown;
          return withManifest(parts, (manifest) => ({ ...manifest, [key]: said }));
        },
    ),
  'a manifest that counts otherwise': fc
    .tuple(fc.constantFrom('count', 'bytes'), fc.integer({ min: -5, max: 2 ** 40 }))
    .map(
      ([key, value]): Forge =>
        (parts) =>
          withManifest(parts, (manifest) => {
            const entries = manifest.entries as Record<string, number>;
            return {
              ...manifest,
              entries: { ...entries, [key]: entries[key] === value ? value + 1 : value },
            };
          }),
    ),
  'a manifest that is no manifest': fc.oneof(fc.json(), anyHarm, fc.constant(deep(5000))).map(
    (text): Forge =>
      (parts) =>
        withPart(parts, names.manifest, `${text}\n`),
  ),
  'ends of chains that are none': fc
    .tuple(fc.constantFrom('less', 'more', 'another hash', 'another device', 'one more', 'none'), fc.uuid())
    .map(
      ([how, other]): Forge =>
        (parts) =>
          withManifest(parts, (manifest) => {
            const [head, ...rest] = manifest.heads as { device: string; counter: number; hash: string }[];
            if (!head) throw new Error('a record with no end');
            const { device, counter, hash } = head;
            const another = { device: other, counter, hash };
            const heads = {
              less: [{ device, counter: counter - 1, hash }],
              more: [{ device, counter: counter + 1, hash }],
              'another hash': [{ device, counter, hash: hash.replace(/^./, (c) => (c === '0' ? '1' : '0')) }],
              'another device': [another],
              'one more': [head, another],
              none: [],
            }[how];
            return { ...manifest, heads: [...(heads ?? []), ...rest] };
          }),
    ),
  'a page filed as a picture, with every hash right': anyHarm.map(
    (text): Forge =>
      (parts) => {
        const page = new TextEncoder().encode(text);
        const file = { sha256: bytesToHex(sha256(page)), bytes: page.length, type: 'image/jpeg' };
        const others = new Map([...parts].filter(([name]) => !name.startsWith('files/')));
        return withManifest(withPart(others, `files/${file.sha256}.jpg`, page), (manifest) => ({
          ...manifest,
          files: [file],
        }));
      },
  ),
  'a picture that is a page': anyHarm.map(
    (text): Forge =>
      (parts) => {
        const [name = '', bytes = new Uint8Array()] =
          [...parts].find(([one]) => one.startsWith('files/')) ?? [];
        const page = new TextEncoder().encode(text.padEnd(bytes.length, ' ')).slice(0, bytes.length);
        return withPart(parts, name, page);
      },
  ),
};

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
      reasons.set(result.refusal.code, (reasons.get(result.refusal.code) ?? 0) + 1);
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
