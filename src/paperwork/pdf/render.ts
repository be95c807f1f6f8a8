import type PDFDocument from 'pdfkit';
import type { Attachment, PaperDocument } from '../document';
import { layOut } from './blocks';
import { areaOf, drawFurniture, drawWatermark, mastheadItem, sheetOf } from './furniture';
import { paginate } from './pages';
import { type Fonts, type Pen, penFor, type Tag } from './pen';
import { type Place, spaced } from './slices';

/** What goes with a paper into its file. */
export interface RenderOptions {
  readonly attachments?: readonly Attachment[];
}

async function newDocument(paper: PaperDocument, fonts: Fonts): Promise<PDFDocument> {
  const { default: Pdf } = await import('pdfkit');
  const created = new Date(paper.createdAt);
  const document = new Pdf({
    autoFirstPage: false,
    font: null,
    pdfVersion: '1.7',
    subset: 'PDF/A-3a',
    tagged: true,
    lang: paper.language,
    displayTitle: true,
    info: {
      Title: paper.title,
      Subject: paper.subject,
      Author: paper.author,
      CreationDate: created,
      ModDate: created,
    },
  });
  for (const [face, bytes] of Object.entries(fonts)) document.registerFont(face, bytes);
  return document;
}

/** All bytes a document gives until it ends; listens from the moment it is called. */
function bytesOf(document: PDFDocument): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    document.on('data', (chunk) => chunks.push(chunk));
    document.on('error', reject);
    document.on('end', () => {
      const bytes = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.byteLength, 0));
      let offset = 0;
      for (const chunk of chunks) {
        bytes.set(chunk, offset);
        offset += chunk.byteLength;
      }
      resolve(bytes);
    });
  });
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

function attach(
  document: PDFDocument,
  paper: PaperDocument,
  { name, bytes, mime, description }: Attachment,
): void {
  const date = new Date(paper.createdAt);
  document.file(bytes, {
    name,
    type: mime,
    description,
    relationship: 'Data',
    creationDate: date,
    modifiedDate: date,
  });
}

/**
 * The paper as a PDF/A-3a file: tagged, with its language, its fonts and the attachments inside. The same paper gives the
 * same bytes. pdfkit is loaded when the first paper is made.
 * @throws when a cell, a note, a fact or a result is blank, or a table has no rows: what is not known is said in words
 */
export async function renderPdf(
  paper: PaperDocument,
  fonts: Fonts,
  options: RenderOptions = {},
): Promise<Uint8Array> {
  const document = await newDocument(paper, fonts);
  const bytes = bytesOf(document);
  const root = document.struct('Document');
  document.addStructure(root);
  drawPages(penFor(document), paper, root);
  root.end();
  for (const attachment of options.attachments ?? []) attach(document, paper, attachment);
  document.end();
  return bytes;
}
