import type {
  Block,
  Caution,
  Columns,
  Drawing,
  DrawingBlock,
  Facts,
  Heading,
  List,
  MarkLine,
  Paragraph,
} from '../document';
import { drawFigure, figureTag, sizeOf } from './drawing';
import { linesOf } from './lines';
import { marks } from './marks';
import type { TagName } from './pen';
import { signatureItems } from './signatures';
import { bound, type Item, type Place, type Slice, slice, spaced } from './slices';
import * as styles from './styles';
import { tableItems } from './table';
import { drawLine, textItems } from './text';
import { workingItems } from './working';

const { body, bodyStrong, ink, inkLine, heavyLine, small } = styles;

/** White between the columns of a pair, pt. */
const gutter = 22;

const paragraphStyles = {
  small,
  body,
  large: styles.large,
  display: styles.display,
  code: styles.code,
} as const;

function paragraphItems(place: Place, block: Paragraph): readonly Item[] {
  return textItems(
    place,
    place.pen.tag(place.tag, 'P'),
    block.text,
    paragraphStyles[block.size ?? 'body'],
  );
}

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

function headingItems(place: Place, block: Heading): readonly Item[] {
  const { pen, width } = place;
  const style = styles.headings[block.level];
  const tag = pen.tag(place.tag, headingTags[block.level - 1 + place.headingShift] ?? 'H4');
  const beside = block.beside ?? [];
  const wanted = beside.map((drawing) =>
    sizeOf(drawing, { width: width / 2, height: place.pageHeight / 3 }),
  );
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
  return [slice(height, draw, { keep: true })];
}

function listItems(outer: Place, block: List): readonly Item[] {
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
      ? [
          labelled(first, (x, y) => pen.inside(label, () => drawLine(pen, sign, body, x, y))),
          ...rest,
        ]
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

function factItems(outer: Place, block: Facts): readonly Item[] {
  const { pen, width } = outer;
  const list = pen.tag(outer.tag, 'L');
  const widest = Math.max(
    ...block.facts.map((fact) => pen.widthOf(fact.term, 'bold', bodyStrong.size)),
  );
  const termWidth = Math.min(widest, width * 0.35);
  return block.facts.flatMap((fact, index) => {
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
  const all = Array.from(
    { length: Math.max(items.length, count) },
    (_, index) => items[index] ?? blank,
  );
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

function cautionItems(place: Place, block: Caution): readonly Item[] {
  const { pen, width } = place;
  const inset = 9;
  const words = textItems(
    { ...place, width: width - 2 * inset },
    pen.tag(place.tag, 'P'),
    block.text,
    body,
  );
  return bound(
    words.map((item, index) => {
      if (item.kind !== 'slice') return item;
      const top = index === 0 ? inset - 2 : 0;
      const bottom = index === words.length - 1 ? inset - 2 : 0;
      const height = item.height + top + bottom;
      const draw = (x: number, y: number) => {
        pen.aside(() => {
          pen.rule(x, y, inkLine, height, ink);
          pen.rule(x + width - inkLine, y, inkLine, height, ink);
          if (top > 0) pen.rule(x, y, width, inkLine, ink);
          if (bottom > 0) pen.rule(x, y + height - inkLine, width, inkLine, ink);
        });
        item.draw(x + inset, y + top);
      };
      return slice(height, draw);
    }),
  );
}

function drawingItems(place: Place, block: DrawingBlock): readonly Item[] {
  const { pen } = place;
  const size = sizeOf(block.drawing, { width: place.width, height: place.pageHeight * 0.8 });
  const tag = figureTag(pen, place.tag, block.drawing);
  const figure = slice(size.height, (x, y) =>
    pen.inside(tag, () => drawFigure(pen, block.drawing, x, y, size.width)),
  );
  if (block.caption === undefined) return [figure];
  return bound([
    figure,
    ...textItems(place, pen.tag(place.tag, 'P'), block.caption, small, { before: 5 }),
  ]);
}

function drawingRowItems(place: Place, drawings: readonly Drawing[]): readonly Item[] {
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
    const height = Math.max(
      0,
      ...row.map((one) => (one.drawing.height * one.width) / one.drawing.width),
    );
    const draw = (x: number, y: number) => {
      row.forEach((one, column) => {
        const tag = tags[column];
        if (tag !== undefined)
          pen.inside(tag, () => drawFigure(pen, one.drawing, x + one.at, y, one.width));
      });
    };
    return slice(height, draw, { before: index === 0 ? 0 : 4 });
  });
}

function markItems(place: Place, block: MarkLine): readonly Item[] {
  const { pen } = place;
  const size = 13;
  const [first, ...rest] = textItems(place, pen.tag(place.tag, 'P'), block.text, body, {
    indent: size + 8,
  });
  if (first?.kind !== 'slice') return [];
  const drawing = { width: 24, height: 24, says: '', shapes: marks[block.mark] };
  return [
    labelled(first, (x, y) => pen.aside(() => drawFigure(pen, drawing, x, y, size)), size),
    ...rest,
  ];
}

function columnItems(place: Place, block: Columns): readonly Item[] {
  const [left, right] = block.shares ?? [1, 1];
  const free = place.width - gutter;
  const leftWidth = (free * left) / (left + right);
  return [
    {
      kind: 'pair',
      before: 0,
      keep: false,
      left: layOut(block.left, { ...place, width: leftWidth }),
      right: layOut(block.right, { ...place, width: free - leftWidth }),
      rightAt: leftWidth + gutter,
    },
  ];
}

const ruleItems = ({ pen, width }: Place): readonly Item[] => [
  slice(heavyLine, (x, y) => pen.aside(() => pen.rule(x, y, width, heavyLine, ink)), {
    keep: true,
  }),
];

function itemsOf(place: Place, block: Block): readonly Item[] {
  switch (block.kind) {
    case 'heading':
      return headingItems(place, block);
    case 'paragraph':
      return paragraphItems(place, block);
    case 'list':
      return listItems(place, block);
    case 'facts':
      return factItems(place, block);
    case 'table':
      return tableItems(place, block);
    case 'working':
      return workingItems(place, block);
    case 'caution':
      return cautionItems(place, block);
    case 'drawing':
      return drawingItems(place, block);
    case 'drawings':
      return drawingRowItems(place, block.drawings);
    case 'mark':
      return markItems(place, block);
    case 'signatures':
      return signatureItems(place, block);
    case 'columns':
      return columnItems(place, block);
    case 'together':
      return bound(layOut(block.parts, place));
    case 'rule':
      return ruleItems(place);
    case 'page-break':
      return [{ kind: 'break' }];
  }
}

/** White above a block after another, pt. */
function whiteAbove(block: Block, previous: Block | undefined): number {
  if (block.kind === 'heading') return block.level === 1 ? 18 : 11;
  if (block.kind === 'caution' || block.kind === 'drawing') return 12;
  const underRule = previous?.kind === 'heading' && previous.level === 1;
  if (block.kind === 'table' || block.kind === 'working') return underRule ? 0 : 8;
  return underRule ? 6 : previous?.kind === 'heading' ? 2 : 6;
}

/** The blocks below each other, cut into what goes on a page whole. */
export function layOut(blocks: readonly Block[], place: Place): readonly Item[] {
  return blocks.flatMap((block, index) => {
    const items = itemsOf(place, block);
    return index === 0 ? items : spaced(items, whiteAbove(block, blocks[index - 1]));
  });
}
