import type { Drawing, DrawingBlock } from '../document';
import { drawFigure, figureTag, sizeOf } from './drawing';
import { bound, type Item, type Place, slice } from './slices';
import { small } from './styles';
import { textItems } from './text';

export function drawingItems(place: Place, block: DrawingBlock): readonly Item[] {
  const { pen } = place;
  const size = sizeOf(block.drawing, { width: place.width, height: place.pageHeight * 0.8 });
  const tag = figureTag(pen, place.tag, block.drawing);
  const figure = slice(size.height, (x, y) =>
    pen.inside(tag, () => drawFigure(pen, block.drawing, x, y, size.width)),
  );
  if (block.caption === undefined) return [figure];
  return bound([figure, ...textItems(place, pen.tag(place.tag, 'P'), block.caption, small, { before: 5 })]);
}

export function drawingRowItems(place: Place, drawings: readonly Drawing[]): readonly Item[] {
  const { pen, width } = place;
  const rows: { at: number; width: number; drawing: Drawing }[][] = [[]];
  let at = 0;
  for (const drawing of drawings) {
    const size = sizeOf(drawing, { width, height: place.pageHeight * 0.8 });
    if (at > 0 && at + size.width > width) {
      rows.push([]);
      at = 0;
    }
    rows.at(-1)?.push({ at, width: size.width, drawing });
    at += size.width + 4;
  }
  return rows.map((row, index) => {
    const tags = row.map(({ drawing }) => figureTag(pen, place.tag, drawing));
    const height = Math.max(0, ...row.map((one) => (one.drawing.height * one.width) / one.drawing.width));
    const draw = (x: number, y: number) => {
      row.forEach((one, column) => {
        const tag = tags[column];
        if (tag !== undefined) pen.inside(tag, () => drawFigure(pen, one.drawing, x + one.at, y, one.width));
      });
    };
    return slice(height, draw, { before: index === 0 ? 0 : 4 });
  });
}
