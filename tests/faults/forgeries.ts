/** Backups forged by somebody who makes the hashes fit, each wrong in a way of its own, and for which reason it is refused. */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import fc from 'fast-check';
import type { Entry } from '../../src/ledger/entries/entry';
import { canonicalText, seal } from '../../src/ledger/seal';
import { names } from '../../src/storage/backup/manifest';
import type { BackupRefusal } from '../../src/storage/backup/refusal';
import { newId, person } from '../unit/storage/backup/invented-record';
import { linesOf, type Parts, textOf, withEnds, withLines, withManifest, withPart } from './forged-backup';

export type Forge = (parts: Parts) => Parts | Promise<Parts>;

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
export const forgeries: Readonly<Record<string, fc.Arbitrary<Forge>>> = {
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
        return withEnds(replaced(parts, n, resealed(linesOf(parts, names.entries)[n], changed)));
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
  'a line that says the same otherwise': fc
    .constantFrom<(line: string) => string>(
      (line) => `${line} `,
      (line) => line.replace('{', '{ '),
      (line) => line.replace(/"counter":(\d+)/, '"counter":$1.0'),
      (line) => line.replace('Z"', '\\u005a"'),
      (line) => JSON.stringify(Object.fromEntries(Object.entries(entry(line)).toReversed())),
    )
    .chain((otherwise) => fc.nat(3).map((n) => [otherwise, n] as const))
    .map(
      ([otherwise, n]): Forge =>
        (parts) =>
          withManifest(replaced(parts, n, otherwise(linesOf(parts, names.entries)[n] ?? ''))),
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
  'a letter that is none, sealed as the sign for it': fc.constantFrom(0xff, 0xc0, 0x80, 0xed).map(
    (byte): Forge =>
      (parts) => {
        const last = linesOf(parts, names.entries).length - 1;
        const sealed = resealed(linesOf(parts, names.entries)[last], { body: person('Dorte \ufffd') });
        const named = withEnds(replaced(parts, last, sealed));
        const bytes = [...(named.get(names.entries) ?? [])];
        bytes.splice(bytes.lastIndexOf(0xef), 3, byte);
        return withManifest(withPart(named, names.entries, new Uint8Array(bytes)));
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
    .tuple(fc.constantFrom('count', 'bytes'), fc.oneof(fc.integer({ min: -5, max: 20 }), fc.nat(2 ** 31 - 1)))
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
  'a manifest that was changed, with its hash left': fc
    .constantFrom('"record":"demo"', '"madeAt":"2020-01-01T00:00:00.000Z"')
    .map(
      (by): Forge =>
        (parts) => {
          const [member = ''] = by.split(':');
          const manifest = textOf(parts, names.manifest);
          return withPart(parts, names.manifest, manifest.replace(new RegExp(`${member}:"[^"]*"`), by));
        },
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

/** For which reasons it is refused: another one would mean that nobody has looked for this. */
export const reasonsFor: Readonly<Record<string, readonly BackupRefusal['code'][]>> = {
  'a part that is none of ours': ['unexpected-file'],
  'a part that is missing': ['missing-file', 'another-archive'],
  'a line twice': ['twice'],
  'two entries of one id': ['twice'],
  'two entries at one place of a chain': ['twice'],
  'an entry that is missing': ['entries-missing', 'heads-differ'],
  'an entry that was changed and sealed anew': ['chain-broken'],
  'a hash that does not fit': ['entry-wrong'],
  'a field that no entry has': ['entry-wrong'],
  'a line that is no entry': ['line-unreadable', 'entry-wrong'],
  'objects within objects': ['line-unreadable', 'too-large'],
  'a line that says the same otherwise': ['line-unreadable'],
  'a line without end': ['line-unreadable'],
  'bytes that are no text': ['line-unreadable'],
  'a letter that is none, sealed as the sign for it': ['line-unreadable'],
  'a part that swells': ['too-large'],
  'a manifest that counts otherwise': ['part-differs', 'too-large', 'manifest-wrong'],
  'a manifest that was changed, with its hash left': ['part-differs'],
  'ends of chains that are none': ['heads-differ'],
  'a page filed as a picture, with every hash right': ['file-of-another-kind'],
  'a picture that is a page': ['part-differs'],
};
