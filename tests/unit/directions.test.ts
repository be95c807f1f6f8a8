import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { breaches } from './import-directions';

const root = join(import.meta.dirname, '../..');

const sources = Object.fromEntries(
  readdirSync(join(root, 'src'), { recursive: true, encoding: 'utf8' })
    .filter((path) => /\.tsx?$/.test(path) && !path.endsWith('.d.ts'))
    .map((path) => {
      const name = `src/${path.replaceAll('\\', '/')}`;
      return [name, readFileSync(join(root, name), 'utf8')] as const;
    }),
);

describe('the rooms of this project', () => {
  it('import downwards only, and take nothing from clock, chance or browser where they reckon', () => {
    expect(Object.keys(sources).length).toBeGreaterThan(4);
    expect(breaches(sources)).toEqual([]);
  });
});

const strays: readonly (readonly [path: string, source: string, breach: string])[] = [
  ['src/rules/a.ts', "import { b } from '../safety/b';", 'rules imports safety'],
  ['src/safety/a.ts', "import { b } from '../rules/b';", 'safety imports rules'],
  ['src/storage/a.ts', "import { b } from '../paperwork/b';", 'storage imports paperwork'],
  ['src/paperwork/a.ts', "export * from '../storage/b';", 'paperwork imports storage'],
  ['src/ui/a.tsx', "import type { B } from '../chemistry/b';", 'ui imports chemistry'],
  ['src/reference/a.ts', "import { b } from '../quantities/b';", 'reference imports quantities'],
  ['src/ledger/deep/a.ts', "const b = await import('../../screens/b');", 'ledger imports screens'],
  ['src/chemistry/a.ts', "type B = import('../app/b').B;", 'chemistry imports app'],
  ['src/rules/a.ts', "const b = import.meta.glob(['../app/*.ts']);", 'rules imports app'],
  ['src/app/a.ts', "import { openDB } from 'idb';", 'app imports the package idb'],
  ['src/ledger/a.ts', "import { h } from 'preact/hooks';", 'ledger imports the package preact/hooks'],
  ['src/rules/a.ts', "import c from '../../checklists/leach.json';", 'rules imports checklists/leach.json'],
  ['src/ui/a.ts', "import { join } from 'node:path';", 'imports node:path'],
  ['src/cellar/a.ts', 'export {};', 'in no room'],
  ['src/rules/a.ts', 'export const due = Date.now();', 'rules reads Date.now'],
  ['src/rules/a.ts', 'export const due = new Date();', 'rules reads new Date()'],
  ['src/chemistry/a.ts', 'export const x = () => Math.random();', 'chemistry reads Math.random'],
  ['src/ledger/a.ts', 'export const id = crypto.randomUUID();', 'ledger reads crypto'],
  ['src/safety/a.ts', 'export const w = { width: window.innerWidth };', 'safety reads window'],
  ['src/rules/a.ts', "import { isPast } from 'date-fns';", 'rules reads isPast'],
];

describe('the check of the directions', () => {
  it.each(strays)('finds the stray in %s: %s', (path, source, breach) => {
    const found = breaches({ [path]: source });
    expect(found).toHaveLength(1);
    expect(found[0]).toContain(breach);
  });

  it('lets through what is allowed', () => {
    expect(
      breaches({
        'src/main.tsx': "import './storage/b'; document.title = String(Date.now());",
        'src/safety/a.ts': "import leach from '../../checklists/leach.json'; export { leach };",
        'src/screens/a.tsx':
          "import { b } from '../ui/b'; import { c } from '../ledger/c'; navigator.share(b, c);",
        'src/storage/a.ts': "import { openDB } from 'idb'; export const now = () => [openDB, Date.now()];",
        'src/rules/a.ts':
          "import { addDays } from 'date-fns'; type D = { document: string }; export const due = (document: D, at: string) => addDays(new Date(at), document.document.length);",
      }),
    ).toEqual([]);
  });
});
