import type { Drawing, Heading } from '../document';
import { drawFigure, figureTag, sizeOf } from './drawing';
import { linesOf } from './lines';
import type { TagName } from './pen';
import { type Item, type Place, slice } from './slices';
import { headings, ink, inkLine } from './styles';
import { drawLine } from './text';

const headingTags: readonly TagName[] = ['H1', 'H2', 'H3', 'H4'];

/** Drawings from the right edge leftwards, standing on the line y + height. */
function besideItems(place: Place, drawings: readonly Drawing[], height: number) {
  const room = { width: place.width / 2, height };
  let from = place.width;
  return [...drawings].reverse().map((drawing) => {
    const size = sizeOf(drawing, room);
    from -= size.width;
    const at = from;
    from -= 4;
    const tag = figureTag(place.pen, place.tag, drawing);
    return (x: number, y: number) =>
      place.pen.inside(tag, () =>
        drawFigure(place.pen, drawing, x + at, y + height - size.height, size.width),
      );
  });
}

export function headingItems(place: Place, block: Heading): readonly Item[] {
  const { pen, width } = place;
  const style = headings[block.level];
  const tag = pen.tag(place.tag, headingTags[block.level - 1 + place.headingShift] ?? 'H4');
  const beside = block.beside ?? [];
  const wanted = beside.map((drawing) => sizeOf(drawing, { width: width / 2, height: place.pageHeight / 3 }));
  const taken = wanted.reduce((sum, size) => sum + size.width + 4, 0);
  const lines = linesOf(block.text, Math.max(width - taken, width / 3), style, pen.widthOf);
  const words = lines.length * style.leading;
  const inner = Math.max(words, ...wanted.map((size) => size.height));
  const ruled = block.level === 1;
  const height = inner + (ruled ? 3 + inkLine : 1);
  const figures = besideItems(place, beside, inner);
  const draw = (x: number, y: number) => {
    pen.inside(tag, () => {
      lines.forEach((line, index) => {
        drawLine(pen, line, style, x, y + inner - words + index * style.leading);
      });
    });
    for (const figure of figures) figure(x, y);
    if (ruled) pen.aside(() => pen.rule(x, y + height - inkLine, width, inkLine, ink));
  };
  return [
    slice(height, draw, { keep: true, ...(block.anchor === undefined ? {} : { anchor: block.anchor }) }),
  ];
}
