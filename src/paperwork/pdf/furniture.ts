import type { Masthead, Paper, PaperDocument } from '../document';
import { drawFigure, figureTag, sizeOf } from './drawing';
import { linesOf } from './lines';
import type { Area } from './pages';
import type { Pen } from './pen';
import { type Place, type Slice, slice } from './slices';
import {
  baselineIn,
  body,
  hairline,
  hairlineInk,
  heavyLine,
  ink,
  type Style,
  small,
  title,
  titleCode,
} from './styles';
import { drawLine } from './text';

const mm = 72 / 25.4;

/** Width, height and margin of a sheet in pt. */
export interface Sheet {
  readonly width: number;
  readonly height: number;
  readonly margin: number;
}

const sheets: Readonly<Record<Paper, Sheet>> = {
  A4: { width: 210 * mm, height: 297 * mm, margin: 16 * mm },
  Letter: { width: 612, height: 792, margin: 16 * mm },
  A6: { width: 105 * mm, height: 148 * mm, margin: 6 * mm },
  '4x6in': { width: 288, height: 432, margin: 6 * mm },
};

export const sheetOf = (paper: Paper): Sheet => sheets[paper];

/** The running head with its line, on the second page and after, in pt. */
const headHeight = small.leading + 12;

const innerWidth = (sheet: Sheet) => sheet.width - 2 * sheet.margin;

/** "page 2 of 3" from "page {page} of {pages}". */
const pageNumber = (words: string, page: number, pages: number): string =>
  words.replaceAll('{pages}', String(pages)).replaceAll('{page}', String(page));

function footLinesOf(pen: Pen, paper: PaperDocument, sheet: Sheet) {
  const widest = paper.pageWords === undefined ? '' : pageNumber(paper.pageWords, 999, 999);
  const width = innerWidth(sheet) - pen.widthOf(widest, small.face, small.size) - 12;
  return paper.footLines.flatMap((line) => linesOf(line, width, small, pen.widthOf));
}

function footHeight(pen: Pen, paper: PaperDocument, sheet: Sheet): number {
  const numbered = paper.pageWords === undefined ? 0 : 1;
  const count = Math.max(footLinesOf(pen, paper, sheet).length, numbered);
  return count === 0 ? 0 : count * small.leading + 10;
}

/** The area of the page with that index, from 0: less the running head from the second page on, less the foot. */
export function areaOf(pen: Pen, paper: PaperDocument, page: number): Area {
  const sheet = sheetOf(paper.paper);
  const head = page > 0 && paper.runningHead !== '' ? headHeight : 0;
  const y = sheet.margin + head;
  return {
    x: sheet.margin,
    y,
    height: sheet.height - sheet.margin - footHeight(pen, paper, sheet) - y,
  };
}

/** Running head, foot and number of one page; `page` from 1. */
export function drawFurniture(pen: Pen, paper: PaperDocument, page: number, pages: number): void {
  const sheet = sheetOf(paper.paper);
  const width = innerWidth(sheet);
  const foot = footLinesOf(pen, paper, sheet);
  const top = sheet.height - sheet.margin - Math.max(foot.length, 1) * small.leading;
  pen.aside(() => {
    const [head] = linesOf(paper.runningHead, width, small, pen.widthOf);
    if (page > 1 && paper.runningHead !== '' && head !== undefined) {
      drawLine(pen, head, small, sheet.margin, sheet.margin);
      pen.rule(sheet.margin, sheet.margin + small.leading + 2, width, hairline, hairlineInk);
    }
    foot.forEach((line, index) => {
      drawLine(pen, line, small, sheet.margin, top + index * small.leading);
    });
    if (paper.pageWords === undefined) return;
    const words = linesOf(pageNumber(paper.pageWords, page, pages), width, small, pen.widthOf);
    const [number] = words;
    const y = sheet.height - sheet.margin - small.leading;
    if (number !== undefined) drawLine(pen, number, small, sheet.margin + width - number.width, y);
  });
}

/** The watermark along the rising diagonal of the page, light enough to read through. */
export function drawWatermark(pen: Pen, paper: PaperDocument, words: string): void {
  const { width, height } = sheetOf(paper.paper);
  const diagonal = Math.hypot(width, height);
  const size = Math.min((diagonal * 0.7) / pen.widthOf(words, 'bold', 1), height / 5);
  pen.aside(() => {
    pen.document.save().translate(width / 2, height / 2);
    pen.document.rotate((-Math.atan2(height, width) * 180) / Math.PI);
    pen.text(words, -pen.widthOf(words, 'bold', size) / 2, size * 0.36, {
      face: 'bold',
      size,
      colour: '#eceeed',
    });
    pen.document.restore();
  });
}

/** Smaller as far as a text of that width needs it: a code that is cut would be another code. */
const narrowed = (style: Style, wide: number, room: number): Style =>
  wide <= room ? style : { ...style, size: (style.size * room) / wide };

/** Title and line at the left, code and corner drawing at the right, and the heavy line under them. */
export function mastheadItem(
  place: Place,
  name: string,
  masthead: Masthead,
  role: 'H1' | 'H2' = 'H1',
): Slice {
  const { pen, width } = place;
  const titleTag = pen.tag(place.tag, role);
  const lineTag = pen.tag(place.tag, 'P');
  const codeTag = masthead.code === undefined ? undefined : pen.tag(place.tag, 'P');
  const { corner } = masthead;
  const cornerTag = corner === undefined ? undefined : figureTag(pen, place.tag, corner);
  const cornerSize = corner === undefined ? undefined : sizeOf(corner, { width: width / 4, height: 56 });
  const cornerWidth = cornerSize === undefined ? 0 : cornerSize.width + 10;
  const code = masthead.code ?? '';
  const codeStyle = narrowed(titleCode, pen.widthOf(code, titleCode.face, titleCode.size), width / 3);
  const codeWidth = pen.widthOf(code, codeStyle.face, codeStyle.size);
  const room = width - cornerWidth - codeWidth - 12;
  const titles = linesOf(name, room, title, pen.widthOf);
  const lines = linesOf(masthead.line, width - cornerWidth, body, pen.widthOf);
  const words = titles.length * title.leading + 2 + lines.length * body.leading;
  const height = Math.max(words, cornerSize?.height ?? 0) + 6 + heavyLine;
  return slice(height, (x, y) => {
    pen.inside(titleTag, () => {
      titles.forEach((line, index) => {
        drawLine(pen, line, title, x, y + index * title.leading);
      });
    });
    pen.inside(lineTag, () => {
      lines.forEach((line, index) => {
        drawLine(pen, line, body, x, y + titles.length * title.leading + 2 + index * body.leading);
      });
    });
    if (codeTag !== undefined)
      pen.inside(codeTag, () =>
        pen.text(code, x + width - cornerWidth - codeWidth, y + baselineIn(codeStyle), codeStyle),
      );
    if (corner !== undefined && cornerTag !== undefined && cornerSize !== undefined)
      pen.inside(cornerTag, () => drawFigure(pen, corner, x + width - cornerSize.width, y, cornerSize.width));
    pen.aside(() => pen.rule(x, y + height - heavyLine, width, heavyLine, ink));
  });
}
