/** The columns of a figure: the ends as the paper has them, the unit on its own, every digit, the line of the working. */
import type { PaperFigure } from '../disposal/disposal-data';
import type { notDetermined } from '../words';
import { plainNumber } from './plain';
import { type ColumnOf, none } from './table';

type MaybeFigure = PaperFigure | typeof notDetermined | typeof none;

const cellOf = (figure: MaybeFigure, of: (known: PaperFigure) => string): string =>
  typeof figure === 'string' ? figure : of(figure);

/**
 * Columns "low", "likely", "high", "unit", "unrounded" and "line".
 * @param before what the heads begin with, such as "in all"; '' where the row has one figure
 * @param what of which quantity, as the end of a sentence
 */
export function figureColumns<Row>(
  before: string,
  what: string,
  of: (row: Row) => MaybeFigure,
): readonly ColumnOf<Row>[] {
  const named = (name: string): string => (before === '' ? name : `${before} ${name}`);
  const unit = { in: named('unit') };
  const number = (name: string, says: string, digits: (figure: PaperFigure) => string): ColumnOf<Row> => ({
    name: named(name),
    says: `${says} ${what}.`,
    kind: 'number',
    unit,
    of: (row) => cellOf(of(row), digits),
  });
  return [
    number('low', 'Low end, as on the paper, of', ({ low }) => plainNumber(low)),
    number('likely', 'Likely value, as on the paper, of', ({ likely }) => plainNumber(likely)),
    number('high', 'High end, as on the paper, of', ({ high }) => plainNumber(high)),
    {
      name: unit.in,
      says: `Unit of ${what}; "1": it has none.`,
      kind: 'text',
      of: (row) => cellOf(of(row), (figure) => figure.unit),
    },
    number('unrounded', 'Likely value, every digit, to reckon on with, of', ({ value }) => value),
    {
      name: named('line'),
      says: `Line of the table "working" that gives ${what}.`,
      kind: 'text',
      of: (row) => cellOf(of(row), ({ line }) => line ?? none),
    },
  ];
}
