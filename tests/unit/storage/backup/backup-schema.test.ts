import 'fake-indexeddb/auto';
import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020';
import { strFromU8, unzipSync } from 'fflate';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { Manifest } from '../../../../src/storage/backup/manifest';
import type { Without } from '../../../../src/storage/marker';
import { backupEntrySchema, backupSchema } from '../../../support/backup-schema';
import { anotherPhone, backedUp, marked, monday, opened, person, says } from './invented-record';

const publicFile = (name: string): string => `../../../../public/${name}`;

const validator = (name: string) =>
  // Its formats come with patterns of their own, which are held.
  new Ajv2020({ strict: true, validateFormats: false, allErrors: true }).compile(
    JSON.parse(readFileSync(new URL(publicFile(name), import.meta.url), 'utf8')),
  );

beforeEach(anotherPhone);
afterEach(anotherPhone);

const lost: Without = { what: 'lost', at: monday, entries: 2, heads: [] };

async function unzipped(
  without: readonly Without[] = [],
): Promise<{ readonly manifest: Manifest; readonly lines: readonly string[] }> {
  const record = await opened();
  await says(record, person('Ana'), await marked(record));
  const files = unzipSync(new Uint8Array(await (await backedUp(null, without)).file.arrayBuffer()));
  const text = (name: string) => strFromU8(files[name] ?? new Uint8Array());
  return { manifest: JSON.parse(text('manifest.json')), lines: text('entries.ndjson').trim().split('\n') };
}

describe('the published schemas of a backup', () => {
  test('are as the code has them; npm run paper-schema writes them anew', async () => {
    await expect(backupSchema(1)).toMatchFileSnapshot(publicFile('backup-1.schema.json'));
    await expect(backupSchema(2)).toMatchFileSnapshot(publicFile('backup-2.schema.json'));
    await expect(backupEntrySchema()).toMatchFileSnapshot(publicFile('backup-entry-1.schema.json'));
  });

  test('find a backup in order', async () => {
    const { manifest, lines } = await unzipped();
    const [ofManifest, ofEntry] = [
      validator('backup-1.schema.json'),
      validator('backup-entry-1.schema.json'),
    ];
    expect(ofManifest(manifest), JSON.stringify(ofManifest.errors)).toBe(true);
    for (const line of lines) expect(ofEntry(JSON.parse(line)), JSON.stringify(ofEntry.errors)).toBe(true);
  });

  test('find one of a record that goes on without something in order, as version 2 and as no other', async () => {
    const { manifest } = await unzipped([lost]);
    expect(manifest).toMatchObject({ v: 2, without: [lost] });
    const ofManifest = validator('backup-2.schema.json');
    expect(ofManifest(manifest), JSON.stringify(ofManifest.errors)).toBe(true);
    expect(validator('backup-1.schema.json')(manifest)).toBe(false);
    for (const wrong of [
      { ...manifest, without: [] },
      { ...manifest, without: [{ ...lost, at: 'yesterday' }] },
      { ...manifest, v: 1 },
    ]) {
      expect(ofManifest(wrong)).toBe(false);
      expect(Manifest.safeParse(wrong).success).toBe(false);
    }
  });

  const broken: readonly (readonly [string, (manifest: Manifest) => unknown])[] = [
    ['another version', (manifest) => ({ ...manifest, v: 2 })],
    ['a member too many', (manifest) => ({ ...manifest, more: 1 })],
    ['no hash', ({ contentHash: _, ...manifest }) => manifest],
    [
      'a file of another kind',
      ({ files, ...manifest }) => ({ ...manifest, files: files.map((f) => ({ ...f, type: 'text/html' })) }),
    ],
    [
      'a count below nothing',
      ({ entries, ...manifest }) => ({ ...manifest, entries: { ...entries, count: -1 } }),
    ],
    ['no end of a chain', ({ heads: _, ...manifest }) => manifest],
  ];

  test.each(broken)('refuse %s, as the code does', async (_, change) => {
    const { manifest } = await unzipped();
    const wrong = JSON.parse(JSON.stringify(change(manifest)));
    expect(validator('backup-1.schema.json')(wrong)).toBe(false);
    expect(Manifest.safeParse(wrong).success).toBe(false);
  });
});
