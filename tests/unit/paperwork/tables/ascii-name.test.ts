import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { asciiName, uniqueNames } from '../../../../src/paperwork/tables/ascii-name';

const nasty = fc.string({ unit: fc.constantFrom(...'./\\:*?"<>|-_ \u0000\u202e~éß鉛aCON1pdf') });
const anyName = fc.oneof(nasty, fc.string({ unit: 'binary' }));

describe('the name of a file', () => {
  test.each([
    ['disposal-C-07-2026-05-17.pdf', 'disposal-C-07-2026-05-17.pdf'],
    ['disposal-Säure groß-1.pdf', 'disposal-Saure-gro-1.pdf'],
    ['../../etc/passwd', 'etc-passwd'],
    ['..\\..\\a.csv', 'a.csv'],
    ['C:\\a.csv', 'C-a.csv'],
    ['.hidden', 'file.hidden'],
    ['con', 'file-con'],
    ['NUL.csv', 'file-NUL.csv'],
    ['com1.tar.gz', 'file-com1.tar.gz'],
    ['conical.csv', 'conical.csv'],
    ['a. .csv', 'a.csv'],
    ['鉛.csv', 'file.csv'],
    ['a\u0000b\u202efdp.csv', 'a-b-fdp.csv'],
    ['a..b.csv', 'a.b.csv'],
    [`${'x'.repeat(300)}.csv`, `${'x'.repeat(100)}.csv`],
    ['', 'file'],
  ])('of %j is %j', (wanted, name) => {
    expect(asciiName(wanted)).toBe(name);
  });

  test('is short plain ASCII without a way out of its folder, whatever is asked for', () => {
    fc.assert(
      fc.property(anyName, (wanted) => {
        const name = asciiName(wanted);
        expect(name).toMatch(/^[A-Za-z0-9_][A-Za-z0-9_.-]*$/);
        expect(name).not.toMatch(/\.\.|[.-]$|^(con|prn|aux|nul|com\d|lpt\d)(\.|$)/i);
        expect(name.length).toBeLessThan(120);
        expect(asciiName(name)).toBe(name);
      }),
    );
  });
});

test('names are made different by numbers, though only capitals differ', () => {
  expect(uniqueNames(['a.csv', 'A.csv', 'a-2.csv', 'x/a.csv', 'x/a.csv', 'b'])).toEqual([
    'a.csv',
    'A-2.csv',
    'a-2-2.csv',
    'x/a.csv',
    'x/a-2.csv',
    'b',
  ]);
});
