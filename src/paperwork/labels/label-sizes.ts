/** Real sizes of labels, and of sheets that carry several. Lengths in pt from the upper left corner. */

const mm = 72 / 25.4;
const inch = 72;

export type LabelSizeId = 'A6' | '105x74' | '4x6in';

export type LabelSize = {
  readonly width: number;
  readonly height: number;
  /** White that stays at every edge: printers reach no further, and the pattern needs it. */
  readonly margin: number;
  /** Whether there is more room beside than below: the label is laid out in two columns. */
  readonly wide: boolean;
  /** The smallest type on it, pt: what a paper's notes have, less on the small label, which is held in the hand. */
  readonly leastType: number;
};

/** A6 is half of A5 (ISO 216); the small one is half of that. Four by six inches is a usual roll of thermal printers. */
export const labelSizes: Readonly<Record<LabelSizeId, LabelSize>> = {
  A6: { width: 105 * mm, height: 148 * mm, margin: 6 * mm, wide: false, leastType: 8.5 },
  '105x74': { width: 105 * mm, height: 74 * mm, margin: 4 * mm, wide: true, leastType: 7 },
  '4x6in': { width: 4 * inch, height: 6 * inch, margin: 6 * mm, wide: false, leastType: 8.5 },
};

export type LabelSheetId = LabelSizeId | 'A4-of-4' | 'A4-of-8' | 'Letter-of-2';

export type LabelSheet = {
  readonly width: number;
  readonly height: number;
  readonly size: LabelSizeId;
  /** Upper left corners of its labels, in rows. */
  readonly places: readonly { readonly x: number; readonly y: number }[];
};

/** A grid of labels in the middle of a page. */
function grid(
  page: { readonly width: number; readonly height: number },
  size: LabelSizeId,
  columns: number,
  rows: number,
): LabelSheet {
  const { width, height } = labelSizes[size];
  const left = (page.width - columns * width) / 2;
  const top = (page.height - rows * height) / 2;
  const places = Array.from({ length: columns * rows }, (_, at) => ({
    x: left + (at % columns) * width,
    y: top + Math.floor(at / columns) * height,
  }));
  return { ...page, size, places };
}

const A4 = { width: 210 * mm, height: 297 * mm };
const Letter = { width: 8.5 * inch, height: 11 * inch };

/** One label a page in its own size, or several on a sheet with marks to cut along. */
export const labelSheets: Readonly<Record<LabelSheetId, LabelSheet>> = {
  A6: grid(labelSizes.A6, 'A6', 1, 1),
  '105x74': grid(labelSizes['105x74'], '105x74', 1, 1),
  '4x6in': grid(labelSizes['4x6in'], '4x6in', 1, 1),
  'A4-of-4': grid(A4, 'A6', 2, 2),
  'A4-of-8': grid(A4, '105x74', 2, 4),
  'Letter-of-2': grid(Letter, '4x6in', 2, 1),
};

/** The sheet of labels that goes with a paper of that size. */
export const labelSheetFor = { A4: 'A4-of-4', Letter: 'Letter-of-2' } as const satisfies Readonly<
  Record<string, LabelSheetId>
>;

export const labelSheetIds = Object.keys(labelSheets) as [LabelSheetId, ...LabelSheetId[]];

/** Places of a sheet to choose from: their index, and the number that people count by. */
export const placesOn = (id: LabelSheetId): readonly { readonly index: string; readonly number: string }[] =>
  labelSheets[id].places.map((_, index) => ({ index: `${index}`, number: `${index + 1}` }));
