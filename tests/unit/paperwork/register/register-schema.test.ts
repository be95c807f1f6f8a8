import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { RegisterData, registerText } from '../../../../src/paperwork/register/register-data';
import { registerSchema } from '../../../support/register-schema';
import { anyCase, registerOf } from './any-register';

const published = JSON.parse(
  readFileSync(new URL('../../../../public/register-1.schema.json', import.meta.url), 'utf8'),
);
/** Its formats come with patterns of their own, which are held. */
const validate = new Ajv2020({ strict: true, validateFormats: false, allErrors: true }).compile(published);

describe('the published schema of a register', () => {
  test('is as the code has it; npm run paper-schema writes it anew', async () => {
    await expect(registerSchema()).toMatchFileSnapshot('../../../../public/register-1.schema.json');
  });

  test('finds any register in order', () => {
    fc.assert(
      fc.property(anyCase, (made) => {
        const data: unknown = JSON.parse(registerText(registerOf(made)));
        expect(validate(data), JSON.stringify(validate.errors)).toBe(true);
      }),
      { numRuns: 100 },
    );
  });

  const broken: readonly (readonly [string, (data: RegisterData) => unknown])[] = [
    ['an empty text', (data) => ({ ...data, madeBy: '' })],
    ['a member too many', (data) => ({ ...data, more: 1 })],
    ['no hash', ({ contentHash: _, ...data }) => data],
    ['another version', (data) => ({ ...data, v: 2 })],
    ['no entries', ({ entries: _, ...data }) => data],
    ['a part that there is none of', (data) => withLine(data, { group: 'other' })],
    ['a line without its hash', (data) => withLine(data, { hash: undefined })],
    ['a standing that there is none of', (data) => withLine(data, { standing: 'gone' })],
    ['an entry without its place in the chain', (data) => withEntry(data, { counter: undefined })],
    ['an entry with more than an entry has', (data) => withEntry(data, { more: 1 })],
    ['a chain without hashes', (data) => ({ ...data, links: [{ device: 'a', first: 1, hashes: [] }] })],
  ];
  const withLine = (data: RegisterData, change: object) => ({
    ...data,
    lines: data.lines.map((line) => ({ ...line, ...change })),
  });
  const withEntry = (data: RegisterData, change: object) => ({
    ...data,
    entries: data.entries.map((one) => ({ ...one, entry: { ...one.entry, ...change } })),
  });

  test.each(broken)('refuses %s, as the code does', (_, change) => {
    const [made] = fc.sample(
      anyCase.map(registerOf).filter(({ lines }) => lines.length > 0),
      { numRuns: 1, seed: 1 },
    );
    if (!made) throw new Error('no register');
    const wrong = JSON.parse(JSON.stringify(change(made)));
    expect(validate(wrong)).toBe(false);
    expect(RegisterData.safeParse(wrong).success).toBe(false);
  });
});
