/**
 * A plot as path texts and texts with their places, for the screen and for the papers alike. x grows to the right, y
 * downwards, in px or pt as the size is given; how thick and how dark each look is drawn is left to whoever draws it.
 */
import type { Box } from './box';
import { columnWidth } from './end-words';
import { curveShapes } from './plot-curves';
import { plotFrame } from './plot-frame';
import { frameShapes, frameTexts } from './plot-furniture';
import { markShapes } from './plot-marks';
import { plotSays } from './plot-says';
import type { PlotSize, PlotSpec } from './plot-spec';
import { plotWords } from './plot-words';

/** What a path is, and so how it is drawn. Stroked, but for the filled: block, read, ring, arrow. */
export type PlotLook =
  | ('axis' | 'tick' | 'main' | 'curve' | 'hatch' | 'limit' | 'edge' | 'bracket' | 'step' | 'leader')
  | ('block' | 'read' | 'expected' | 'ring' | 'arrow');

export type PlotPath = { readonly look: PlotLook; readonly path: string; readonly dash?: readonly number[] };

export type PlotText = {
  readonly look: 'tick' | 'title' | 'word' | 'step';
  readonly x: number;
  /** Base line. */
  readonly y: number;
  readonly text: string;
  /** Height of the type. */
  readonly size: number;
  readonly anchor: 'start' | 'middle' | 'end';
  /** What it lies on, if it does not lie on bare paper: wants paper round its letters or in this box. */
  readonly over?: Box;
};

export type PlotGeometry = {
  readonly width: number;
  readonly height: number;
  /** Between the axes. */
  readonly frame: Box;
  /** In the order in which they are drawn. */
  readonly paths: readonly PlotPath[];
  readonly texts: readonly PlotText[];
  /** The boxes of the words, for whoever draws more. */
  readonly words: readonly Box[];
  /** Words that found no room, however high: they stand in the table alone. */
  readonly leftOut: readonly string[];
  /** x of a value on the drawing, and back. */
  readonly xPlace: (value: number) => number;
  /** Title apart, what the plot shows. */
  readonly says: string;
  readonly title: string;
};

/** A height that suits a width, and in large type leaves room for the words. */
const heightFor = ({ width, text }: PlotSize): number =>
  Math.max(15 * text, Math.min(0.85 * width, 26 * text));

function drawnAt(spec: PlotSpec, size: PlotSize & { readonly height: number }): PlotGeometry {
  const column = columnWidth(spec, plotFrame(spec, size, 0), size);
  const frame = plotFrame(spec, size, column);
  const curves = curveShapes(spec, frame, size.text);
  const words = plotWords(spec, frame, size, curves);
  const marks = markShapes(spec, frame, size.text);
  return {
    width: size.width,
    height: size.height,
    frame: frame.box,
    paths: [
      ...curves.hatches,
      ...marks.under,
      ...frameShapes(frame),
      ...curves.lines,
      ...marks.over,
      ...words.shapes,
    ].filter(({ path }) => path !== ''),
    texts: [...frameTexts(frame, size.text), ...words.texts],
    words: words.boxes,
    leftOut: words.leftOut,
    xPlace: (value) => frame.place([value, frame.y.from])[0],
    says: plotSays(spec, frame),
    title: spec.title,
  };
}

/**
 * Where everything of a plot lies. Without a height of its own it is made higher until each word has a place.
 * @example plotGeometry(spec, { width: 328, text: 15.75 }).paths
 */
export function plotGeometry(spec: PlotSpec, size: PlotSize): PlotGeometry {
  const height = size.height ?? heightFor(size);
  let drawn = drawnAt(spec, { ...size, height });
  for (let more = 1; size.height === undefined && drawn.leftOut.length > 0 && more <= 5; more += 1)
    drawn = drawnAt(spec, { ...size, height: height + 3 * more * size.text });
  return drawn;
}
