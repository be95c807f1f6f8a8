import type { Cell, Column, Row, Table, Text } from '../document';
import { type Line, linesOf, plainText } from './lines';
import type { Pen, Tag } from './pen';
import { type Item, type Place, slice } from './slices';
import {
  baselineIn,
  body,
  bodyStrong,
  hairline,
  hairlineInk,
  ink,
  inkLine,
  type Style,
  small,
} from './styles';
import { drawLine } from './text';

/** White between columns, and above and below the text of a row, in pt. */
const gap = 8;
const padding = 2.5;

/** A column where it stands: pt from the left edge of the table. */
interface Track {
  readonly x: number;
  readonly width: number;
  readonly align: 'left' | 'right';
  /** Room at the right end that only units use. */
  readonly unitWidth: number;
}

/** The lines of one cell at its place in the row. */
interface Box {
  readonly tag: Tag;
  readonly track: Track;
  readonly style: Style;
  readonly lines: readonly Line[];
  readonly unit: string | undefined;
}

const asCell = (cell: Cell) => (typeof cell === 'string' ? { text: cell } : cell);

/** Thin space, so that figure and unit are read as two words and never part. */
const withUnit = (unit: string) => `\u2009${unit}`;

function unitWidthOf(pen: Pen, column: Column, rows: readonly Row[]): number {
  if (column.align !== 'right') return 0;
  const widths = rows.map((row) => {
    const cell = row.kind === 'cells' ? row.cells[column.key] : undefined;
    const unit = cell === undefined ? undefined : asCell(cell).unit;
    return unit === undefined ? 0 : pen.widthOf(withUnit(unit), body.face, body.size);
  });
  return Math.max(0, ...widths);
}

function tracksOf(place: Place, table: Table): readonly Track[] {
  const shares = table.columns.reduce((sum, column) => sum + column.share, 0);
  const free = place.width - gap * (table.columns.length - 1);
  let x = 0;
  return table.columns.map((column) => {
    const width = (free * column.share) / shares;
    const track = {
      x,
      width,
      align: column.align ?? 'left',
      unitWidth: unitWidthOf(place.pen, column, table.rows),
    };
    x += width + gap;
    return track;
  });
}

/** The first column alone, and the others as one, text at the left. */
function oneAnswerTracks(tracks: readonly Track[], width: number): readonly Track[] {
  const [first, second] = tracks;
  if (first === undefined || second === undefined) return tracks;
  return [first, { x: second.x, width: width - second.x, align: 'left', unitWidth: 0 }];
}

function boxOf(pen: Pen, tag: Tag, track: Track, cell: Cell): Box {
  const { text, strong = false, unit } = asCell(cell);
  if (text.trim() === '') throw new Error('a cell of a table says nothing');
  const style = strong ? bodyStrong : body;
  const alignsUnit = track.align === 'right';
  const words = unit === undefined || alignsUnit ? text : `${text}${withUnit(unit)}`;
  const lines = linesOf(words, track.width - track.unitWidth, style, pen.widthOf);
  return { tag, track, style, lines, unit: alignsUnit ? unit : undefined };
}

function drawBoxLine(pen: Pen, box: Box, index: number, x: number, y: number): void {
  const line = box.lines[index];
  if (line === undefined) return;
  const { track, style } = box;
  const edge = x + track.x + track.width - track.unitWidth;
  const left = track.align === 'right' ? edge - line.width : x + track.x;
  pen.inside(box.tag, () => {
    drawLine(pen, line, style, left, y);
    if (box.unit !== undefined && index === box.lines.length - 1)
      pen.text(withUnit(box.unit), edge, y + baselineIn(style), body);
  });
}

interface Edge {
  readonly thickness: number;
  readonly colour: string;
}

const betweenRows: Edge = { thickness: hairline, colour: hairlineInk };
const atTheEnd: Edge = { thickness: inkLine, colour: ink };

/** A row as one slice a line, bound to each other, with its line below. */
function rowItems(place: Place, boxes: readonly Box[], edge: Edge, header: Header): readonly Item[] {
  const { pen, width } = place;
  const count = Math.max(...boxes.map((box) => box.lines.length));
  return Array.from({ length: count }, (_, index) => {
    const top = index === 0 ? padding : 0;
    const last = index === count - 1;
    const height = top + body.leading + (last ? padding + edge.thickness : 0);
    const draw = (x: number, y: number) => {
      for (const box of boxes) drawBoxLine(pen, box, index, x, y + top);
      if (last) pen.aside(() => pen.rule(x, y + height - edge.thickness, width, edge.thickness, edge.colour));
    };
    return slice(height, draw, { keep: !last, header });
  });
}

interface Header {
  readonly height: number;
  /** Draws it as decoration, for the pages after the first. */
  readonly draw: (x: number, y: number) => void;
  readonly first: Item;
}

function headerOf(place: Place, table: Table, tracks: readonly Track[]): Header {
  const { pen } = place;
  const row = pen.tag(place.tag, 'TR');
  const heads = table.columns.flatMap((column, index): Box[] => {
    const track = tracks[index];
    if (track === undefined) return [];
    const lines = linesOf(column.head, track.width - track.unitWidth, small, pen.widthOf);
    return [{ tag: pen.tag(row, 'TH', { scope: 'Column' }), track, style: small, lines, unit: undefined }];
  });
  const count = Math.max(...heads.map((head) => head.lines.length));
  const height = 2 * padding + count * small.leading + inkLine;
  const draw = (x: number, y: number, each: (box: Box, line: number, top: number) => void) => {
    for (const head of heads)
      for (const line of head.lines.keys()) each(head, line, y + padding + line * small.leading);
    pen.aside(() => pen.rule(x, y + height - inkLine, place.width, inkLine, ink));
  };
  const tagged = (x: number, y: number) =>
    draw(x, y, (head, line, top) => drawBoxLine(pen, head, line, x, top));
  const again = (x: number, y: number) =>
    draw(x, y, (head, index, top) => {
      const { track } = head;
      const line = head.lines[index];
      if (line === undefined) return;
      const right = x + track.x + track.width - track.unitWidth - line.width;
      pen.aside(() => drawLine(pen, line, small, track.align === 'right' ? right : x + track.x, top));
    });
  return { height, draw: again, first: slice(height, tagged, { keep: true }) };
}

/** A cell over several columns. */
function wideCell(pen: Pen, row: Tag, columns: number): Tag {
  const tag = pen.tag(row, 'TD');
  tag.dictionary.data.A = { O: 'Table', ColSpan: columns };
  return tag;
}

function noteBox(place: Place, tag: Tag, text: Text): Box {
  if (plainText(text).trim() === '') throw new Error('a note of a table says nothing');
  const track: Track = { x: 0, width: place.width, align: 'left', unitWidth: 0 };
  return {
    tag,
    track,
    style: small,
    lines: linesOf(text, place.width, small, place.pen.widthOf),
    unit: undefined,
  };
}

function boxesOf(place: Place, table: Table, tracks: readonly Track[], row: Row): readonly Box[] {
  const { pen } = place;
  const tag = pen.tag(place.tag, 'TR');
  if (row.kind === 'note') return [noteBox(place, wideCell(pen, tag, table.columns.length), row.text)];
  if (row.kind === 'one-answer') {
    const [nameTrack, saysTrack] = oneAnswerTracks(tracks, place.width);
    if (nameTrack === undefined || saysTrack === undefined) throw new Error('one answer needs two columns');
    return [
      boxOf(pen, pen.tag(tag, 'TD'), nameTrack, row.name),
      boxOf(pen, wideCell(pen, tag, table.columns.length - 1), saysTrack, row.says),
    ];
  }
  return table.columns.flatMap((column, index) => {
    const track = tracks[index];
    const cell = row.cells[column.key];
    if (track === undefined || cell === undefined) throw new Error(`no cell for the column ${column.key}`);
    return [boxOf(pen, pen.tag(tag, 'TD'), track, cell)];
  });
}

/** Header, rows and lines of a table. A table without rows says nothing and is refused. */
export function tableItems(outer: Place, table: Table): readonly Item[] {
  if (table.rows.length === 0) throw new Error('a table has no rows');
  const place = { ...outer, tag: outer.pen.tag(outer.tag, 'Table') };
  const tracks = tracksOf(place, table);
  const header = headerOf(place, table, tracks);
  const rows = table.rows.flatMap((row, index) => {
    const edge = index === table.rows.length - 1 ? atTheEnd : betweenRows;
    return rowItems(place, boxesOf(place, table, tracks, row), edge, header);
  });
  return [header.first, ...rows];
}
