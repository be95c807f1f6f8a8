/** The summary of the year that was worked by hand (`ledger/hand-year.ts`), and of a record in which nothing stands. */
import { emptyState } from '../../../../src/ledger/state';
import { yearDays } from '../../../../src/ledger/year-account';
import { yearData } from '../../../../src/paperwork/year/gather-year';
import type { YearData } from '../../../../src/paperwork/year/year-data';
import { handYear } from '../../ledger/hand-year';

const asked = {
  now: '2029-02-02T09:00:00.000Z',
  zone: 'Europe/Berlin',
  madeBy: 'Maren',
  sign: '.',
  demo: false,
} as const;

export const handPaper = (year = '2028'): YearData =>
  yearData(yearDays(year), { ...asked, state: handYear() });

export const emptyPaper = (): YearData => yearData(yearDays('2028'), { ...asked, state: emptyState });
