import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

test.each(['src/chemistry', 'src/chemistry/equilibrium', 'src/chemistry/treatment'])(
  'the README of %s names each of its files',
  (room) => {
    const told = readFileSync(`${room}/README.md`, 'utf8');
    const files = readdirSync(room).filter((name) => name.endsWith('.ts'));
    expect(files.filter((name) => !told.includes(`\`${name}\``))).toEqual([]);
  },
);
