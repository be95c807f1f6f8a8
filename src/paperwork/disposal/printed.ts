/** Figures and days as the cells of a paper. */
import { calendarDayText } from '../dates';
import type { Cell } from '../document';
import { notDetermined } from '../words';
import type { PaperFigure } from './disposal-data';
import { paperWords as w } from './paper-words';

/** What a value says, or that nobody determined it. */
export type Or<T> = T | typeof notDetermined;

export const strong = (text: string): Cell => ({ text, strong: true });
export const unitOf = ({ unit }: PaperFigure) => (unit === '1' ? {} : { unit });

/** A figure's likely value with its unit, as one text. */
const figureText = (figure: Or<PaperFigure>): string =>
  figure === notDetermined ? notDetermined : w.withUnit(figure.likely, figure.unit);

export const rangeText = (figure: Or<PaperFigure>): string =>
  figure === notDetermined
    ? notDetermined
    : figure.low === figure.high
      ? figureText(figure)
      : w.range(figure.likely, figure.low, figure.high, figure.unit);

export const likelyCell = (figure: PaperFigure): Cell => ({ text: figure.likely, ...unitOf(figure) });

export const dayOr = (day: Or<string>): string => (day === notDetermined ? day : calendarDayText(day));
