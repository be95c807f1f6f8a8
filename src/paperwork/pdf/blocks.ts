import type { Block, Caution, Columns, Paragraph, PartHead } from '../document';
import { contentsItems } from './contents';
import { drawingItems, drawingRowItems } from './figures';
import { mastheadItem } from './furniture';
import { headingItems } from './heading';
import { factItems, listItems, markItems } from './lists';
import { signatureItems } from './signatures';
import { bound, type Item, type Place, slice, spaced } from './slices';
import { body, code, display, heavyLine, ink, inkLine, large, small } from './styles';
import { tableItems } from './table';
import { textItems } from './text';
import { workingItems } from './working';

/** White between the columns of a pair, pt. */
const gutter = 22;

const paragraphStyles = { small, body, large, display, code } as const;

function paragraphItems(place: Place, block: Paragraph): readonly Item[] {
  return textItems(place, place.pen.tag(place.tag, 'P'), block.text, paragraphStyles[block.size ?? 'body']);
}

function cautionItems(place: Place, block: Caution): readonly Item[] {
  const { pen, width } = place;
  const inset = 9;
  const words = textItems({ ...place, width: width - 2 * inset }, pen.tag(place.tag, 'P'), block.text, body);
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

/** The title of the paper is above it, so that it is a heading of the second level. */
const partHeadItems = (place: Place, { title, anchor, ...masthead }: PartHead): readonly Item[] => [
  {
    ...mastheadItem(place, title, masthead, 'H2'),
    keep: true,
    ...(anchor === undefined ? {} : { anchor }),
  },
];

const ruleItems = ({ pen, width }: Place): readonly Item[] => [
  slice(heavyLine, (x, y) => pen.aside(() => pen.rule(x, y, width, heavyLine, ink)), {
    keep: true,
  }),
];

function itemsOf(place: Place, block: Block): readonly Item[] {
  switch (block.kind) {
    case 'heading':
      return headingItems(place, block);
    case 'part-head':
      return partHeadItems(place, block);
    case 'contents':
      return contentsItems(place, block);
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
  if (block.kind === 'heading') return block.level === 1 ? 15 : 10;
  if (block.kind === 'caution' || block.kind === 'drawing') return 11;
  if (block.kind === 'columns') {
    const starts = [block.left[0], block.right[0]].filter((first) => first !== undefined);
    return Math.max(0, ...starts.map((first) => whiteAbove(first, previous)));
  }
  if (previous?.kind === 'part-head') return 9;
  const underRule = previous?.kind === 'heading' && previous.level === 1;
  if (block.kind === 'table' || block.kind === 'working') return underRule ? 0 : 8;
  return underRule ? 5 : previous?.kind === 'heading' ? 2 : 5;
}

/** The blocks below each other, cut into what goes on a page whole. @param begins is told the index of each */
export function layOut(
  blocks: readonly Block[],
  place: Place,
  begins?: (index: number) => void,
): readonly Item[] {
  return blocks.flatMap((block, index) => {
    begins?.(index);
    const items = itemsOf(place, block);
    return index === 0 ? items : spaced(items, whiteAbove(block, blocks[index - 1]));
  });
}
