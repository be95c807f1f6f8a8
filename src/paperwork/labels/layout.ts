/** Lays a label out in its real size: as large as all of it fits, then smaller, then with less on it, which it says. */
import { type Box, beside, type LabelPart, type Measure, stack } from './boxes';
import { codeBox, contentsBox, headingBox, qrBox } from './contents-part';
import { dateBoxes, footBox, neverBox } from './foot-part';
import { hazardsBox, mostPrecautions, statementsBox } from './hazards-part';
import type { LabelData, LabelsData } from './label-data';
import { type LabelSize, type LabelSizeId, labelSizes } from './label-sizes';
import type { FrameColour } from './pictograms';
import type { Fit, Setting } from './setting';

const mm = 72 / 25.4;

type Shape = 'tall' | 'wide';
const shapeOf = ({ wide }: LabelSize): Shape => (wide ? 'wide' : 'tall');

/**
 * From corner to corner. CLP Annex I, Table 1.3 (memory) gives the side of the square: 23 mm up to 50 litres, 16 mm where it
 * can be below 3 litres, never under 10 mm. Waste is not bound by it; a label that looks like it is read like it.
 */
const pictogramSizes: Readonly<Record<Shape, readonly number[]>> = {
  tall: [32.6 * mm, 28 * mm, 22.7 * mm, 20 * mm],
  wide: [22.7 * mm, 19 * mm, 16.5 * mm],
};
const leastPictogram = 14.2 * mm;

const scales: Readonly<Record<Shape, readonly number[]>> = {
  tall: [1.2, 1.1, 1, 0.95, 0.9],
  wide: [1.05, 1, 0.93],
};

const bodyTypes: Readonly<Record<Shape, number>> = { tall: 9.5, wide: 8 };

/** From everything, large, to the least that a label must say. What is told last here is given up first. */
function* fitsOf({ hazards, nevers }: LabelData, size: LabelSize): Generator<Fit> {
  const shape = shapeOf(size);
  const statements = hazards === 'not determined' ? 0 : hazards.statements.length;
  const precautions =
    hazards === 'not determined' ? 0 : Math.min(mostPrecautions, hazards.precautions.length);
  let fit: Fit = {
    scale: 1,
    pictogram: leastPictogram,
    sentences: statements,
    statements,
    precautions,
    nevers: nevers.length,
    nameLines: 2,
    secondLines: 2,
    indicationLines: 4,
    standingLines: 4,
    codeLines: 4,
    ownerLines: 3,
  };
  for (const scale of scales[shape])
    for (const pictogram of pictogramSizes[shape]) {
      fit = { ...fit, scale, pictogram };
      yield fit;
    }
  const less = function* (key: keyof Fit, from: number, to: number): Generator<Fit> {
    for (let n = from; n >= to; n -= 1) {
      fit = { ...fit, [key]: n };
      yield fit;
    }
  };
  yield* less('precautions', precautions - 1, 0);
  yield* less('secondLines', 1, 1);
  yield* less('nevers', nevers.length - 1, 4);
  fit = { ...fit, pictogram: leastPictogram };
  yield fit;
  yield* less('sentences', statements - 1, 1);
  yield* less('nevers', Math.min(3, nevers.length - 1), 2);
  yield* less('ownerLines', 2, 1);
  yield* less('nameLines', 1, 1);
  yield* less('sentences', 0, 0);
  yield* less('secondLines', 0, 0);
  yield* less('codeLines', 3, 1);
  yield* less('standingLines', 3, 1);
  yield* less('indicationLines', 3, 1);
  yield* less('statements', statements - 1, 3);
  yield* less('nevers', 1, 0);
  yield* less('statements', 2, 1);
}

type Halves = { readonly top: Box; readonly foot: Box };

function tall(setting: Setting, { width: all, margin }: LabelSize): Halves {
  const width = all - 2 * margin;
  const gap = 6 * setting.fit.scale;
  const qr = qrBox(setting, 29 * mm);
  const room = width - qr.width - 6;
  const heading = headingBox(setting, room, 12);
  const code = codeBox(setting, room, qr.height - heading.height);
  const head = beside([{ ...stack([heading, code], 0), width: room }, qr], 6);
  const body = [
    head,
    contentsBox(setting, width, 16),
    hazardsBox(setting, width),
    statementsBox(setting, width),
  ];
  const half = (width - 12) / 2;
  const [start, leave] = dateBoxes(setting, half, 17 * setting.fit.scale);
  const dates = beside([{ ...start, width: half }, leave], 12);
  const foot = [stack([neverBox(setting, width), dates], 4), footBox(setting, width)];
  return { top: stack(body, gap), foot: stack(foot, gap) };
}

function wide(setting: Setting, { width: all, margin }: LabelSize): Halves {
  const width = all - 2 * margin;
  const gap = 2;
  const qr = qrBox(setting, 24.5 * mm);
  const room = width - qr.width - 6;
  const codeRoom = room * 0.52;
  const code = { ...codeBox(setting, codeRoom, 28), width: codeRoom };
  const heading = headingBox(setting, room - codeRoom - 6, 10);
  const left = [
    beside([code, heading], 6, 'middle'),
    contentsBox(setting, room, 11),
    hazardsBox(setting, room),
  ];
  const right = stack([qr, stack(dateBoxes(setting, qr.width, 12), 1)], 1);
  const body = [beside([{ ...stack(left, gap), width: room }, right], 6), statementsBox(setting, width)];
  return {
    top: stack(body, gap),
    foot: stack([neverBox(setting, width), footBox(setting, width)], gap),
  };
}

export type LabelLayout = {
  readonly width: number;
  readonly height: number;
  readonly parts: readonly LabelPart[];
  /** What is not on the label in full, in words; the label itself says so, too. */
  readonly leftOut: readonly string[];
  /** All of it stands apart; false only where even the least does not fit. */
  readonly fits: boolean;
};

/** What was given up comes back in this order as far as there is room for it after all: two small things may do for one. */
const backInOrder = [
  'statements',
  'sentences',
  'nevers',
  'secondLines',
  'codeLines',
  'ownerLines',
  'precautions',
] as const;

function withMoreOn(first: Fit, whole: Fit, fits: (fit: Fit) => boolean): Fit {
  let fit = first;
  for (const key of backInOrder)
    for (let n = fit[key] + 1; n <= whole[key]; n += 1) {
      const more = { ...fit, [key]: n };
      if (fits(more)) fit = more;
    }
  return fit;
}

/** @param measure widths in the fonts that it will be drawn in */
export function labelLayout(
  data: LabelsData,
  label: LabelData,
  sizeId: LabelSizeId,
  frame: FrameColour,
  measure: Measure,
): LabelLayout {
  const size = labelSizes[sizeId];
  const { width, height, margin, leastType } = size;
  const bodyType = bodyTypes[shapeOf(size)];
  const laidOut = (fit: Fit): LabelLayout => {
    const leftOut = new Set<string>();
    const setting: Setting = { data, label, frame, measure, fit, bodyType, leastType, leftOut };
    const { top, foot } = (size.wide ? wide : tall)(setting, size);
    return {
      width,
      height,
      parts: [...top.at(margin, margin), ...foot.at(margin, height - margin - foot.height)],
      leftOut: [...leftOut],
      fits: top.height + foot.height + 3 <= height - 2 * margin,
    };
  };
  const all = [...fitsOf(label, size)];
  const [whole] = all;
  const found = all.find((fit) => laidOut(fit).fits) ?? all.at(-1);
  if (!whole || !found) throw new Error('a label has no way to be laid out');
  return laidOut(withMoreOn(found, whole, (fit) => laidOut(fit).fits));
}
