import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { aboutBackup } from '../../../../src/storage/backup/about-backup';
import { pdf, picture, read } from './invented-record';

const kept = (name: string) => new Blob([readFileSync(new URL(`../kept/${name}`, import.meta.url))]);

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
