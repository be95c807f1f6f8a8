import type { Attachment, PaperDocument } from '../document';
import { type Tell, untold } from '../progress';
import { layOut } from './blocks';
import { pdfFile } from './file';
import { areaOf, drawFurniture, drawWatermark, mastheadItem, sheetOf } from './furniture';
import { type Placed, paginate } from './pages';
import type { Fonts, Pen, Tag } from './pen';
import { type Place, spaced } from './slices';

/** A page that somebody else draws. It bears no head and no foot of the paper, and counts among its pages. */
export interface DrawnPage {
  /** pt */
  readonly width: number;
  readonly height: number;
  /** Everything that is read goes inside a tag below the one given. */
  readonly draw: (pen: Pen, tag: Tag) => void;
}

/** Pages after those of the paper; the list of contents finds the first by `anchor`. */
export interface PagesAfter {
  readonly anchor: string;
  readonly pages: (pen: Pen) => readonly DrawnPage[];
}

/** What goes with a paper into its file. */
export interface RenderOptions {
  readonly attachments?: readonly Attachment[];
  readonly after?: PagesAfter;
  /** How many parts are set, then how many pages are drawn, then that the file is closed. */
  readonly tell?: Tell;
}

function itemsOf(pen: Pen, paper: PaperDocument, tag: Tag, pageOf: Place['pageOf'], tell: Tell) {
  const { width, margin } = sheetOf(paper.paper);
  const lowest = Math.min(areaOf(pen, paper, 0).height, areaOf(pen, paper, 1).height);
  const place: Place = {
    pen,
    tag,
    width: width - 2 * margin,
    pageHeight: lowest,
    headingShift: paper.masthead === undefined ? 0 : 1,
    pageOf,
  };
  const of = paper.parts.length;
  const items = layOut(paper.parts, place, (done) => tell({ stage: 'setting', done, of }));
  if (paper.masthead === undefined) return items;
  const head = mastheadItem(place, paper.title, paper.masthead);
  return [head, ...spaced(items, 12)];
}

const anchorsOf = (pages: readonly (readonly Placed[])[]) =>
  pages.flatMap((placed, index) =>
    placed.flatMap(({ anchor }) => (anchor === undefined ? [] : [[anchor, index + 1] as const])),
  );

function drawPages(pen: Pen, paper: PaperDocument, tag: Tag, { after, tell = untold }: RenderOptions): void {
  const { width, height } = sheetOf(paper.paper);
  const numbers = new Map<string, number>();
  const items = itemsOf(pen, paper, tag, (anchor) => numbers.get(anchor), tell);
  const pages = paginate(items, (page) => areaOf(pen, paper, page));
  const drawn = after?.pages(pen) ?? [];
  for (const [anchor, page] of anchorsOf(pages)) numbers.set(anchor, page);
  if (after !== undefined && drawn.length > 0) numbers.set(after.anchor, pages.length + 1);
  const of = pages.length + drawn.length;
  pages.forEach((placed, index) => {
    tell({ stage: 'drawing', done: index, of });
    pen.document.addPage({ size: [width, height], margin: 0 });
    if (paper.watermark !== undefined) drawWatermark(pen, paper, paper.watermark);
    for (const { draw, x, y } of placed) draw(x, y);
    drawFurniture(pen, paper, index + 1, of);
  });
  drawn.forEach((page, index) => {
    tell({ stage: 'drawing', done: pages.length + index, of });
    pen.document.addPage({ size: [page.width, page.height], margin: 0 });
    page.draw(pen, tag);
  });
  tell({ stage: 'closing', done: 0, of: 1 });
}

/**
 * The paper as a PDF/A-3a file: tagged, with its language, its fonts and the attachments inside. The same paper gives the
 * same bytes.
 * @throws when a cell, a note, a fact or a result is blank, or a table has no rows: what is not known is said in words
 */
export const renderPdf = (
  paper: PaperDocument,
  fonts: Fonts,
  options: RenderOptions = {},
): Promise<Uint8Array> =>
  pdfFile(paper, fonts, options.attachments ?? [], (pen, root) => drawPages(pen, paper, root, options));
