/** Figures of a year as cells and texts of its paper. */

import type { PaperFigure } from '../disposal/paper-figure';
import { rangeText, unitOf } from '../disposal/printed';
import type { Block, Cell } from '../document';
import { type notDetermined, withUnit } from '../words';
import { type MassData, nothing } from './year-data';
import { yearPaperWords as w } from './year-words';

export const heading = (level: 1 | 2 | 3, text: string): Block => ({ kind: 'heading', level, text });
export const small = (text: string): Block => ({ kind: 'paragraph', size: 'small', text });

type Maybe = PaperFigure | typeof notDetermined | typeof nothing;

/** Likely value with its unit, and both ends: cells of three columns. */
export function figureCells(figure: Maybe): {
  readonly likely: Cell;
  readonly low: Cell;
  readonly high: Cell;
} {
  if (typeof figure === 'string') return { likely: figure, low: '–', high: '–' };
  return { likely: { text: figure.likely, ...unitOf(figure) }, low: figure.low, high: figure.high };
}

export const massText = ({ sum }: MassData): string => (sum === nothing ? nothing : rangeText(sum));

export const likelyText = ({ sum }: MassData): string =>
  typeof sum === 'string' ? sum : withUnit(sum.likely, sum.unit);

export const called = (things: readonly { readonly called: string }[]): readonly string[] =>
  things.map((one) => one.called);

/** Which masses of a table are at least, and because of what. */
export const atLeast = (rows: readonly { readonly called: string; readonly mass: MassData }[]): Block[] =>
  rows.flatMap(({ called: name, mass }) =>
    mass.noMass.length > 0 ? [small(w.atLeast(name, called(mass.noMass)))] : [],
  );

/** Columns of a figure, for a table whose first column names it. */
export const figureColumns = (unitHead: string) =>
  [
    { key: 'likely', head: `${unitHead}, ${w.likely}`, share: 26, align: 'right' },
    { key: 'low', head: w.low, share: 18, align: 'right' },
    { key: 'high', head: w.high, share: 18, align: 'right' },
  ] as const;
