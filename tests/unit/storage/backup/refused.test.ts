import 'fake-indexeddb/auto';
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { strFromU8, unzipSync, type Zippable, zipSync } from 'fflate';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Entry } from '../../../../src/ledger/entries/entry';
import { canonicalText, hashOf } from '../../../../src/ledger/seal';
import { type Manifest, sealText } from '../../../../src/storage/backup/manifest';
import { readBackup } from '../../../../src/storage/backup/read-backup';
import { anotherPhone, backedUp, marked, opened, person, says } from './invented-record';

beforeEach(anotherPhone);
afterEach(anotherPhone);

const hexOf = (bytes: Uint8Array): string => bytesToHex(sha256(bytes));

/** Of characters that do not pack well: longer than any line may be. */
const longText = Array.from({ length: 17_000 }, (_, n) => hexOf(utf8ToBytes(String(n)))).join('');

/** What somebody has who can make every hash and seal anew. */
type Forged = { manifest: Manifest; entries: Entry[]; files: Record<string, Uint8Array> };

async function taken(): Promise<Forged> {
  const record = await opened();
  await says(record, person('Ana'), person('Ben'), await marked(record));
  const files = unzipSync(new Uint8Array(await (await backedUp()).file.arrayBuffer()));
  const text = (name: string) => strFromU8(files[name] ?? new Uint8Array());
  return {
    manifest: JSON.parse(text('manifest.json')),
    entries: text('entries.ndjson')
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line)),
    files: { ...files },
  };
}

/** The archive sealed again, as ours are. */
function sealed(files: Zippable): Uint8Array<ArrayBuffer> {
  const zip = zipSync(files, { mtime: '2026-03-02T08:00:00.000Z' });
  const seal = utf8ToBytes(sealText('0'.repeat(64)));
  const whole = new Uint8Array(zip.length + seal.length);
  whole.set(zip);
  new DataView(whole.buffer).setUint16(zip.length - 2, seal.length, true);
  whole.set(utf8ToBytes(sealText(hexOf(whole.subarray(0, zip.length)))), zip.length);
  return whole;
}

/** All of it consistent but for what was changed: only what it says is wrong. */
function forged(
  { manifest, entries, files }: Forged,
  lines = entries.map(canonicalText),
): Uint8Array<ArrayBuffer> {
  const text = utf8ToBytes(lines.map((line) => `${line}\n`).join(''));
  const { contentHash: _, ...rest } = {
    ...manifest,
    entries: { count: lines.length, bytes: text.length, sha256: hexOf(text) },
  };
  const told = utf8ToBytes(`${canonicalText({ ...rest, contentHash: hashOf(rest) })}\n`);
  return sealed({ ...files, 'entries.ndjson': text, 'manifest.json': told });
}

const resealed = ({ hash: _, ...entry }: Entry): Entry => ({ ...entry, hash: hashOf(entry) });

const refusalOf = async (bytes: Uint8Array<ArrayBuffer>) => {
  const result = await readBackup(bytes);
  return result.ok ? 'taken' : result.refusal.code;
};

test('what is forged without a fault is taken, so that the others are refused for their fault', async () => {
  expect(await refusalOf(forged(await taken()))).toBe('taken');
});

describe('a backup made up with every hash right is refused', () => {
  const faults: readonly (readonly [string, string, (forgery: Forged) => Uint8Array<ArrayBuffer>])[] = [
    [
      'with an entry taken out of the middle',
      'entries-missing',
      (f) => forged({ ...f, entries: f.entries.filter((_, n) => n !== 1) }),
    ],
    [
      'with its last entry taken off',
      'heads-differ',
      (f) => forged({ ...f, entries: f.entries.slice(0, -1) }),
    ],
    [
      'with an entry changed',
      'entry-wrong',
      (f) =>
        forged({ ...f, entries: f.entries.map((e, n) => (n === 1 ? { ...e, zone: 'Europe/Rome' } : e)) }),
    ],
    [
      'with an entry changed and sealed anew',
      'chain-broken',
      (f) =>
        forged({
          ...f,
          entries: f.entries.map((e, n) => (n === 1 ? resealed({ ...e, zone: 'Europe/Rome' }) : e)),
        }),
    ],
    ['with an entry twice', 'twice', (f) => forged({ ...f, entries: f.entries.flatMap((e) => [e, e]) })],
    [
      'with two entries at one place',
      'twice',
      (f) =>
        forged({
          ...f,
          entries: [
            ...f.entries,
            resealed({ ...(f.entries[2] as Entry), id: '0190b3b0-0000-7000-8000-0000000000ff' }),
          ],
        }),
    ],
    [
      'with a file too many',
      'unexpected-file',
      (f) => forged({ ...f, files: { ...f.files, '../../evil.js': utf8ToBytes('alert(1)') } }),
    ],
    ['with a photo that is a page', 'file-of-another-kind', (f) => forged(withPage(f))],
    ['of a later version', 'newer-version', (f) => forged({ ...f, manifest: { ...f.manifest, v: 3 as 1 } })],
    [
      'of something else',
      'another-archive',
      (f) => forged({ ...f, manifest: { ...f.manifest, format: 'else' as 'leesbook-backup' } }),
    ],
    [
      'with more in the manifest',
      'manifest-wrong',
      (f) => forged({ ...f, manifest: Object.assign({}, f.manifest, { more: '<script>' }) }),
    ],
    [
      'with a line that is not canonical',
      'line-unreadable',
      (f) =>
        forged(
          f,
          f.entries.map((e) => JSON.stringify(e, null, 1).replaceAll('\n', '')),
        ),
    ],
    [
      'with a line deeper than any entry',
      'line-unreadable',
      (f) => forged(f, ['['.repeat(40) + ']'.repeat(40)]),
    ],
    ['with a line longer than any entry', 'line-unreadable', (f) => forged(f, [`"${longText}"`])],
    [
      'with a key for the prototype',
      'entry-wrong',
      (f) =>
        forged(
          f,
          f.entries.map((e) => canonicalText(e).replace('{', '{"__proto__":{},')),
        ),
    ],
  ];

  const withPage = (f: Forged): Forged => {
    const page = utf8ToBytes('<script>alert(1)</script>');
    const file = { sha256: hexOf(page), bytes: page.length, type: 'image/jpeg' as const };
    const { [`files/${f.manifest.files[0]?.sha256}.jpg`]: _, ...files } = f.files;
    return {
      ...f,
      manifest: { ...f.manifest, files: [file] },
      files: { ...files, [`files/${file.sha256}.jpg`]: page },
    };
  };

  test.each(faults)('%s', async (_, code, forge) => {
    expect(await refusalOf(forge(await taken()))).toBe(code);
  });
});

describe('entries that were missing when it was made', () => {
  /** Without the second of three entries, as the manifest tells it. */
  const lacking = (f: Forged, gaps: Manifest['gaps']): Uint8Array<ArrayBuffer> =>
    forged({ ...f, manifest: { ...f.manifest, gaps }, entries: f.entries.filter((_, n) => n !== 1) });
  const other = '0190b3b0-0000-7000-8000-0000000000dd';

  test.each([
    [1, 2],
    [2, 2],
    [2, 9],
  ])('are taken as told, whatever else is told: %i to %i', async (from, to) => {
    const f = await taken();
    const { device } = f.entries[0] as Entry;
    const others = [
      { device: other, from: 1, to: 7 },
      { device, from: 12, to: 13 },
    ];
    for (const gaps of [
      [...others, { device, from, to }],
      [{ device, from, to }, ...others],
    ])
      expect(await refusalOf(lacking(f, gaps))).toBe('taken');
  });

  test.each([
    [1, 1],
    [3, 9],
  ])('are refused where others are told: %i to %i', async (from, to) => {
    const f = await taken();
    const { device } = f.entries[0] as Entry;
    expect(await refusalOf(lacking(f, [{ device, from, to }]))).toBe('entries-missing');
    expect(await refusalOf(lacking(f, [{ device: other, from: 1, to: 9 }]))).toBe('entries-missing');
  });

  test('are not so many that their number is no longer exact', async () => {
    const f = await taken();
    const [first, second] = f.entries as [Entry, Entry];
    const far = resealed({ ...second, counter: 2 ** 53 - 1 });
    const { device } = first;
    const manifest = {
      ...f.manifest,
      heads: [{ device, counter: far.counter, hash: far.hash }],
      gaps: [{ device, from: 2, to: far.counter - 1 }],
    };
    expect(await refusalOf(forged({ ...f, manifest, entries: [first, far] }))).toBe('too-large');
  });
});

describe('an archive is refused', () => {
  test('that has thousands of files, after a few looks into it', async () => {
    const { files } = await taken();
    const many = Array.from({ length: 5000 }, (_, n) => [`files/${n}`, new Uint8Array()] as const);
    const file = new Blob([sealed({ ...files, ...Object.fromEntries(many) })]);
    const looks = vi.spyOn(file, 'slice');
    expect(await readBackup(file)).toMatchObject({ refusal: { code: 'unexpected-file', name: 'files/0' } });
    expect(looks.mock.calls.length).toBeLessThan(200);
  });

  test('whose list of contents has a second line, and says so', async () => {
    const { files } = await taken();
    const line = files['manifest.json'] ?? new Uint8Array();
    const twice = sealed({ ...files, 'manifest.json': new Uint8Array([...line, ...line]) });
    expect(await readBackup(twice)).toMatchObject({ refusal: { detail: 'more than one line' } });
  });

  test('that swells beyond what any record does, before it is unpacked', async () => {
    const bomb = sealed({ 'manifest.json': new Uint8Array(30 * 1024 * 1024).fill(0x20) });
    expect(await refusalOf(bomb)).toBe('too-large');
  });

  test('that was packed again, cut short, or lengthened', async () => {
    const { files } = await taken();
    const whole = new Uint8Array(await (await backedUp()).file.arrayBuffer());
    expect(await refusalOf(zipSync(files))).toBe('packed-again');
    expect(await refusalOf(whole.slice(0, -100))).toBe('broken-archive');
    expect(await refusalOf(new Uint8Array([...whole, 0]))).toBe('broken-archive');
    expect(await refusalOf(new Uint8Array())).toBe('empty');
    expect(await refusalOf(utf8ToBytes('{"format":"leesbook-backup"}'))).toBe('not-a-backup');
  });
});
