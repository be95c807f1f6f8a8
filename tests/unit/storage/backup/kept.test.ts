import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { aboutBackup } from '../../../../src/storage/backup/about-backup';
import { pdf, picture, read } from './invented-record';

const kept = (name: string) => new Blob([readFileSync(new URL(`../kept/${name}`, import.meta.url))]);

test('a backup of version 2 is read for ever, and tells what it goes on without', async () => {
  const backup = await read(kept('backup-2.zip'));
  const { without, ...about } = aboutBackup(backup);
  expect(about).toMatchObject({ workshop: 'Weir Yard', entries: 3, files: 1, damaged: 0, missing: 1 });
  const at = '2026-02-28T17:30:00.000Z';
  expect(without).toMatchObject([
    { what: 'missing', at, device: backup.heads[0]?.device, from: 2, to: 2 },
    { what: 'lost', at, entries: 3, heads: [{ counter: 3 }] },
    { what: 'entry', at, counter: 2 },
    { what: 'record', at, entries: 7 },
  ]);
  const bodies = [...backup.entries()].map(({ body }) => body.kind);
  expect(bodies).toEqual(['workshop-described', 'person-added', 'container-marked']);
  expect(await Promise.all(backup.files.map(backup.file))).toEqual([picture(1)]);
});

describe('a backup of version 1', () => {
  test.each([
    ['plain', 'backup-1.zip', undefined],
    ['locked', 'backup-1.zip.age', 'weir yard six'],
  ] as const)('is read for ever, %s', async (_, name, passphrase) => {
    const backup = await read(kept(name), passphrase);
    expect(aboutBackup(backup)).toEqual({
      madeAt: '2026-03-02T08:00:00.000Z',
      version: '0.1.0',
      record: 'real',
      workshop: 'Weir Yard',
      entries: 4,
      devices: 2,
      newest: '2026-03-02T08:00:00.000Z',
      files: 2,
      filesMissing: 0,
      damaged: 1,
      missing: 1,
      without: [],
    });
    const bodies = [...backup.entries()].map(({ body }) => body);
    expect(bodies.map(({ kind }) => kind)).toEqual([
      'workshop-described',
      'person-added',
      'container-marked',
      'proof-filed',
    ]);
    expect(bodies[1]).toMatchObject({ name: 'Tobias “T” Ødegård ☂ \u2028 <b>' });
    const files = await Promise.all(backup.files.map(backup.file));
    expect(files).toEqual(expect.arrayContaining([picture(1), pdf]));
  });
});
