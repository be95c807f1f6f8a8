import type { Contents } from '../document';
import { linesOf } from './lines';
import { type Item, type Place, slice } from './slices';
import { body, bodyStrong, hairline, hairlineInk } from './styles';
import { drawLine } from './text';

/** Room at the right end for the number of a page, and above and below a line, in pt. */
const numberRoom = 40;
const padding = 1.5;

/** One line a part: its title, and at the right edge the page that it begins on. */
export function contentsItems(outer: Place, block: Contents): readonly Item[] {
  const { pen, width, pageOf } = outer;
  const list = pen.tag(outer.tag, 'TOC');
  return block.items.flatMap(({ title, anchor }) => {
    const tag = pen.tag(list, 'TOCI');
    const lines = linesOf(title, width - numberRoom, body, pen.widthOf);
    const height = 2 * padding + lines.length * body.leading + hairline;
    const draw = (x: number, y: number) => {
      const [number] = linesOf(`${pageOf(anchor) ?? ''}`, numberRoom, bodyStrong, pen.widthOf);
      pen.inside(tag, () => {
        lines.forEach((line, index) => {
          drawLine(pen, line, body, x, y + padding + index * body.leading);
        });
        if (number !== undefined)
          drawLine(
            pen,
            number,
            bodyStrong,
            x + width - number.width,
            y + height - padding - body.leading - hairline,
          );
      });
      pen.aside(() => pen.rule(x, y + height - hairline, width, hairline, hairlineInk));
    };
    return [slice(height, draw)];
  });
}
