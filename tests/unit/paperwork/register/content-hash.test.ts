/**
 * The hashes of a register worked out in another language, in the few lines that anybody can write from the schema: of data
 * without fractions, Python's own sorted and compact JSON is the canonical form of RFC 8785.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { registerText } from '../../../../src/paperwork/register/register-data';
import { anyCase, registerOf } from './any-register';

const python = `
import hashlib, json, sys
def canonical(value):
    return json.dumps(value, sort_keys=True, separators=(',', ':'), ensure_ascii=False).encode()
def computed(value, member):
    return hashlib.sha256(canonical({k: v for k, v in value.items() if k != member})).hexdigest()
out = []
for path in sys.argv[1:]:
    register = json.load(open(path, encoding='utf-8'))
    entries = [one['entry'] for one in register['entries']]
    out.append({'content': computed(register, 'contentHash'), 'entries': [computed(e, 'hash') for e in entries]})
print(json.dumps(out))
`;

test('Python finds the same content hash, and the same hash of every entry', () => {
  const registers = fc.sample(anyCase.map(registerOf), { numRuns: 60, seed: 20261130 });
  const folder = mkdtempSync(join(tmpdir(), 'register-'));
  const paths = registers.map((data, at) => {
    const path = join(folder, `${at}.json`);
    writeFileSync(path, registerText(data));
    return path;
  });
  const found: { content: string; entries: string[] }[] = JSON.parse(
    execFileSync('python3', ['-c', python, ...paths], { encoding: 'utf8' }),
  );
  rmSync(folder, { recursive: true });
  expect(found.map(({ content }) => content)).toEqual(registers.map(({ contentHash }) => contentHash));
  expect(found.map(({ entries }) => entries)).toEqual(
    registers.map(({ entries }) => entries.map(({ entry }) => entry.hash)),
  );
  expect(found.flatMap(({ entries }) => entries).length).toBeGreaterThan(100);
});
