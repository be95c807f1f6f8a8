/** Backups in the hands of programs that are not ours: Python's own zipfile, json and hashlib; sha256sum; age of Debian. */
import 'fake-indexeddb/auto';
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { readBackup } from '../../../../src/storage/backup/read-backup';
import { age } from '../../../support/age';
import { anotherPhone, backedUp, entriesIn, marked, opened, person, says } from './invented-record';

let folder = '';
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'leesbook-backup-'));
  await anotherPhone();
});
afterEach(async () => {
  rmSync(folder, { recursive: true });
  await anotherPhone();
});

async function workshop() {
  const record = await opened();
  await says(record, person('Maren'), person('Tobias “T” Ødegård ☂ \u2028 <b>'), await marked(record));
  return record;
}

async function saved(name: string, passphrase: string | null = null): Promise<string> {
  const path = join(folder, name);
  writeFileSync(path, new Uint8Array(await (await backedUp(passphrase)).file.arrayBuffer()));
  return path;
}

const run = (program: string, ...args: readonly string[]): string =>
  execFileSync(program, [...args], { encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'], cwd: folder });

/** As whoever finds the file does it: by what its READ-ME says. */
function checkedByReadMe(path: string): string {
  const readMe =
    run('python3', '-m', 'zipfile', '-e', path, folder) + readFileSync(join(folder, 'READ-ME.txt'), 'utf8');
  const [, program = ''] = readMe.split('---- check.py ----\n');
  writeFileSync(join(folder, 'check.py'), program);
  return run('python3', 'check.py', path);
}

describe('a plain backup', () => {
  test('is checked by the lines of Python in its READ-ME', async () => {
    await workshop();
    expect(checkedByReadMe(await saved('backup.zip'))).toContain(
      '3 entries and 1 photos and files are as they were written',
    );
  });

  test('of which a byte was changed is not whole by them either', async () => {
    await workshop();
    const path = await saved('backup.zip');
    checkedByReadMe(path);
    const bytes = readFileSync(path);
    const at = bytes.indexOf(Buffer.from([0xff, 0xd8, 0xff, 0xe0])) + 4;
    bytes[at] = (bytes[at] ?? 0) ^ 1;
    writeFileSync(path, bytes);
    expect(() => run('python3', 'check.py', path)).toThrow(/not as it was made/);
  });

  test('holds each photo under the hash that sha256sum gives, and each entry as it lies in the store', async () => {
    const record = await workshop();
    run('python3', '-m', 'zipfile', '-e', await saved('backup.zip'), folder);
    const name = run('ls', 'files').trim();
    expect(run('sha256sum', `files/${name}`).slice(0, 64)).toBe(name.replace(/\.jpg$/, ''));
    const lines = readFileSync(join(folder, 'entries.ndjson'), 'utf8').split('\n').slice(0, -1);
    expect(lines.map((line) => JSON.parse(line))).toEqual(await entriesIn(record));
  });
});

describe('a locked backup', () => {
  test('is opened by age, and is then the plain one', async () => {
    await workshop();
    const [locked, out] = [await saved('backup.zip.age', 'weir yard six ☂'), join(folder, 'backup.zip')];
    age('weir yard six ☂', '--decrypt', '--output', out, locked);
    expect(checkedByReadMe(out)).toContain('3 entries');
    expect(() => age('weir yard seven', '--decrypt', '--output', join(folder, 'not.zip'), locked)).toThrow(
      /passphrase/,
    );
  });

  test('that age locked is opened here', async () => {
    await workshop();
    const [plain, locked] = [await saved('backup.zip'), join(folder, 'again.zip.age')];
    age('weir yard six', '--encrypt', '--passphrase', '--output', locked, plain);
    const result = await readBackup(new Uint8Array(readFileSync(locked)), 'weir yard six');
    expect(result).toMatchObject({ ok: true, backup: { files: { length: 1 } } });
  });
});
