/** The columns of a line of a working, whichever paper it is of. */
import type { WorkingLine } from '../disposal/disposal-data';
import { listed, textColumn } from './disposal-rows';
import { figureColumns } from './figure-columns';
import type { ColumnOf } from './table';

export type OfLine = { readonly line: Omit<WorkingLine, 'containerId'> };

export const lineName: ColumnOf<OfLine> = textColumn(
  'line',
  'E and a number: evidence; P: a published value; W: worked out.',
  ({ line }) => line.id,
);

export const workingColumns: readonly ColumnOf<OfLine>[] = [
  textColumn('gives', 'What the line gives.', ({ line }) => line.sentence),
  textColumn('formula', 'The formula with the numbers put in, as on the paper.', ({ line }) => line.formula),
  textColumn('from', 'Lines that it is worked out from.', ({ line }) => listed(line.from, ' ')),
  ...figureColumns<OfLine>('', 'the result', ({ line }) => line.result).slice(0, -1),
  textColumn('how known', 'How it is known.', ({ line }) => line.howKnown),
  textColumn('sources', 'Where it is from, and how well that is known.', ({ line }) =>
    listed(line.sources.map(({ title, status }) => `${title} (${status})`)),
  ),
  textColumn('note', 'What stays to be said about it.', ({ line }) => line.note),
];
