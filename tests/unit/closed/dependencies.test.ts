/** The check of what the app stands on, tried on invented locks. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, test } from 'vitest';
import { auditOf, licenceKnown, lockFaults } from '../../../.ci/dependencies.mjs';
import { licensed } from '../../../.ci/licences.mjs';

const root = join(import.meta.dirname, '../../..');

const integrity = 'sha512-AAAA';
const asked = { dependencies: { alum: '1.2.3' } };
const lock = { '': {}, 'node_modules/alum': { version: '1.2.3', integrity } };

describe('the lock', () => {
  it('is let through where every package is pinned and has its hash', () => {
    expect(lockFaults(asked, lock)).toEqual([]);
  });

  it.each([
    '^1.2.3',
    '~1.2.3',
    '1.x',
    '*',
    'latest',
    '>=1.2.3',
    'file:../alum',
    'github:a/alum',
    'npm:other@1.2.3',
  ])('is not, where one is asked for as %s', (version) => {
    expect(lockFaults({ dependencies: { alum: version } }, lock)).toContain(
      `alum is asked for as ${version}: name one version`,
    );
  });

  it.each([
    [{ integrity: undefined }, 'has no hash'],
    [{ integrity: 'sha1-AAAA' }, 'has no hash'],
    [{ link: true }, 'is a link'],
    [{ resolved: 'git+ssh://git@a.example/alum.git#1' }, 'names where it came from'],
    [{ hasInstallScript: true }, 'runs a script'],
    [{ version: '1.2.4' }, 'another version'],
  ])('is not, where its package is %o', (change, fault) => {
    const changed = { ...lock, 'node_modules/alum': { ...lock['node_modules/alum'], ...change } };
    expect(lockFaults(asked, changed as typeof lock)).toEqual([expect.stringContaining(fault)]);
  });

  it('may hold a tool that builds a part of itself', () => {
    const tool = { version: '1.0.0', integrity, dev: true, hasInstallScript: true };
    expect(lockFaults(asked, { ...lock, 'node_modules/vat': tool })).toEqual([]);
  });
});

describe('a licence', () => {
  test.each([
    ['MIT', true],
    ['(MIT OR GPL-3.0-only)', true],
    ['MIT AND ISC', true],
    ['MIT AND GPL-3.0-only', false],
    ['GPL-3.0-only', false],
    ['SEE LICENSE IN FILE', false],
    ['none named', false],
  ])('%s is known: %s', (expression, is) => {
    expect(licenceKnown(expression)).toBe(is);
  });

  test('of every package has a text or says that there is none', () => {
    const all = licensed();
    expect(all.length).toBeGreaterThan(20);
    expect(all.filter(({ text }) => text.length < 60)).toEqual([]);
    expect(all.filter(({ text }) => text.includes('brings no text')).length).toBeLessThan(6);
  });
});

describe('what is known of faults', () => {
  it('fails for a grave one', () => {
    const vulnerabilities = { alum: { severity: 'high' }, vat: { severity: 'low' } };
    expect(auditOf(JSON.stringify({ vulnerabilities })).faults).toEqual([
      'alum has a publicly known fault: high',
    ]);
  });

  it.each(['', 'not json', '{"message":"405 Method Not Allowed"}'])(
    'is not said to be none after the answer “%s”',
    (answer) => {
      const { faults, said } = auditOf(answer);
      expect(faults).toEqual([]);
      expect(said).toContain('not asked');
    },
  );
});

test('whatever the app imports stands among its dependencies, and so on the page of the licences', () => {
  const { dependencies } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  const sources = readdirSync(join(root, 'src'), { recursive: true, encoding: 'utf8' });
  const imported = sources
    .filter((path) => /\.tsx?$/.test(path) && !path.endsWith('.d.ts'))
    .flatMap((path) => [
      ...readFileSync(join(root, 'src', path), 'utf8').matchAll(
        /(?:\bfrom|^import) '((?:@[^/']+\/)?[a-z][^/':]*)[^']*';$/gm,
      ),
    ])
    .map(([, name = '']) => name);
  const packages = new Set(imported.filter((name) => name !== 'virtual'));
  expect(packages.size).toBeGreaterThan(8);
  const listed = new Set(licensed().map(({ name }) => name));
  for (const name of packages) {
    expect(Object.keys(dependencies)).toContain(name);
    expect(listed).toContain(name);
  }
});
