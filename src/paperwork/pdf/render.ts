import type { Attachment, PaperDocument } from '../document';
import { type Tell, untold } from '../progress';
import { layOut } from './blocks';
import { pdfFile } from './file';
import { areaOf, drawFurniture, drawWatermark, mastheadItem, sheetOf } from './furniture';
import { paginate } from './pages';
import type { Fonts, Pen, Tag } from './pen';
import { type Place, spaced } from './slices';

/** What goes with a paper into its file. */
export interface RenderOptions {
  readonly attachments?: readonly Attachment[];
  /** How many parts are set, then how many pages are drawn. */
  readonly tell?: Tell;
}

function itemsOf(pen: Pen, paper: PaperDocument, tag: Tag, tell: Tell) {
  const { width, margin } = sheetOf(paper.paper);
  const lowest = Math.min(areaOf(pen, paper, 0).height, areaOf(pen, paper, 1).height);
  const place: Place = {
    pen,
    tag,
    width: width - 2 * margin,
    pageHeight: lowest,
    headingShift: paper.masthead === undefined ? 0 : 1,
  };
  const of = paper.parts.length;
  const items = layOut(paper.parts, place, (done) => tell({ stage: 'setting', done, of }));
  if (paper.masthead === undefined) return items;
  const head = mastheadItem(place, paper.title, paper.masthead);
  return [head, ...spaced(items, 12)];
}

function drawPages(pen: Pen, paper: PaperDocument, tag: Tag, tell: Tell): void {
  const { width, height } = sheetOf(paper.paper);
  const pages = paginate(itemsOf(pen, paper, tag, tell), (page) => areaOf(pen, paper, page));
  pages.forEach((placed, index) => {
    tell({ stage: 'drawing', done: index, of: pages.length });
    pen.document.addPage({ size: [width, height], margin: 0 });
    if (paper.watermark !== undefined) drawWatermark(pen, paper, paper.watermark);
    for (const { draw, x, y } of placed) draw(x, y);
    drawFurniture(pen, paper, index + 1, pages.length);
  });
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
  pdfFile(paper, fonts, options.attachments ?? [], (pen, root) =>
    drawPages(pen, paper, root, options.tell ?? untold),
  );
