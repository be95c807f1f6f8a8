/** A PDF/A-3a file: tagged, with its language, its fonts and its attachments inside. */
import PDFDocument from 'pdfkit';
import type { Attachment } from '../document';
import { type Fonts, type Pen, penFor, type Tag } from './pen';

/** What the properties of a file say of it. */
export interface FileAbout {
  readonly title: string;
  /** BCP 47, e.g. "en". */
  readonly language: string;
  readonly subject: string;
  readonly author: string;
  /** ISO 8601 with zone. */
  readonly createdAt: string;
}

function newDocument(about: FileAbout, fonts: Fonts): PDFDocument {
  const created = new Date(about.createdAt);
  const document = new PDFDocument({
    autoFirstPage: false,
    font: null,
    pdfVersion: '1.7',
    subset: 'PDF/A-3a',
    tagged: true,
    lang: about.language,
    displayTitle: true,
    info: {
      Title: about.title,
      Subject: about.subject,
      Author: about.author,
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

function attach(document: PDFDocument, { createdAt }: FileAbout, attachment: Attachment): void {
  const { name, bytes, mime, description } = attachment;
  const date = new Date(createdAt);
  document.file(bytes, {
    name,
    type: mime,
    description,
    relationship: 'Data',
    creationDate: date,
    modifiedDate: date,
  });
}

/** @param draw adds the pages; everything that is read goes inside a tag below the one given */
export async function pdfFile(
  about: FileAbout,
  fonts: Fonts,
  attachments: readonly Attachment[],
  draw: (pen: Pen, root: Tag) => void,
): Promise<Uint8Array> {
  const document = newDocument(about, fonts);
  const bytes = bytesOf(document);
  const root = document.struct('Document');
  document.addStructure(root);
  draw(penFor(document), root);
  root.end();
  for (const attachment of attachments) attach(document, about, attachment);
  document.end();
  return bytes;
}

/** How wide a text is in the fonts of the papers, for whoever lays out before a file is made. */
export function measureIn(fonts: Fonts): Pen['widthOf'] {
  const about = { title: '', language: 'en', subject: '', author: '', createdAt: '2000-01-01T00:00:00Z' };
  return penFor(newDocument(about, fonts)).widthOf;
}
