/** The words of lines that run out of the plot: in a column right of it, pushed apart, a leader where one had to move. */
import type { Box, Place } from './box';
import { straight } from './path-text';
import { type Curve, curvesIn } from './plot-curves';
import type { PlotFrame } from './plot-frame';
import type { PlotSize, PlotSpec } from './plot-spec';
import { spreadApart } from './spread-apart';
import { type PlotWords, wordLines, wordTexts } from './word-lines';

/** White between the plot and the column, wide enough for a slanting leader; in heights of the type. */
const gap = 0.9;
/** How near to the edge, px, counts as there. */
const atEdge = 1.5;

const lastPlace = ({ pieces }: Curve): Place | undefined => pieces.at(-1)?.at(-1);

/** Whether a line still runs, above the floor, where the plot ends. */
function reachesEdge(curve: Curve, { box, y }: PlotFrame): boolean {
  const last = lastPlace(curve);
  if (!last || curve.word === undefined || last[0] < box.right - atEdge) return false;
  return y.kind === 'linear' || last[1] < box.bottom - atEdge;
}

/** Whether the word of a line stands in the column. */
export const endsOutside = (curve: Curve, frame: PlotFrame): boolean =>
  frame.column > 0 && reachesEdge(curve, frame);

const linesOf = (curve: Curve, { width, text }: PlotSize) =>
  wordLines(curve.word ?? '', text, width * 0.34, width * 0.5);

/**
 * Room right of the plot for these words; none where no line ends there, nor where they would leave the plot less than
 * half of the sheet, as in large type on a phone.
 */
export function columnWidth(spec: PlotSpec, frame: PlotFrame, size: PlotSize): number {
  const widths = curvesIn(spec, frame)
    .filter((curve) => reachesEdge(curve, frame))
    .map((curve) => linesOf(curve, size).width);
  if (widths.length === 0) return 0;
  const column = Math.max(...widths) + gap * size.text;
  return size.width - frame.box.left - column < size.width / 2 ? 0 : column;
}

export function endWords(frame: PlotFrame, size: PlotSize, curves: readonly Curve[]): PlotWords {
  const { text } = size;
  const { box } = frame;
  const left = box.right + gap * text;
  const words = curves
    .filter((curve) => endsOutside(curve, frame))
    .map((curve) => ({ ...linesOf(curve, size), endY: lastPlace(curve)?.[1] ?? 0 }));
  const middles = spreadApart(
    words.map(({ endY, height }) => ({ middle: endY, length: height })),
    box.top - text * 0.6,
    box.bottom + text * 0.4,
  );
  if (!middles)
    return { shapes: [], texts: [], boxes: [], leftOut: words.map(({ lines }) => lines.join(' ')) };
  const placed = words.map((word, at) => {
    const middle = middles[at] ?? word.endY;
    const half = word.height / 2;
    const around: Box = { left, right: left + word.width, top: middle - half, bottom: middle + half };
    const leader = straight([box.right, word.endY], [left - text * 0.15, middle]);
    return { word, around, leader: Math.abs(middle - word.endY) > text * 0.3 ? leader : '' };
  });
  return {
    shapes: [{ look: 'leader', path: placed.map(({ leader }) => leader).join('') }],
    texts: placed.flatMap(({ word: { lines }, around }) =>
      wordTexts({ lines, look: 'word' }, { box: around, align: 'start', covers: false }, text),
    ),
    boxes: placed.map(({ around }) => around),
    leftOut: [],
  };
}
