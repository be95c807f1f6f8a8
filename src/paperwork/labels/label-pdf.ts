/** Labels as a PDF in their real size, one a page or several on a sheet with marks to cut along. */
import type { Attachment } from '../document';
import { drawFigure, figureTag } from '../pdf/drawing';
import { type FileAbout, pdfFile } from '../pdf/file';
import type { Fonts, Pen, Tag } from '../pdf/pen';
import type { DrawnPage } from '../pdf/render';
import { ink } from '../pdf/styles';
import { drawLine } from '../pdf/text';
import type { LabelPart } from './boxes';
import type { LabelsData } from './label-data';
import { type LabelSheet, type LabelSheetId, labelSheets, labelSizes } from './label-sizes';
import type { LabelLayout } from './layout';
import { labelLayouts } from './layouts';
import type { FrameColour } from './pictograms';
import { labelWords as w } from './words';

export type LabelsWanted = {
  readonly sheet: LabelSheetId;
  readonly frame: FrameColour;
  /** The first place on a sheet that still has a label to peel off, from 0. */
  readonly firstPlace: number;
};

type Place = { readonly x: number; readonly y: number };

function drawPart(pen: Pen, tag: Tag, part: LabelPart, { x, y }: Place): void {
  if (part.kind === 'rule') {
    pen.aside(() => pen.rule(x + part.x, y + part.y, part.width, part.height, ink));
    return;
  }
  if (part.kind === 'drawing') {
    const draw = () => drawFigure(pen, part.drawing, x + part.x, y + part.y, part.width);
    if (part.drawing.says === '') pen.aside(draw);
    else pen.inside(figureTag(pen, tag, part.drawing), draw);
    return;
  }
  pen.inside(pen.tag(tag, 'P'), () => {
    for (const { line, ...at } of part.lines) drawLine(pen, line, part.style, x + at.x, y + at.y);
  });
}

/** Along the rising diagonal, light enough to read through. */
function drawDemo(pen: Pen, { width, height }: LabelLayout, { x, y }: Place): void {
  const size = Math.min((Math.hypot(width, height) * 0.7) / pen.widthOf(w.demo, 'bold', 1), height / 5);
  pen.aside(() => {
    pen.document.save().translate(x + width / 2, y + height / 2);
    pen.document.rotate((-Math.atan2(height, width) * 180) / Math.PI);
    const face = { face: 'bold', size, colour: '#e4e8e6' } as const;
    pen.text(w.demo, -pen.widthOf(w.demo, 'bold', size) / 2, size * 0.36, face);
    pen.document.restore();
  });
}

/** Short lines outside the labels where there is room, else crosses between them: a knife finds the edge, no text is crossed. */
function drawCuts(pen: Pen, { width, height, size, places }: LabelSheet): void {
  const label = labelSizes[size];
  const edges = (of: (place: Place) => number, long: number, most: number) =>
    [
      ...new Set(
        places.flatMap((place) => [of(place), of(place) + long]).map((at) => Math.round(at * 100) / 100),
      ),
    ].filter((at) => at > 1 && at < most - 1);
  const [xs, ys] = [edges(({ x }) => x, label.width, width), edges(({ y }) => y, label.height, height)];
  const [tick, hair] = [9, 0.6];
  pen.aside(() => {
    for (const x of xs) {
      for (const y of [0, height - tick]) pen.rule(x - hair / 2, y, hair, tick, ink);
      for (const y of ys) pen.rule(x - hair / 2, y - tick / 2, hair, tick, ink);
    }
    for (const y of ys) {
      for (const x of [0, width - tick]) pen.rule(x, y - hair / 2, tick, hair, ink);
      for (const x of xs) pen.rule(x - tick / 2, y - hair / 2, tick, hair, ink);
    }
  });
}

const aboutOf = (data: LabelsData): FileAbout => {
  const title = w.title(data.labels.map(({ code }) => code));
  return {
    title,
    language: data.language,
    subject: title,
    author: data.workshop.name,
    createdAt: data.madeAt,
  };
};

type OnPage = { readonly layout: LabelLayout; readonly place: Place };

function drawSheet(pen: Pen, root: Tag, sheet: LabelSheet, labels: readonly OnPage[], demo: boolean): void {
  if (sheet.places.length > 1) drawCuts(pen, sheet);
  for (const { layout, place } of labels) {
    if (demo) drawDemo(pen, layout, place);
    const section = pen.tag(root, 'Sect');
    for (const part of layout.parts) drawPart(pen, section, part, place);
  }
}

/** Labels in turn over the places of as many sheets as they take. */
export function labelPages(
  data: LabelsData,
  { sheet: id, frame, firstPlace }: LabelsWanted,
  { widthOf }: Pick<Pen, 'widthOf'>,
): readonly DrawnPage[] {
  const sheet = labelSheets[id];
  const { width, height, places, size } = sheet;
  const skipped = Math.max(0, Math.min(firstPlace, places.length - 1));
  const layouts = data.labels.flatMap((label) => labelLayouts(data, label, size, frame, widthOf));
  const pages: OnPage[][] = [];
  layouts.forEach((layout, index) => {
    const at = (index + skipped) % places.length;
    if (index === 0 || at === 0) pages.push([]);
    const place = places[at];
    if (place !== undefined) pages.at(-1)?.push({ layout, place });
  });
  return pages.map((labels) => ({
    width,
    height,
    draw: (pen, tag) => drawSheet(pen, tag, sheet, labels, data.demo),
  }));
}

/** Codes as a file may be called after them; more than three are counted. */
const fileCodes = ({ labels }: LabelsData): string =>
  labels.length > 3
    ? `${labels.length}`
    : labels
        .map(({ code }) =>
          code
            .replaceAll('\u2011', '-')
            .replace(/[^\p{L}\p{N}-]+/gu, '-')
            .slice(0, 40),
        )
        .join('_');

/** @example labelsFileName(data, 'A6', 'pdf') // 'label-C-07-A6-2026-05-14.pdf' */
export const labelsFileName = (data: LabelsData, sheet: LabelSheetId, format: 'pdf' | 'json'): string =>
  `${data.demo ? 'invented-' : ''}label-${fileCodes(data)}-${sheet}-${data.madeAt.slice(0, 10)}.${format}`;

export const labelsAttachment = (data: LabelsData, sheet: LabelSheetId): Attachment => ({
  name: labelsFileName(data, sheet, 'json'),
  bytes: new TextEncoder().encode(`${JSON.stringify(data, null, 2)}\n`),
  mime: 'application/json',
  description: w.attachment,
});

/** The file; what it says lies inside it as JSON, too. */
export const labelsPdf = (data: LabelsData, wanted: LabelsWanted, fonts: Fonts): Promise<Uint8Array> =>
  pdfFile(aboutOf(data), fonts, [labelsAttachment(data, wanted.sheet)], (pen, root) => {
    for (const { width, height, draw } of labelPages(data, wanted, pen)) {
      pen.document.addPage({ size: [width, height], margin: 0 });
      draw(pen, root);
    }
  });
