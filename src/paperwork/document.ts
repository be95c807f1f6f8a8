/**
 * A paper as plain data: what it says, not where it stands on the page. Whoever knows the domain builds one of these;
 * `pdf/render.ts` turns it into a file. Sizes are in pt (1/72 in) unless a name says otherwise.
 */

/** A run of text; `strong` is set in bold. */
export interface Span {
  readonly text: string;
  readonly strong?: boolean;
}

/** Text as one string or as runs. Breaks fall at spaces and hyphens; U+00A0, U+202F, U+2009 and U+2011 never break. */
export type Text = string | readonly Span[];

export type Paper = 'A4' | 'Letter' | 'A6' | '4x6in';

/** The shapes of `look`: each is told apart by its outline and filling, so that it works in grey. */
export type MarkName =
  | 'stop'
  | 'wrong'
  | 'due'
  | 'overdue'
  | 'unknown'
  | 'candidate'
  | 'confirmed'
  | 'clearance';

// ---- drawings

export interface Shape {
  /** SVG path data in the units of the drawing. */
  readonly path: string;
  /** Hexadecimal colours, '#rrggbb'; a shape without a fill is not filled. */
  readonly fill?: string;
  readonly fillRule?: 'nonzero' | 'evenodd';
  readonly stroke?: string;
  readonly strokeWidth?: number;
  /** Lengths of dash and gap, in turn, in the units of the drawing. */
  readonly dash?: readonly number[];
  /** Ends of a line are cut off straight unless this says otherwise. */
  readonly cap?: 'round';
}

export interface DrawnText {
  readonly x: number;
  /** The base line of the text, down from the top of the drawing. */
  readonly y: number;
  readonly text: string;
  /** Height of the type in the units of the drawing. */
  readonly size: number;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly face?: 'sans' | 'bold' | 'serif';
  readonly colour?: string;
}

/** A vessel, a pictogram, a QR pattern: shapes and words inside a box of `width` by `height` units. */
export interface Drawing {
  readonly width: number;
  readonly height: number;
  /** What the drawing shows, in words, for a reader that cannot see it. */
  readonly says: string;
  readonly shapes: readonly Shape[];
  readonly texts?: readonly DrawnText[];
  /** Printed width in pt; the height follows. Without it one unit is one pt. Never wider than its column. */
  readonly printWidth?: number;
}

// ---- blocks

export interface Heading {
  readonly kind: 'heading';
  /** 1 for a part of the paper with a rule of ink under it, 2 and 3 for what is inside a part. */
  readonly level: 1 | 2 | 3;
  readonly text: string;
  /** Drawings that stand at the right end of the heading, as pictograms do. */
  readonly beside?: readonly Drawing[];
  /** Names it for a list of contents. */
  readonly anchor?: string;
}

/** The head of a part that is a paper of its own within the paper: as the masthead, one level below. */
export interface PartHead extends Masthead {
  readonly kind: 'part-head';
  readonly title: string;
  /** Names it for a list of contents. */
  readonly anchor?: string;
}

/** What is in the paper, each with the page on which its anchor stands. */
export interface Contents {
  readonly kind: 'contents';
  readonly items: readonly { readonly title: string; readonly anchor: string }[];
}

export interface Paragraph {
  readonly kind: 'paragraph';
  readonly text: Text;
  /** small: notes, 8.5 pt · body: 9 pt · large: 12 pt · display: 17 pt bold · code: 54 pt bold, for labels. */
  readonly size?: 'small' | 'body' | 'large' | 'display' | 'code';
}

export interface List {
  readonly kind: 'list';
  readonly items: readonly Text[];
  readonly numbered?: boolean;
}

/** Two columns of term and description; the renderer refuses a blank description. */
export interface Facts {
  readonly kind: 'facts';
  readonly facts: readonly { readonly term: string; readonly says: Text }[];
}

/**
 * What a table says in one place: never empty, the renderer refuses blank text. A `unit` stands after the figure, and in
 * a column aligned right the figures end at one edge and the units begin at another.
 */
export type Cell = string | { readonly text: string; readonly strong?: boolean; readonly unit?: string };

export interface Column<K extends string = string> {
  readonly key: K;
  readonly head: string;
  /** Share of the width of the table, relative to the other columns. */
  readonly share: number;
  readonly align?: 'left' | 'right';
}

export type Row<K extends string = string> =
  /** One cell for every column. */
  | { readonly kind: 'cells'; readonly cells: Readonly<Record<K, Cell>> }
  /** The first column names it, the others together say one thing: "Silver, lead" · "not determined". */
  | { readonly kind: 'one-answer'; readonly name: Cell; readonly says: Cell }
  /** Text over the whole width. */
  | { readonly kind: 'note'; readonly text: Text };

/** A table; its header comes again after a page break and no row is split. Build it with `table()`. */
export interface Table<K extends string = string> {
  readonly kind: 'table';
  readonly columns: readonly Column<K>[];
  readonly rows: readonly Row<K>[];
}

/** One line of a working: what is done, with the numbers put in, what comes out, where it is from. */
export interface WorkingLine {
  readonly sentence: string;
  /** A total has no formula of its own. */
  readonly formula?: string;
  readonly result: { readonly text: string; readonly unit?: string };
  readonly source?: string;
}

export interface Working {
  readonly kind: 'working';
  readonly lines: readonly WorkingLine[];
}

/** A frame of ink around text that must not be overlooked. */
export interface Caution {
  readonly kind: 'caution';
  readonly text: Text;
}

export interface DrawingBlock {
  readonly kind: 'drawing';
  readonly drawing: Drawing;
  /** Printed under the drawing. */
  readonly caption?: Text;
}

/** Drawings in a row, as pictograms on a label; those that find no room go on below. */
export interface DrawingRow {
  readonly kind: 'drawings';
  readonly drawings: readonly Drawing[];
}

/** A state mark in the left margin of its text. */
export interface MarkLine {
  readonly kind: 'mark';
  readonly mark: MarkName;
  readonly text: Text;
}

/** Lines to sign on, in pairs across the page, each with its label below. */
export interface Signatures {
  readonly kind: 'signatures';
  readonly lines: readonly SignatureLine[];
}

/** `drawn` is a signature that was given already; without one the line waits for a pen. */
export interface SignatureLine {
  readonly label: string;
  readonly drawn?: Drawing;
}

/** Two groups side by side; each goes on in its own column after a page break. */
export interface Columns {
  readonly kind: 'columns';
  readonly left: readonly Block[];
  readonly right: readonly Block[];
  /** Widths of left and right, relative to each other; halves when absent. */
  readonly shares?: readonly [left: number, right: number];
}

/** Stays on one page where one page can hold it. */
export interface Together {
  readonly kind: 'together';
  readonly parts: readonly Block[];
}

/** 2 pt of ink across the paper. */
export interface Rule {
  readonly kind: 'rule';
}

export interface PageBreak {
  readonly kind: 'page-break';
}

export type Block =
  | Heading
  | PartHead
  | Contents
  | Paragraph
  | List
  | Facts
  | Table
  | Working
  | Caution
  | DrawingBlock
  | DrawingRow
  | MarkLine
  | Signatures
  | Columns
  | Together
  | Rule
  | PageBreak;

// ---- the paper

/** The head of the first page: title in serif, a line under it, and at the right a code and a small square drawing. */
export interface Masthead {
  readonly line: Text;
  readonly code?: string;
  readonly corner?: Drawing;
}

export interface PaperDocument {
  readonly title: string;
  /** BCP 47, e.g. "en". */
  readonly language: string;
  readonly subject: string;
  readonly author: string;
  /** ISO 8601 with zone, e.g. "2026-05-14T09:58:00Z". */
  readonly createdAt: string;
  readonly paper: Paper;
  /** Without it the pages begin with the first part and have no title of their own, as labels do. */
  readonly masthead?: Masthead;
  /** Stands at the top of the second page and those after it. */
  readonly runningHead: string;
  /** Stand at the foot of every page, above each other, left of the page number. */
  readonly footLines: readonly string[];
  /** How the number of a page reads, e.g. "page {page} of {pages}"; absent: no page numbers, as on a label. */
  readonly pageWords?: string;
  /** Light grey, across every page, e.g. "draft". */
  readonly watermark?: string;
  readonly parts: readonly Block[];
}

/** A file put inside the PDF, such as the same data as JSON. */
export interface Attachment {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly mime: string;
  readonly description: string;
}

/** A table whose rows must have a cell for each of its columns, held by the type. */
export const table = <const K extends string>(
  columns: readonly Column<K>[],
  rows: readonly Row<NoInfer<K>>[],
): Table => ({ kind: 'table', columns, rows });
