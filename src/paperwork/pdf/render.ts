import type { Attachment, PaperDocument } from '../document';
import { layOut } from './blocks';
import { pdfFile } from './file';
import { areaOf, drawFurniture, drawWatermark, mastheadItem, sheetOf } from './furniture';
import { paginate } from './pages';
import type { Fonts, Pen, Tag } from './pen';
import { type Place, spaced } from './slices';

/** What goes with a paper into its file. */
export interface RenderOptions {
  readonly attachments?: readonly Attachment[];
}

function itemsOf(pen: Pen, paper: PaperDocument, tag: Tag) {
  const { width, margin } = sheetOf(paper.paper);
  const lowest = Math.min(areaOf(pen, paper, 0).height, areaOf(pen, paper, 1).height);
  const place: Place = {
    pen,
    tag,
    width: width - 2 * margin,
    pageHeight: lowest,
    headingShift: paper.masthead === undefined ? 0 : 1,
  };
  if (paper.masthead === undefined) return layOut(paper.parts, place);
  const head = mastheadItem(place, paper.title, paper.masthead);
  return [head, ...spaced(layOut(paper.parts, place), 12)];
}

function drawPages(pen: Pen, paper: PaperDocument, tag: Tag): void {
  const { width, height } = sheetOf(paper.paper);
  const pages = paginate(itemsOf(pen, paper, tag), (page) => areaOf(pen, paper, page));
  pages.forEach((placed, index) => {
    pen.document.addPage({ size: [width, height], margin: 0 });
    if (paper.watermark !== undefined) drawWatermark(pen, paper, paper.watermark);
    for (const { draw, x, y } of placed) draw(x, y);
    drawFurniture(pen, paper, index + 1, pages.length);
  });
}

/**
 * The paper as a PDF/A-3a file: tagged, with its language, its fonts and the attachments inside. The same paper gives the
 * same bytes. pdfkit is loaded when the first paper is made.
 * @throws when a cell, a note, a fact or a result is blank, or a table has no rows: what is not known is said in words
 */
export const renderPdf = (
  paper: PaperDocument,
  fonts: Fonts,
  options: RenderOptions = {},
): Promise<Uint8Array> =>
  pdfFile(paper, fonts, options.attachments ?? [], (pen, root) => drawPages(pen, paper, root));
