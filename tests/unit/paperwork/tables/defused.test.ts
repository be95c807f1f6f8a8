import { describe, expect, test } from 'vitest';
import { isFormula, looksLikeNumber } from '../../../../src/paperwork/tables/defused';

/** Every character there is, but for halves of pairs. */
function* characters(): Generator<string> {
  for (let code = 0; code <= 0x10ffff; code += 1)
    if (code < 0xd800 || code > 0xdfff) yield String.fromCodePoint(code);
}

describe('a formula', () => {
  test('is known by its sign in every form that Unicode counts as the same', () => {
    const same = [...characters()].filter((character) => /^[=+@-]/.test(character.normalize('NFKC')));
    expect(same.length).toBeGreaterThan(10);
    expect(same.filter((sign) => !isFormula(`${sign}A1`))).toEqual([]);
  });

  test.each([
    '=1+1',
    '+49 30 1234',
    '-2+3',
    '@SUM(A1)',
    "=cmd|' /C calc'!A0",
    '\t=1',
    '\tharmless',
    '\rharmless',
    '\nharmless',
    '  =1',
    '\u00a0=1',
    '\u200b=1',
    '\u202e=1',
    '\ufeff=1',
    '\u0000=1',
    '−1+1',
    '+5',
    '-5.',
    '--5',
    '-1,5,6',
    "'=1",
    "'s-Hertogenbosch",
  ])('or what may be taken for one is %j', (text) => {
    expect(isFormula(text)).toBe(true);
  });

  test.each(['-5', '-0.5', '-0,5', '5', 'a=b', 'C-07', '1+1', 'x@y.example', '"=1"', ''])(
    'is not %j',
    (text) => {
      expect(isFormula(text)).toBe(false);
    },
  );
});

describe('text that a spreadsheet would change', () => {
  test.each([
    '007',
    '2031',
    '17.6',
    '17,6',
    '3-4',
    '3/4',
    '3\u20134',
    '1.5.26',
    '10 01 02',
    '2026-05-17',
    '14:30',
    '2:30 pm',
    '4 a',
    '1E5',
    '12e-3',
    'Mar-1',
    'MAR1',
    '1 Mar',
    '14 May 2026',
    'März 4',
    '3 déc. 2026',
    '50 %',
    '$ 5',
    '5 €',
    '(12)',
    ' 7 ',
    "1'000",
  ])('is %j', (text) => {
    expect(looksLikeNumber(text)).toBe(true);
  });

  test.each([
    'C-07',
    'B-16',
    'Tub 3',
    '16 05 06*',
    'UN 2031',
    '0.2 by paper, 17 May 2026',
    '10 L',
    '67 % of it',
    'May',
    '-',
    '...',
    'not determined',
    'none',
    'E12',
    '00000000-0000-7000-8000-00000000000e',
    '00000000-0000-7000-8000-000000000014',
    '2026-05-12T08:00:00.000Z',
  ])('is not %j', (text) => {
    expect(looksLikeNumber(text)).toBe(false);
  });

  test('is looked for in no more time than the text is long', () => {
    const long = `${'1'.repeat(200_000)}x`;
    const from = performance.now();
    expect(looksLikeNumber(long) || isFormula(`${' '.repeat(200_000)}x`)).toBe(false);
    expect(performance.now() - from).toBeLessThan(5_000);
  });
});
