/** The table that explains all others: every column of every table, its kind and its unit, out of the same definitions. */
import { type ColumnHead, filled, none, type Table, type TableOf } from './table';

type Told = { readonly table: Table; readonly column: ColumnHead };

const kindWords: Readonly<Record<ColumnHead['kind'], string>> = {
  text: 'text',
  number: 'number',
  day: 'day (year-month-day, in the zone of the workshop)',
  instant: 'moment (UTC)',
};

function unitOf(column: ColumnHead): string {
  if (column.kind !== 'number') return none;
  if ('in' in column.unit) return `in the column "${column.unit.in}"`;
  return column.unit.is === '1' ? none : column.unit.is;
}

const columns: TableOf<Told> = {
  name: 'columns',
  says: 'What every column of every table says, its kind and its unit.',
  columns: [
    { name: 'table', says: 'The table.', kind: 'text', of: ({ table }) => table.name },
    { name: 'column', says: 'The column.', kind: 'text', of: ({ column }) => column.name },
    { name: 'kind', says: 'What its cells are.', kind: 'text', of: ({ column }) => kindWords[column.kind] },
    { name: 'unit', says: 'Unit of its numbers.', kind: 'text', of: ({ column }) => unitOf(column) },
    { name: 'meaning', says: 'What it says.', kind: 'text', of: ({ column }) => column.says },
  ],
};

/** It tells of itself as well. */
export function columnsOf(tables: readonly Table[]): Table {
  const itself = filled(columns, []);
  return filled(
    columns,
    [...tables, itself].flatMap((table) => table.columns.map((column) => ({ table, column }))),
  );
}
