/** The part of pdfkit 0.20 that the papers use. Its published types would bring Node's globals into the page. */
declare module 'pdfkit' {
  export interface StructureElement {
    readonly dictionary: { readonly data: Record<string, unknown> };
    add(child: StructureElement | StructureContent): this;
    end(): void;
  }

  export interface StructureContent {
    readonly refs: readonly unknown[];
  }

  export interface DocumentOptions {
    readonly autoFirstPage: boolean;
    /** null: no default font file is read. */
    readonly font: null;
    readonly pdfVersion: '1.7';
    readonly subset: 'PDF/A-3a';
    readonly tagged: boolean;
    readonly lang: string;
    readonly displayTitle: boolean;
    readonly info: Readonly<Record<string, string | Date>>;
  }

  export interface FileOptions {
    readonly name: string;
    readonly type: string;
    readonly description: string;
    readonly relationship: 'Source' | 'Data' | 'Supplement';
    readonly creationDate: Date;
    readonly modifiedDate: Date;
  }

  export interface TextOptions {
    readonly lineBreak: false;
    readonly baseline: 'alphabetic';
  }

  export default class PDFDocument {
    constructor(options: DocumentOptions);
    addPage(options: { readonly size: readonly [number, number]; readonly margin: number }): this;
    registerFont(name: string, bytes: Uint8Array): this;
    font(name: string): this;
    /** The font chosen last. Not in the documentation of pdfkit; a test of the papers holds that it is there. */
    readonly _font: { readonly font: { hasGlyphForCodePoint(codePoint: number): boolean } };
    fontSize(size: number): this;
    widthOfString(text: string): number;
    text(text: string, x: number, y: number, options: TextOptions): this;

    save(): this;
    restore(): this;
    translate(x: number, y: number): this;
    scale(factor: number): this;
    rotate(degrees: number): this;
    path(data: string): this;
    rect(x: number, y: number, width: number, height: number): this;
    lineWidth(width: number): this;
    lineCap(cap: 'butt' | 'round'): this;
    lineJoin(join: 'miter' | 'round'): this;
    dash(lengths: number[], options: { readonly phase: number }): this;
    fillColor(colour: string): this;
    fill(colour: string, rule?: 'even-odd' | 'non-zero'): this;
    stroke(colour: string): this;
    fillAndStroke(fill: string, stroke: string, rule?: 'even-odd' | 'non-zero'): this;

    struct(type: string, options?: { readonly alt?: string; readonly scope?: string }): StructureElement;
    addStructure(element: StructureElement): this;
    markStructureContent(type: string): StructureContent;
    markContent(type: 'Artifact', options: { readonly type: 'Pagination' | 'Layout' }): this;
    endMarkedContent(): this;

    file(bytes: Uint8Array, options: FileOptions): unknown;
    /** Where the document writes to; null is the end. */
    push(chunk: Uint8Array | null): boolean;
    on(event: 'error', listener: (error: Error) => void): this;
    end(): void;
  }
}
