/** The tables of the summary of a year, read back by a CSV reader that is not ours. */
import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import { tableFiles } from '../../../../src/paperwork/tables/tables-of';
import type { YearData } from '../../../../src/paperwork/year/year-data';
import { yearTables } from '../../../../src/paperwork/year/year-tables';
import { emptyPaper, handPaper } from './hand-paper';

type Row = Readonly<Record<string, string>>;

/** The rows of a table as a program gets them. */
function rowsOf(data: YearData, table: string): Row[] {
  const file = tableFiles(yearTables(data), '.', false).find(
    ({ folder, name }) => folder === 'programs' && name === `${table}.csv`,
  );
  if (!file) throw new Error(`no table ${table}`);
  return parse(new TextDecoder().decode(file.bytes), { columns: true, bom: true });
}

const sum = (rows: readonly Row[]): number => rows.reduce((so, row) => so + Number(row.unrounded), 0);

describe('the tables of a year that was worked by hand', () => {
  const data = handPaper();

  test('add up to what was worked by hand', () => {
    const copper = rowsOf(data, 'balances');
    const on = (side: string) => copper.filter((row) => row.side === side && row.row !== 'in all');
    expect([sum(on('in')), sum(on('out'))]).toEqual([expect.closeTo(110, 9), expect.closeTo(110, 9)]);
    const months = rowsOf(data, 'waste-by-month').filter((row) => row.kind !== 'none');
    expect(months.map((row) => [row.month, row.unit])).toEqual([
      ['2028-02', 'kg'],
      ['2028-03', 'kg'],
    ]);
    expect(sum(months)).toBeCloseTo(28.8, 9);
    const left = rowsOf(data, 'handed-over');
    expect(left.map((row) => [row.on, row.container, row.counted, row['proof on']])).toEqual([
      ['2028-03-20', 'C-01', 'no', 'not determined'],
      ['2028-04-10', 'C-01', 'yes', 'not determined'],
      ['2028-04-10', 'C-02', 'yes', 'not determined'],
    ]);
    expect(sum(left.filter((row) => row.counted === 'yes'))).toBeCloseTo(31, 9);
  });

  test('have a row for every line of the working, and say what nobody determined', () => {
    expect(rowsOf(data, 'working')).toHaveLength(data.working.length);
    const nickel = rowsOf(data, 'for-a-gram-of-silver').filter((row) => row.what === 'Nickel to waste');
    expect(nickel.map((row) => row['for a gram likely'])).toEqual(['not determined', 'not determined']);
  });

  test('of a record in which nothing stands have heads alone', () => {
    for (const table of yearTables(emptyPaper()))
      expect(table.name === 'waste-by-month' ? table.rows.length : table.rows).toEqual(
        table.name === 'waste-by-month' ? 12 : [],
      );
  });
});
