import type { Signatures } from '../document';
import { linesOf } from './lines';
import { bound, type Item, type Place, slice } from './slices';
import { ink, inkLine, small } from './styles';
import { drawLine } from './text';

/** Room to write in, and between the two of a pair, in pt. */
const room = 30;
const gap = 22;

/** Pairs of lines with their labels below, all on one page. */
export function signatureItems(place: Place, block: Signatures): readonly Item[] {
  const { pen } = place;
  const width = (place.width - gap) / 2;
  const one = (label: string) => ({
    tag: pen.tag(place.tag, 'P'),
    lines: linesOf(label, width, small, pen.widthOf),
  });
  const pairs: ReturnType<typeof one>[][] = [];
  for (let index = 0; index < block.labels.length; index += 2)
    pairs.push(block.labels.slice(index, index + 2).map(one));
  const items = pairs.map((pair) => {
    const count = Math.max(...pair.map(({ lines }) => lines.length));
    const height = room + inkLine + 2 + count * small.leading;
    const draw = (x: number, y: number) => {
      pair.forEach(({ tag, lines }, side) => {
        const left = x + side * (width + gap);
        pen.aside(() => pen.rule(left, y + room, width, inkLine, ink));
        pen.inside(tag, () => {
          lines.forEach((line, index) => {
            drawLine(pen, line, small, left, y + room + inkLine + 2 + index * small.leading);
          });
        });
      });
    };
    return slice(height, draw);
  });
  return bound(items);
}
