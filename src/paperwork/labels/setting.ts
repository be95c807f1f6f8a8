/** What every part of a label is told: whose label it is, how much may stand on it, and what it is set in. */

import { calendarDayText } from '../dates';
import type { Drawing, MarkName, Text } from '../document';
import { marks } from '../pdf/marks';
import type { Face } from '../pdf/pen';
import type { Style } from '../pdf/styles';
import { type Box, drawingBox, fittedBox, type Measure, nothing, styleOf, textBox } from './boxes';
import type { LabelData, LabelsData } from './label-data';
import type { FrameColour } from './pictograms';
import { labelWords as w } from './words';

/** How much of a label stands on it, and how large. */
export type Fit = {
  /** Of all type, against the usual size. */
  readonly scale: number;
  /** A pictogram from corner to corner, pt. */
  readonly pictogram: number;
  /** Hazard statements with their words; those behind them stand as codes. */
  readonly sentences: number;
  readonly statements: number;
  readonly precautions: number;
  readonly nevers: number;
  /** Lines that each of these may take: contents, what stands under them, the hazard in words, whose word it is, codes, owner. */
  readonly nameLines: number;
  readonly secondLines: number;
  readonly indicationLines: number;
  readonly standingLines: number;
  readonly codeLines: number;
  readonly ownerLines: number;
};

export type Setting = {
  readonly data: LabelsData;
  readonly label: LabelData;
  readonly frame: FrameColour;
  readonly measure: Measure;
  readonly fit: Fit;
  /** pt, before it is scaled. */
  readonly bodyType: number;
  /** Nothing is smaller, pt. */
  readonly leastType: number;
  /** Collects what is not on the label in full. */
  readonly leftOut: Set<string>;
};

/** In the scale of the fit, never under the smallest type. */
export const typeOf = ({ fit, leastType }: Setting, face: Face, size: number): Style =>
  styleOf(face, Math.max(leastType, size * fit.scale));

/** A text that is never cut. @param size pt, before it is scaled */
export const words = (setting: Setting, text: Text, face: Face, size: number, width: number): Box =>
  textBox(text, typeOf(setting, face, size), width, setting.measure);

/** A text that is set smaller, and cut at last, to stand in so many lines of its usual size; with none it is left out. */
export function linesUpTo(
  setting: Setting,
  text: string,
  style: Style,
  width: number,
  lines: number,
  whenCut: string,
): Box {
  const { leastType, measure, leftOut } = setting;
  if (lines === 0) {
    leftOut.add(whenCut);
    return nothing;
  }
  const type = { face: style.face, most: style.size, least: leastType };
  const room = { width, height: style.leading * lines };
  const { box, cut } = fittedBox(text, type, room, w.cut, measure);
  if (cut) leftOut.add(whenCut);
  return box;
}

const markDrawing = (name: MarkName): Drawing => ({ width: 24, height: 24, says: '', shapes: marks[name] });
export const markBox = (name: MarkName, side: number): Box => drawingBox(markDrawing(name), side);

export const isDay = (text: string): boolean => /^\d{4}-/.test(text);

/** A day as it is written; what stands in the place of one stays as it is. */
export const dayWords = (date: string): string => (isDay(date) ? calendarDayText(date) : date);

export const oneLine = (address: string): string => address.replace(/\s*\n\s*/g, ', ');
