import type { Pen, Tag } from './pen';

/** The least part of a paper that goes on a page whole. Heights in pt. */
export interface Slice {
  readonly kind: 'slice';
  readonly height: number;
  /** White above it; none at the top of a page. */
  readonly before: number;
  /** It must not be the last on a page when something follows. */
  readonly keep: boolean;
  /** Draws with the upper left corner at (x, y). */
  readonly draw: (x: number, y: number) => void;
  /** Drawn above it when it comes first on a page: the head of its table. */
  readonly header?: { readonly height: number; readonly draw: (x: number, y: number) => void };
  /** Its name for the list of contents. */
  readonly anchor?: string;
}

/** Two rows of slices next to each other. */
export interface Pair {
  readonly kind: 'pair';
  readonly before: number;
  readonly keep: boolean;
  readonly left: readonly Item[];
  readonly right: readonly Item[];
  /** Where the right column begins, in pt from the left one. */
  readonly rightAt: number;
}

export interface Break {
  readonly kind: 'break';
}

export type Item = Slice | Pair | Break;

/** Where a block is laid out: how wide, how high at most, and under which node of the structure. */
export interface Place {
  readonly pen: Pen;
  readonly tag: Tag;
  /** pt */
  readonly width: number;
  /** Height of the lowest page, pt: nothing that cannot be cut may be higher. */
  readonly pageHeight: number;
  /** 1 when the title of the paper is the first heading, else 0. */
  readonly headingShift: 0 | 1;
  /** The page of each anchor, from 1: known before the first page is drawn, not while blocks are laid out. */
  readonly pageOf: (anchor: string) => number | undefined;
}

export const slice = (
  height: number,
  draw: Slice['draw'],
  more: Partial<Pick<Slice, 'before' | 'keep' | 'header' | 'anchor'>> = {},
): Slice => ({ kind: 'slice', height, draw, before: 0, keep: false, ...more });

/** The first item with `before` pt of white above it, at the least. */
export function spaced(items: readonly Item[], before: number): readonly Item[] {
  const [first, ...rest] = items;
  if (first === undefined || first.kind === 'break') return items;
  return [{ ...first, before: Math.max(first.before, before) }, ...rest];
}

const kept = (item: Item): Item => (item.kind === 'break' ? item : { ...item, keep: true });

/** Bound to each other, so that they go on one page where one can hold them. */
export const bound = (items: readonly Item[]): readonly Item[] =>
  items.map((item, index) => (index < items.length - 1 ? kept(item) : item));

/** Height of items below each other, in pt. */
export function heightOf(items: readonly Item[]): number {
  return items.reduce((sum, item, index) => {
    if (item.kind === 'break') return sum;
    const own = item.kind === 'pair' ? Math.max(heightOf(item.left), heightOf(item.right)) : item.height;
    return sum + own + (index === 0 ? 0 : item.before);
  }, 0);
}
