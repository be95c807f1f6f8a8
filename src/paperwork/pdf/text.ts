import type { Text } from '../document';
import { type Line, linesOf } from './lines';
import type { Pen, Tag } from './pen';
import { type Item, type Place, slice } from './slices';
import { baselineIn, type Style } from './styles';

/** Draws one line with the top at y, its left end at x. */
export function drawLine(pen: Pen, line: Line, style: Style, x: number, y: number): void {
  let at = x;
  for (const run of line.runs) {
    pen.text(run.text, at, y + baselineIn(style), { ...style, face: run.face });
    at += run.width;
  }
}

/** Whether line `index` of `count` must not be parted from the next: no single first or last line on a page. */
export const bindsNext = (index: number, count: number): boolean =>
  index < count - 1 && (index === 0 || index === count - 2);

interface Where {
  /** pt from the left edge of the place */
  readonly indent?: number;
  readonly before?: number;
  /** The last line goes with what follows. */
  readonly keep?: boolean;
}

/** A paragraph as one slice a line, all of them content of `tag`. */
export function textItems(
  place: Place,
  tag: Tag,
  text: Text,
  style: Style,
  where: Where = {},
): readonly Item[] {
  const { indent = 0, before = 0, keep = false } = where;
  const lines = linesOf(text, place.width - indent, style, place.pen.widthOf);
  return lines.map((line, index) =>
    slice(
      style.leading,
      (x, y) => place.pen.inside(tag, () => drawLine(place.pen, line, style, x + indent, y)),
      {
        before: index === 0 ? before : 0,
        keep: bindsNext(index, lines.length) || (keep && index === lines.length - 1),
      },
    ),
  );
}
