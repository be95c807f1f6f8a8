import type PDFDocument from 'pdfkit';
import type { StructureElement } from 'pdfkit';

/** The three fonts of a paper. */
export type Face = 'sans' | 'bold' | 'serif';

/** The font files, TrueType. */
export type Fonts = Readonly<Record<Face, Uint8Array>>;

/** A node of the structure that a screen reader walks through. */
export type Tag = StructureElement;

export type TagName =
  | ('H1' | 'H2' | 'H3' | 'H4' | 'P' | 'L' | 'LI' | 'Lbl' | 'LBody' | 'Sect' | 'TOC' | 'TOCI')
  | ('Table' | 'TR' | 'TH' | 'TD' | 'Figure');

export interface Ink {
  readonly face: Face;
  /** pt */
  readonly size: number;
  /** '#rrggbb' */
  readonly colour: string;
}

/** What draws on the page that was opened last. Lengths in pt from the upper left corner of the page. */
export interface Pen {
  readonly document: PDFDocument;
  /** Advance width in pt. */
  readonly widthOf: (text: string, face: Face, size: number) => number;
  /** A new last child of `parent`. */
  readonly tag: (
    parent: Tag,
    name: TagName,
    says?: { readonly alt?: string; readonly scope?: 'Column' | 'Row' },
  ) => Tag;
  /** Everything that `draw` draws belongs to the tag. */
  readonly inside: (tag: Tag, draw: () => void) => void;
  /** What `draw` draws is decoration, passed over by a screen reader. */
  readonly aside: (draw: () => void) => void;
  readonly text: (text: string, x: number, baseline: number, ink: Ink) => void;
  /** A line `width` long, hanging down `thickness` from y. */
  readonly rule: (x: number, y: number, width: number, thickness: number, colour: string) => void;
}

export function penFor(document: PDFDocument): Pen {
  const widths = new Map<string, number>();
  const drawable = new Map<string, boolean>();

  function has(character: string): boolean {
    let known = drawable.get(character);
    if (known === undefined) {
      known = document._font.font.hasGlyphForCodePoint(character.codePointAt(0) ?? 0);
      drawable.set(character, known);
    }
    return known;
  }

  /** What the fonts have no letter for prints as U+FFFD: a gap would look as if nothing had been written there. */
  const shown = (text: string): string =>
    text.replace(/[\u0250-\u{10ffff}]/gu, (character) => (has(character) ? character : '\ufffd'));

  function widthOf(text: string, face: Face, size: number): number {
    const key = `${face} ${text}`;
    let perPoint = widths.get(key);
    if (perPoint === undefined) {
      perPoint = document.font(face).fontSize(1000).widthOfString(shown(text)) / 1000;
      widths.set(key, perPoint);
    }
    return perPoint * size;
  }

  function tag(parent: Tag, name: TagName, says: { alt?: string; scope?: 'Column' | 'Row' } = {}): Tag {
    const element = document.struct(name, says);
    parent.add(element);
    return element;
  }

  function inside(element: Tag, draw: () => void): void {
    const content = document.markStructureContent(String(element.dictionary.data.S));
    draw();
    document.endMarkedContent();
    element.add(content);
  }

  function aside(draw: () => void): void {
    document.markContent('Artifact', { type: 'Layout' });
    draw();
    document.endMarkedContent();
  }

  function text(words: string, x: number, baseline: number, ink: Ink): void {
    document.font(ink.face).fontSize(ink.size).fillColor(ink.colour);
    document.text(shown(words), x, baseline, { lineBreak: false, baseline: 'alphabetic' });
  }

  function rule(x: number, y: number, width: number, thickness: number, colour: string): void {
    document.rect(x, y, width, thickness).fill(colour);
  }

  return { document, widthOf, tag, inside, aside, text, rule };
}
