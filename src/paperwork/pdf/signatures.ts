import type { SignatureLine, Signatures } from '../document';
import { drawFigure, figureTag, sizeOf } from './drawing';
import { linesOf } from './lines';
import type { Pen } from './pen';
import { bound, type Item, type Place, slice } from './slices';
import { ink, inkLine, small } from './styles';
import { drawLine } from './text';

/** Room to write in, more where a signature is drawn already, and between the two of a pair, in pt. */
const room = { empty: 30, drawn: 52 };
const gap = 22;

/** A signature that was given stands on its line, with its own proportions. */
function drawnOn(place: Place, { drawn }: SignatureLine, width: number, height: number) {
  if (drawn === undefined) return undefined;
  const { pen } = place;
  const tag = figureTag(pen, place.tag, drawn);
  const size = sizeOf(drawn, { width, height });
  return (x: number, y: number) =>
    pen.inside(tag, () => drawFigure(pen, drawn, x, y + height - size.height, size.width));
}

function oneOf(place: Place, line: SignatureLine, width: number, height: number) {
  const { pen }: { readonly pen: Pen } = place;
  const drawn = drawnOn(place, line, width, height);
  return { drawn, tag: pen.tag(place.tag, 'P'), lines: linesOf(line.label, width, small, pen.widthOf) };
}

/** Pairs of lines with their labels below, all on one page. */
export function signatureItems(place: Place, block: Signatures): readonly Item[] {
  const { pen } = place;
  const width = (place.width - gap) / 2;
  const pairs: SignatureLine[][] = [];
  for (let index = 0; index < block.lines.length; index += 2) pairs.push(block.lines.slice(index, index + 2));
  const items = pairs.map((pair) => {
    const above = pair.some(({ drawn }) => drawn !== undefined) ? room.drawn : room.empty;
    const both = pair.map((line) => oneOf(place, line, width, above - 2));
    const count = Math.max(...both.map(({ lines }) => lines.length));
    const height = above + inkLine + 2 + count * small.leading;
    const draw = (x: number, y: number) => {
      both.forEach(({ tag, lines, drawn }, side) => {
        const left = x + side * (width + gap);
        drawn?.(left, y);
        pen.aside(() => pen.rule(left, y + above, width, inkLine, ink));
        pen.inside(tag, () => {
          lines.forEach((line, index) => {
            drawLine(pen, line, small, left, y + above + inkLine + 2 + index * small.leading);
          });
        });
      });
    };
    return slice(height, draw);
  });
  return bound(items);
}
