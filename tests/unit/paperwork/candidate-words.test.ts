/** Codes and what is missing in plain words, and a figure against its limit as one line. */
import Decimal from 'decimal.js';
import { describe, expect, test } from 'vitest';
import {
  codeText,
  indicationOf,
  meaningOf,
  nameOfLack,
  namesOfLacks,
} from '../../../src/paperwork/candidate-words';
import { groundText } from '../../../src/paperwork/ground-words';
import { exact, given, within } from '../../../src/quantities/figure';
import { toxicityCodes } from '../../../src/reference/rcra-tables';
import { statements } from '../../../src/reference/statements-tables';

describe('a code', () => {
  test.each([
    ['clp', 'Skin Sens. 1 H317', 'May cause an allergic skin reaction.'],
    ['clp', 'EUH071', statements.EUH071.text],
    ['rcra', 'D002', 'corrosive'],
    ['rcra', 'D011', 'toxic: silver'],
    ['rcra-ldr', 'UTS Ni', 'nickel, universal standard'],
    ['california', 'STLC Tl', 'thallium in the extract'],
    ['eu-hp', 'HP 14', 'ecotoxic'],
    ['waste-list', '11 02 07*', 'other wastes of non-ferrous hydrometallurgy that hold hazardous substances'],
    ['transport', 'UN 3264', 'CORROSIVE LIQUID, ACIDIC, INORGANIC, N.O.S.'],
    ['rcra', 'K999', ''],
  ] as const)('of %s, %s, means “%s”', (scheme, code, means) => {
    expect(meaningOf({ scheme, code })).toBe(means);
  });

  test('that stands for several entries has the words that they share, or those of the entry that is meant', () => {
    expect(meaningOf({ scheme: 'transport', code: 'UN 2031' })).toBe('NITRIC ACID');
    const candidate = {
      scheme: 'transport',
      code: 'UN 2031',
      entry: { name: 'NITRIC ACID with less' },
    } as const;
    expect(meaningOf(candidate)).toBe('NITRIC ACID with less');
  });

  test('keeps its numbers beside it', () => {
    expect(codeText('Acute Tox. 4 (oral) H302')).toBe('Acute Tox.\u00a04 (oral)\u00a0H302');
    expect(codeText('UTS Ni')).toBe('UTS\u00a0Ni');
  });

  test('of each toxic element is called toxic on a label, and one that is unknown is called nothing', () => {
    for (const code of toxicityCodes) expect(indicationOf(code)).toEqual(['toxic']);
    expect(indicationOf('D002')).toEqual(['corrosive']);
    expect(indicationOf('K999')).toEqual([]);
  });
});

test.each([
  ['Pb', 'lead'],
  ['Tl', 'thallium'],
  ['HNO3', 'nitric acid'],
  ['TCLP of Ag', 'silver in the TCLP extract'],
  ['WET of Cu', 'copper in the WET extract'],
  ['Ni, filtered', 'nickel, filtered'],
  ['total of Cd', 'cadmium in all of it'],
  ['TCLP of Pb to below 5 mg/L', 'lead in the TCLP extract, by a method that sees less than 5 mg/L'],
  ['Hg, filtered to below 0.2 mg/L', 'mercury, filtered, by a method that sees less than 0.2 mg/L'],
  ['acid reserve', 'acid reserve'],
])('what is missing, %s, is called “%s”', (lack, name) => {
  expect(nameOfLack(lack)).toBe(name);
});

test('pH stays pH at the beginning of a sentence', () => {
  expect(namesOfLacks(['pH'])).toBe('pH');
  expect(namesOfLacks(['Pb', 'Ba'])).toBe('Lead and barium');
});

test('a figure against its limit has its range, and the limit as many digits as the law', () => {
  const figure = given({
    origin: 'share',
    sentence: 'Share of a salt by mass',
    value: '0.84',
    unit: '%',
    how: 'assay',
    spread: within(new Decimal('0.06')),
  });
  const limit = given({
    origin: 'limit',
    sentence: 'Limit',
    value: '0.30',
    unit: '%',
    how: 'constant',
    spread: exact,
  });
  expect(groundText({ figure, limit }, '.')).toBe(
    'Share of a salt by mass = 0.84\u202f% (0.78 to 0.90), limit 0.3\u202f%',
  );
  expect(groundText({ figure, limit }, ',')).toContain('limit 0,3\u202f%');
});
