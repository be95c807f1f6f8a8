import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020';
import { describe, expect, test } from 'vitest';
import { YearData, yearText } from '../../../../src/paperwork/year/year-data';
import { yearSchema } from '../../../support/year-schema';
import { emptyPaper, handPaper } from './hand-paper';

const published = JSON.parse(
  readFileSync(new URL('../../../../public/year-paper-1.schema.json', import.meta.url), 'utf8'),
);
/** Its formats come with patterns of their own, which are held. */
const validate = new Ajv2020({ strict: true, validateFormats: false, allErrors: true }).compile(published);

describe('the published schema of the summary of a year', () => {
  test('is as the code has it; npm run paper-schema writes it anew', async () => {
    await expect(yearSchema()).toMatchFileSnapshot('../../../../public/year-paper-1.schema.json');
  });

  test.each([
    ['a year that was worked by hand', handPaper],
    ['the year after it', () => handPaper('2029')],
    ['a record in which nothing stands', emptyPaper],
  ])('finds %s in order', (_, made) => {
    const data: unknown = JSON.parse(yearText(made()));
    expect(validate(data), JSON.stringify(validate.errors)).toBe(true);
  });

  const [copper] = handPaper().balances;
  const broken: readonly (readonly [string, (data: YearData) => unknown])[] = [
    ['an empty text', (data) => ({ ...data, madeBy: '' })],
    ['a member too many', (data) => ({ ...data, more: 1 })],
    ['no hash', ({ contentHash: _, ...data }) => data],
    ['another version', (data) => ({ ...data, v: 2 })],
    ['no caution', (data) => ({ ...data, cautions: [] })],
    ['zero for a mass', (data) => ({ ...data, arose: { ...data.arose, sum: 0 } })],
    ['a day that no calendar has', (data) => ({ ...data, period: { ...data.period, last: '2028-02-30' } })],
    ['a verdict that there is none of', (data) => ({ ...data, balances: [{ ...copper, verdict: 'safe' }] })],
    ['a balance without its gaps', (data) => ({ ...data, balances: [{ ...copper, gaps: undefined }] })],
  ];

  test.each(broken)('refuses %s, as the code does', (_, change) => {
    const wrong = JSON.parse(JSON.stringify(change(handPaper())));
    expect(validate(wrong)).toBe(false);
    expect(YearData.safeParse(wrong).success).toBe(false);
  });
});
