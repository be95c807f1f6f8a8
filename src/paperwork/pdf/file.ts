/** A PDF/A-3a file: tagged, with its language, its fonts and its attachments inside. */
import PDFDocument from 'pdfkit';
import type { Attachment } from '../document';
import { packed } from './packed';
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

/** Bytes one after the other, in one array that grows. */
class Bytes {
  private held = new Uint8Array(2 ** 16);
  private length = 0;

  add(chunk: Uint8Array): void {
    const length = this.length + chunk.byteLength;
    if (length > this.held.byteLength) {
      const more = new Uint8Array(2 * length);
      more.set(this.all());
      this.held = more;
    }
    this.held.set(chunk, this.length);
    this.length = length;
  }

  all(): Uint8Array {
    return this.held.subarray(0, this.length);
  }
}

/**
 * Takes its bytes as they are written. In the queue that pdfkit 0.20 has in a browser each one that waits makes the next
 * slower: it took more than half of the time of a set with its working.
 */
class WrittenDocument extends PDFDocument {
  // Without a value of its own: pdfkit writes before a field of ours could be set.
  declare private bytes?: Bytes;
  declare private ended?: (bytes: Uint8Array) => void;

  override push(chunk: Uint8Array | null): boolean {
    this.bytes ??= new Bytes();
    if (chunk === null) this.ended?.(this.bytes.all());
    else this.bytes.add(chunk);
    return chunk !== null;
  }

  /** Ends the document. */
  whole(): Promise<Uint8Array> {
    return new Promise((resolve, reject) => {
      this.ended = resolve;
      this.on('error', reject);
      this.end();
    });
  }
}

function newDocument(about: FileAbout, fonts: Fonts): WrittenDocument {
  const created = new Date(about.createdAt);
  const document = new WrittenDocument({
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
  const root = document.struct('Document');
  document.addStructure(root);
  draw(penFor(document), root);
  root.end();
  for (const attachment of attachments) attach(document, about, attachment);
  return packed(await document.whole());
}

/** How wide a text is in the fonts of the papers, for whoever lays out before a file is made. */
export function measureIn(fonts: Fonts): Pen['widthOf'] {
  const about = { title: '', language: 'en', subject: '', author: '', createdAt: '2000-01-01T00:00:00Z' };
  return penFor(newDocument(about, fonts)).widthOf;
}
