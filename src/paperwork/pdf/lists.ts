import type { Facts, List, MarkLine } from '../document';
import { drawFigure } from './drawing';
import { linesOf, plainText } from './lines';
import { marks } from './marks';
import { type Item, type Place, type Slice, slice } from './slices';
import { body, bodyStrong } from './styles';
import { drawLine, textItems } from './text';

export function listItems(outer: Place, block: List): readonly Item[] {
  const { pen } = outer;
  const indent = 16;
  const list = pen.tag(outer.tag, 'L');
  return block.items.flatMap((text, index) => {
    const item = pen.tag(list, 'LI');
    const label = pen.tag(item, 'Lbl');
    const [sign] = linesOf(block.numbered ? `${index + 1}.` : '•', indent, body, pen.widthOf);
    const [first, ...rest] = textItems(outer, pen.tag(item, 'LBody'), text, body, {
      indent,
      before: index === 0 ? 0 : 2,
    });
    return first?.kind === 'slice' && sign !== undefined
      ? [labelled(first, (x, y) => pen.inside(label, () => drawLine(pen, sign, body, x, y))), ...rest]
      : [];
  });
}

/** The slice with something more drawn before it: the sign of an item, a term, a mark. */
const labelled = (first: Slice, draw: Slice['draw'], height = first.height): Slice => ({
  ...first,
  height: Math.max(first.height, height),
  draw: (x, y) => {
    draw(x, y);
    first.draw(x, y);
  },
});

export function factItems(outer: Place, block: Facts): readonly Item[] {
  const { pen, width } = outer;
  const list = pen.tag(outer.tag, 'L');
  const widest = Math.max(...block.facts.map((fact) => pen.widthOf(fact.term, 'bold', bodyStrong.size)));
  const termWidth = Math.min(widest, width * 0.35);
  return block.facts.flatMap((fact, index) => {
    if (plainText(fact.says).trim() === '') throw new Error(`the fact "${fact.term}" says nothing`);
    const item = pen.tag(list, 'LI');
    const label = pen.tag(item, 'Lbl');
    const terms = linesOf(fact.term, termWidth + 0.01, bodyStrong, pen.widthOf);
    const before = index === 0 ? 0 : 3;
    const words = textItems(outer, pen.tag(item, 'LBody'), fact.says, body, {
      indent: termWidth + 14,
      before,
    });
    return beside(words, terms.length, before, (line, x, y) => {
      const term = terms[line];
      if (term !== undefined) pen.inside(label, () => drawLine(pen, term, bodyStrong, x, y));
    });
  });
}

/** Slices of text with `count` lines drawn at their left, one a slice; slices of nothing follow when the text has fewer. */
function beside(
  items: readonly Item[],
  count: number,
  before: number,
  draw: (line: number, x: number, y: number) => void,
) {
  const blank = slice(body.leading, () => undefined);
  const all = Array.from({ length: Math.max(items.length, count) }, (_, index) => items[index] ?? blank);
  return all.map((item, index): Item => {
    if (item.kind !== 'slice') return item;
    const keep = item.keep || index < count - 1;
    return {
      ...labelled(item, (x, y) => draw(index, x, y)),
      keep,
      before: index === 0 ? before : 0,
    };
  });
}

export function markItems(place: Place, block: MarkLine): readonly Item[] {
  const { pen } = place;
  const size = 13;
  const [first, ...rest] = textItems(place, pen.tag(place.tag, 'P'), block.text, body, {
    indent: size + 8,
  });
  if (first?.kind !== 'slice') return [];
  const drawing = { width: 24, height: 24, says: '', shapes: marks[block.mark] };
  return [labelled(first, (x, y) => pen.aside(() => drawFigure(pen, drawing, x, y, size)), size), ...rest];
}
