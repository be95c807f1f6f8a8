/** An opening that was kept is gone on from only by the code that worked it out: the hash of that code is kept with it. */
import { mkdirSync, mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { ledgerHash } from '../../../.ci/ledger-hash.mjs';

const files = [
  'src/reference/limits.json',
  'src/quantities/figure.ts',
  'src/chemistry/acid.ts',
  'src/safety/meets.ts',
  'src/rules/clocks/day.ts',
  'src/ledger/entries/body.ts',
  'src/screens/today.ts',
  'src/ledger/README.md',
  'checklists/leach-start.json',
  'checklists/at-a-place/hood.json',
];

let root: string;
const packageJson = (told: object): void => writeFileSync(join(root, 'package.json'), JSON.stringify(told));
const hash = (): string => ledgerHash(pathToFileURL(`${root}/`));

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'ledger-hash-'));
  for (const file of files) {
    mkdirSync(join(root, file, '..'), { recursive: true });
    writeFileSync(join(root, file), 'one');
  }
  packageJson({ version: '1', dependencies: { 'decimal.js': '1.0.0' } });
});

afterEach(() => rmSync(root, { recursive: true }));

test('it is another one with any change of what the ledger works with', () => {
  const before = hash();
  expect(hash()).toBe(before);
  const changing = files.filter((file) => {
    writeFileSync(join(root, file), 'other');
    const now = hash();
    writeFileSync(join(root, file), 'one');
    return now !== before;
  });
  expect(changing).toEqual(files.filter((file) => !/README|screens/.test(file)));
});

test('a file that is new, gone or called otherwise makes it another one', () => {
  const seen = new Set([hash()]);
  renameSync(join(root, 'src/chemistry/acid.ts'), join(root, 'src/chemistry/base.ts'));
  seen.add(hash());
  writeFileSync(join(root, 'src/rules/more.json'), '');
  seen.add(hash());
  rmSync(join(root, 'checklists/at-a-place/hood.json'));
  expect(seen.add(hash()).size).toBe(4);
});

test('another version of a library makes it another one, another version of the app does not', () => {
  const before = hash();
  packageJson({ version: '2', dependencies: { 'decimal.js': '1.0.0' } });
  expect(hash()).toBe(before);
  packageJson({ version: '1', dependencies: { 'decimal.js': '1.0.1' } });
  expect(hash()).not.toBe(before);
});
