/** Boxes that a label is built of: each knows its height and, told where it stands, its parts. Lengths in pt. */
import type { Drawing, Text } from '../document';
import { type Line, linesOf } from '../pdf/lines';
import type { Face, Pen } from '../pdf/pen';
import { ink, type Style } from '../pdf/styles';

/** What stands on a label. A drawing without words is decoration. */
export type LabelPart =
  | {
      readonly kind: 'text';
      readonly lines: readonly { readonly line: Line; readonly x: number; readonly y: number }[];
      readonly style: Style;
    }
  | {
      readonly kind: 'drawing';
      readonly drawing: Drawing;
      readonly x: number;
      readonly y: number;
      readonly width: number;
    }
  | {
      readonly kind: 'rule';
      readonly x: number;
      readonly y: number;
      readonly width: number;
      readonly height: number;
    };

export type Measure = Pen['widthOf'];

export type Box = {
  readonly width: number;
  readonly height: number;
  readonly at: (x: number, y: number) => readonly LabelPart[];
};

export const nothing: Box = { width: 0, height: 0, at: () => [] };

export const styleOf = (face: Face, size: number): Style => ({
  face,
  size,
  leading: size * 1.2,
  colour: ink,
});

export function linesBox(
  lines: readonly Line[],
  style: Style,
  width: number,
  align: 'left' | 'right' = 'left',
): Box {
  const shift = (line: Line) => (align === 'left' ? 0 : width - line.width);
  return {
    width,
    height: lines.length * style.leading,
    at: (x, y) => [
      {
        kind: 'text',
        style,
        lines: lines.map((line, at) => ({ line, x: x + shift(line), y: y + at * style.leading })),
      },
    ],
  };
}

export const textBox = (text: Text, style: Style, width: number, measure: Measure): Box =>
  linesBox(linesOf(text, width, style, measure), style, width);

export type Fitted = { readonly box: Box; readonly cut: boolean };

/**
 * A text in the largest type from `most` to `least` that stands in `height`. What does not even then is cut at a
 * line's end, and its last words say so.
 * @param cutWords stand at the end of what is cut
 */
export function fittedBox(
  text: string,
  { face, most, least }: { readonly face: Face; readonly most: number; readonly least: number },
  { width, height }: { readonly width: number; readonly height: number },
  cutWords: string,
  measure: Measure,
): Fitted {
  for (let size = Math.max(most, least); ; size = Math.max(least, size * 0.93)) {
    const style = styleOf(face, size);
    const lines = linesOf(text, width, style, measure);
    const whole = lines.length * style.leading <= height + 0.01;
    // A word that had to be torn is set smaller first, as long as there is a smaller type.
    const torn = text.split(/\s+/).some((word) => measure(word, face, style.size) > width);
    if (whole && (!torn || size === least)) return { box: linesBox(lines, style, width), cut: false };
    if (size > least) continue;
    if (whole) return { box: linesBox(lines, style, width), cut: false };
    return { box: cutBox(text, style, width, height, cutWords, measure), cut: true };
  }
}

/** As many words as there is room for, then those that say it is cut; a word longer than that ends in the middle. */
function cutBox(
  text: string,
  style: Style,
  width: number,
  height: number,
  cutWords: string,
  measure: Measure,
): Box {
  const most = Math.max(1, Math.floor((height + 0.01) / style.leading));
  const linesOfFirst = (parts: readonly string[], count: number, between: string) =>
    linesOf(`${parts.slice(0, count).join(between)} ${cutWords}`.trim(), width, style, measure);
  const fitting = (parts: readonly string[], between: string): number => {
    let [low, high] = [0, parts.length];
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if (linesOfFirst(parts, middle, between).length <= most) low = middle;
      else high = middle - 1;
    }
    return low;
  };
  const inWords = text.split(' ');
  const count = fitting(inWords, ' ');
  const characters = [...text];
  const lines =
    count > 0 ? linesOfFirst(inWords, count, ' ') : linesOfFirst(characters, fitting(characters, ''), '');
  return linesBox(lines, style, width);
}

export const drawingBox = (drawing: Drawing, width: number): Box => ({
  width,
  height: (width * drawing.height) / drawing.width,
  at: (x, y) => [{ kind: 'drawing', drawing, x, y, width }],
});

export const ruleBox = (width: number, thickness: number): Box => ({
  width,
  height: thickness,
  at: (x, y) => [{ kind: 'rule', x, y, width, height: thickness }],
});

/** Boxes below each other; those without height take no gap. */
export function stack(boxes: readonly Box[], gap: number): Box {
  const shown = boxes.filter(({ height }) => height > 0);
  const tops = shown.map((_, at) => shown.slice(0, at).reduce((sum, { height }) => sum + height + gap, 0));
  return {
    width: Math.max(0, ...shown.map(({ width }) => width)),
    height: shown.reduce((sum, { height }) => sum + height, 0) + gap * Math.max(0, shown.length - 1),
    at: (x, y) => shown.flatMap((box, index) => box.at(x, y + (tops[index] ?? 0))),
  };
}

/** Boxes beside each other, at their tops or about one middle. */
export function beside(boxes: readonly Box[], gap: number, align: 'top' | 'middle' = 'top'): Box {
  const shown = boxes.filter(({ width, height }) => width > 0 && height > 0);
  const height = Math.max(0, ...shown.map((box) => box.height));
  const lefts = shown.map((_, at) => shown.slice(0, at).reduce((sum, { width }) => sum + width + gap, 0));
  return {
    width: shown.reduce((sum, { width }) => sum + width, 0) + gap * Math.max(0, shown.length - 1),
    height,
    at: (x, y) =>
      shown.flatMap((box, index) =>
        box.at(x + (lefts[index] ?? 0), y + (align === 'top' ? 0 : (height - box.height) / 2)),
      ),
  };
}
