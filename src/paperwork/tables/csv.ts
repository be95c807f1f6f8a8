/**
 * A table as CSV (RFC 4180): CRLF, quotes where they are needed, UTF-8. In two forms, since one cannot serve both readers: where
 * the decimal sign is a comma, a spreadsheet reads "17.6" as the 17th of June and takes the comma between cells for a decimal sign.
 */
import Papa from 'papaparse';
import type { DecimalSign } from '../../quantities/format';
import { isFormula, looksLikeNumber } from './defused';
import { type ColumnHead, isNumber, type Table } from './table';

export type CsvForm = {
  readonly separator: ',' | ';';
  readonly sign: DecimalSign;
  /** To be opened by a double click: a mark of UTF-8 in front, and text that stays text. */
  readonly sheet: boolean;
};

/** The same wherever it is made. */
export const forPrograms: CsvForm = { separator: ',', sign: '.', sheet: false };

/** As a spreadsheet of somebody with this decimal sign wants it. */
export const forSheets = (sign: DecimalSign): CsvForm => ({
  separator: sign === ',' ? ';' : ',',
  sign,
  sheet: true,
});

/** UTF-16 units that a cell can hold: Microsoft, "Excel specifications and limits" (verified). What is more spills into other cells. */
const mostInCell = 32_767;
const cutWords = ' [cut: the whole text is in the file for programs]';

function short(text: string): string {
  if (text.length < mostInCell) return text;
  const cut = text.slice(0, mostInCell - cutWords.length - 1);
  return `${cut.replace(/[\ud800-\udbff]$/, '')}${cutWords}`;
}

function cellText(cell: string, { kind }: ColumnHead, { sign, sheet }: CsvForm): string {
  if (kind === 'number') return isNumber(cell) ? cell.replace('.', sign) : cell;
  if (kind !== 'text') return cell;
  const kept = sheet ? short(cell) : cell;
  return isFormula(kept) || (sheet && looksLikeNumber(kept)) ? `'${kept}` : kept;
}

/** With its heads in the first line and a line end after the last. */
export function csvText({ columns, rows }: Table, form: CsvForm): string {
  const data = [
    columns.map(({ name }) => name),
    ...rows.map((row) => columns.map((column, at) => cellText(row[at] ?? '', column, form))),
  ];
  const text = Papa.unparse(data, { delimiter: form.separator, newline: '\r\n' });
  return `${form.sheet ? '\ufeff' : ''}${text}\r\n`;
}

export const csvBytes = (table: Table, form: CsvForm): Uint8Array =>
  new TextEncoder().encode(csvText(table, form));
