/** A table as data: what it is of, what each column says and in which unit, and how a row gives its cells. No file format. */
import { noTimeRuns, notDetermined } from '../words';

/** In a place where there is nothing to say, such as the formula of a published value. No cell is ever empty. */
export const none = 'none';

/** What may stand where a number, a day or a moment would. A sheet that reckons with one of them gets an error, never zero. */
const insteadOf: ReadonlySet<string> = new Set([notDetermined, none, noTimeRuns]);

/** The unit of a column of numbers: one for all rows, or the column in which each row says its own. "1": it has none. */
export type ColumnUnit = { readonly is: string } | { readonly in: string };

type Head = { readonly name: string /** One sentence, for who has never seen it. */; readonly says: string };

export type ColumnHead = Head &
  ({ readonly kind: 'text' | 'day' | 'instant' } | { readonly kind: 'number'; readonly unit: ColumnUnit });

/** `of` gives text; digits with a decimal point; "2026-05-14"; "2026-05-14T07:58:00.000Z". */
export type ColumnOf<Row> = ColumnHead & { readonly of: (row: Row) => string };

export type TableOf<Row> = Head & { readonly columns: readonly ColumnOf<Row>[] };

/** A table with its cells as text, each of the kind that its column has. */
export type Table = Head & {
  readonly columns: readonly ColumnHead[];
  readonly rows: readonly (readonly string[])[];
};

const grammar = {
  text: /./s,
  number: /^-?\d+(\.\d+)?$/,
  day: /^\d{4}-\d{2}-\d{2}$/,
  instant: /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}\.\d{3}Z$/,
} as const satisfies Readonly<Record<ColumnHead['kind'], RegExp>>;

export const isNumber = (cell: string): boolean => grammar.number.test(cell);

/**
 * The rows of a table.
 * @throws where a column says its name twice, or a cell is not of the kind of its column: "118 g" is no number
 */
export function filled<Row>({ name, says, columns }: TableOf<Row>, rows: readonly Row[]): Table {
  if (new Set(columns.map((column) => column.name)).size < columns.length)
    throw new Error(`two columns of the table "${name}" have one name`);
  const cellOf = (column: ColumnOf<Row>, row: Row): string => {
    const cell = column.of(row);
    if (grammar[column.kind].test(cell) || insteadOf.has(cell)) return cell;
    throw new Error(`"${cell}" is no ${column.kind} for "${column.name}" of the table "${name}"`);
  };
  return {
    name,
    says,
    columns: columns.map(({ of: _, ...head }) => head),
    rows: rows.map((row) => columns.map((column) => cellOf(column, row))),
  };
}
