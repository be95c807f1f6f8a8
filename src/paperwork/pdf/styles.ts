import type { Face, Ink } from './pen';

/** Ink and its line height, in pt. */
export interface Style extends Ink {
  readonly leading: number;
}

export const ink = '#000000';
/** Notes, heads of columns, sources. 12 to 1 on white. */
export const secondInk = '#333b3d';
/** Lines between rows: never carry meaning. */
export const hairlineInk = '#8c9694';

/** Thickness of lines in pt. */
export const hairline = 0.6;
export const inkLine = 1;
export const heavyLine = 2;

const style = (face: Face, size: number, leading: number, colour = ink): Style => ({
  face,
  size,
  leading,
  colour,
});

export const small = style('sans', 8.5, 11, secondInk);
export const body = style('sans', 9, 12);
export const bodyStrong = style('bold', 9, 12);
export const large = style('sans', 12, 16);
export const display = style('bold', 17, 21);
export const code = style('bold', 54, 56);
export const title = style('serif', 22, 26);
export const titleCode = style('bold', 20, 26);
export const headings = {
  1: style('serif', 13, 17),
  2: style('serif', 10.5, 14),
  3: style('bold', 9, 12),
} as const;
export const stepNumber = style('serif', 10.5, 12);

/** How far the base line lies under the top of the line, in pt, so that the text stands in the middle of it. */
export const baselineIn = (of: Style): number => of.leading / 2 + of.size * 0.355;
