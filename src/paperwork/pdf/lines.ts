import type { Span, Text } from '../document';
import type { Face, Pen } from './pen';
import type { Style } from './styles';

/** A piece of a line in one font; widths in pt. */
export interface Run {
  readonly text: string;
  readonly face: Face;
  readonly width: number;
}

export interface Line {
  readonly runs: readonly Run[];
  readonly width: number;
}

type Measure = Pen['widthOf'];

/** Text that stays together: `glue` says that no break is allowed before it. */
interface Atom {
  readonly text: string;
  readonly face: Face;
  readonly kind: 'word' | 'space' | 'newline';
  readonly glue: boolean;
}

/** A hyphen or dash between two words of two letters or more lets the line break after it; codes such as B-17 stay whole. */
const afterHyphen = /(?<=\p{L}{2}[-–—])(?=\p{L}{2})/u;

/** Control characters, soft hyphens, joiners and marks of direction or variant: a page shows nothing for them. */
const unseen = /(?![\n\u200b])[\p{Cc}\p{Cf}]|\p{Variation_Selector}/gu;

const printable = (text: string): string =>
  text.normalize('NFC').replace(/\r\n?/g, '\n').replace(/\t/g, ' ').replace(unseen, '');

const spansOf = (text: Text): readonly Span[] => (typeof text === 'string' ? [{ text }] : text);

/** The words of a text without its marking, for checks and for the properties of a file. */
export const plainText = (text: Text): string =>
  spansOf(text)
    .map((span) => span.text)
    .join('');

function atomsOf(text: Text, face: Face): Atom[] {
  const atoms: Atom[] = [];
  for (const span of spansOf(text)) {
    const spanFace = span.strong ? 'bold' : face;
    for (const part of printable(span.text).match(/\n| +|\u200b|[^ \n\u200b]+/g) ?? []) {
      if (part === '\n') atoms.push({ text: '', face: spanFace, kind: 'newline', glue: false });
      else if (part === '\u200b' || part.startsWith(' '))
        atoms.push({
          text: part === '\u200b' ? '' : part,
          face: spanFace,
          kind: 'space',
          glue: false,
        });
      else
        part.split(afterHyphen).forEach((word, index) => {
          atoms.push({ text: word, face: spanFace, kind: 'word', glue: index === 0 });
        });
    }
  }
  return atoms;
}

/** The text cut before each character at which a reader would not see a letter torn apart. */
const characters = (text: string): string[] => text.match(/\P{M}\p{M}*|\p{M}+/gu) ?? [];

class LineBuilder {
  readonly lines: Line[] = [];
  private runs: Run[] = [];
  private width = 0;
  private space: Run | undefined;

  private readonly limit: number;
  private readonly size: number;
  private readonly measure: Measure;

  constructor(limit: number, size: number, measure: Measure) {
    this.limit = limit;
    this.size = size;
    this.measure = measure;
  }

  run(text: string, face: Face): Run {
    return { text, face, width: this.measure(text, face, this.size) };
  }

  /** A word of one or more runs, whole on this line, or on the next, or cut when it is longer than a line. */
  word(word: readonly Run[]): void {
    const width = word.reduce((sum, run) => sum + run.width, 0);
    const withSpace = this.width + (this.space?.width ?? 0) + width;
    if (withSpace > this.limit && this.runs.length > 0) this.newLine();
    if (width > this.limit) this.cut(word);
    else this.append(word);
  }

  blank(space: Run): void {
    if (this.runs.length > 0) this.space = space;
  }

  newLine(): void {
    this.lines.push({ runs: joined(this.runs), width: this.width });
    this.runs = [];
    this.width = 0;
    this.space = undefined;
  }

  end(): readonly Line[] {
    if (this.runs.length > 0 || this.lines.length === 0) this.newLine();
    return this.lines;
  }

  private append(runs: readonly Run[]): void {
    const all = this.space === undefined ? runs : [this.space, ...runs];
    this.runs.push(...all);
    this.width += all.reduce((sum, run) => sum + run.width, 0);
    this.space = undefined;
  }

  private cut(word: readonly Run[]): void {
    for (const { text, face } of word) {
      for (const character of characters(text)) {
        const run = this.run(character, face);
        if (this.width + run.width > this.limit && this.runs.length > 0) this.newLine();
        this.append([run]);
      }
    }
  }
}

/** Neighbours in one font become one run, so that a reader of the file finds whole words. */
function joined(runs: readonly Run[]): readonly Run[] {
  const out: Run[] = [];
  for (const run of runs) {
    const last = out.at(-1);
    if (last?.face === run.face)
      out[out.length - 1] = {
        text: last.text + run.text,
        face: run.face,
        width: last.width + run.width,
      };
    else out.push(run);
  }
  return out;
}

/**
 * Breaks a text into lines of at most `width` pt. Always at least one line; never empty of runs but for blank lines.
 * @example linesOf('Copper nitrate', 40, body, pen.widthOf) // two lines
 */
export function linesOf(text: Text, width: number, style: Style, measure: Measure): readonly Line[] {
  const builder = new LineBuilder(width, style.size, measure);
  let word: Run[] = [];
  const flush = () => {
    if (word.length > 0) builder.word(word);
    word = [];
  };
  for (const atom of atomsOf(text, style.face)) {
    if (atom.kind !== 'word' || !atom.glue) flush();
    if (atom.kind === 'newline') builder.newLine();
    else if (atom.kind === 'space') builder.blank(builder.run(atom.text, atom.face));
    else word.push(builder.run(atom.text, atom.face));
  }
  flush();
  return builder.end();
}
