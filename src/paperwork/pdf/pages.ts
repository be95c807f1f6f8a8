import { heightOf, type Item, type Pair, type Slice } from './slices';

/** Something at its place on a page, pt from the upper left corner. */
export interface Placed {
  readonly x: number;
  readonly y: number;
  readonly draw: (x: number, y: number) => void;
  readonly anchor?: string;
}

/** The part of a page that text may fill, in pt. */
export interface Area {
  readonly x: number;
  readonly y: number;
  readonly height: number;
}

interface Filled {
  readonly placed: readonly Placed[];
  readonly height: number;
  readonly rest: readonly Item[];
}

/** A pair lower than this share of a page goes to the next page whole instead of being split. */
const pairMoves = 0.5;

/** The items from that index on that are bound to each other. */
function groupAt(items: readonly Item[], index: number): readonly Item[] {
  let end = index;
  for (let item = items[end]; item !== undefined; item = items[end]) {
    end += 1;
    if (item.kind === 'break' || !item.keep) break;
  }
  return items.slice(index, end);
}

/** Fills one column of one page with as many items as go there. */
class Column {
  readonly placed: Placed[] = [];
  height = 0;
  private readonly area: Area;

  constructor(area: Area) {
    this.area = area;
  }

  get empty(): boolean {
    return this.placed.length === 0;
  }

  /** Height the items would take here, with the white above the first or the head of its table. */
  private needs(items: readonly Item[]): number {
    const [first] = items;
    if (first === undefined || first.kind === 'break') return 0;
    const header = first.kind === 'slice' ? (first.header?.height ?? 0) : 0;
    return heightOf(items) + (this.empty ? header : first.before);
  }

  holds(items: readonly Item[]): boolean {
    return this.height + this.needs(items) <= this.area.height + 0.01;
  }

  put(item: Slice): void {
    if (!this.empty) this.height += item.before;
    else if (item.header !== undefined) this.place(item.header);
    this.place(item);
  }

  private place({ height, draw, anchor }: Pick<Slice, 'height' | 'draw' | 'anchor'>): void {
    const named = anchor === undefined ? {} : { anchor };
    this.placed.push({ x: this.area.x, y: this.area.y + this.height, draw, ...named });
    this.height += height;
  }

  /** Both sides as far as they go; what is left over is a pair again. */
  putPair(pair: Pair): Pair | undefined {
    const y = this.height + (this.empty ? 0 : pair.before);
    const area = { x: this.area.x, y: this.area.y + y, height: this.area.height - y };
    const left = fill(pair.left, area, this.empty);
    const right = fill(pair.right, { ...area, x: area.x + pair.rightAt }, this.empty);
    this.placed.push(...left.placed, ...right.placed);
    if (left.placed.length + right.placed.length > 0) this.height = y + Math.max(left.height, right.height);
    if (left.rest.length + right.rest.length === 0) return undefined;
    return { ...pair, left: left.rest, right: right.rest };
  }
}

/** Whether a group that does not fit here is better begun here than moved to the next page. */
function mustBegin(group: readonly Item[], column: Column, area: Area, wholePage: boolean): boolean {
  const height = heightOf(group);
  if (column.empty && wholePage) return true;
  if (group.length === 1 && group[0]?.kind === 'pair') return height > area.height * pairMoves;
  return height > area.height;
}

/**
 * Puts items one below the other until the area is full. Groups bound by `keep` stay whole unless they are higher than a page.
 * @param wholePage the area begins at the top of a page, so that nothing is won by waiting for the next one
 */
function fill(items: readonly Item[], area: Area, wholePage: boolean): Filled {
  const column = new Column(area);
  let at = 0;
  const done = (left?: Pair): Filled => ({
    placed: column.placed,
    height: column.height,
    rest: left === undefined ? items.slice(at) : [left, ...items.slice(at)],
  });
  for (let next = items[at]; next !== undefined; next = items[at]) {
    if (next.kind === 'break') {
      at += 1;
      return done();
    }
    const group = groupAt(items, at);
    const whole = column.holds(group);
    if (!whole && !mustBegin(group, column, area, wholePage)) return done();
    for (const item of group) {
      if (item.kind === 'break') break;
      if (item.kind === 'pair') {
        at += 1;
        const left = column.putPair(item);
        if (left !== undefined) return done(left);
      } else {
        if (!column.holds([item]) && !(column.empty && wholePage)) return done();
        at += 1;
        column.put(item);
      }
    }
  }
  return done();
}

/** All items on as many pages as they take; `areaOf` tells the area of the page with that index, from 0. */
export function paginate(
  items: readonly Item[],
  areaOf: (page: number) => Area,
): readonly (readonly Placed[])[] {
  const pages: (readonly Placed[])[] = [];
  let rest = items;
  do {
    const filled = fill(rest, areaOf(pages.length), true);
    pages.push(filled.placed);
    rest = filled.rest;
  } while (rest.length > 0);
  return pages;
}
