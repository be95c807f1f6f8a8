/** Lines with their dashes, and the hatching between two lines. */
import type { Place } from './box';
import { arrowText, hatchLines, piecesInside, piecesText, straight } from './path-text';
import type { PlotFrame } from './plot-frame';
import type { PlotPath } from './plot-geometry';
import { layersOf, type PlotPoint, type PlotSpec } from './plot-spec';

/** Lengths of dash and gap in turn, for type 16 high: eight lines can be told apart without colour. */
const dashes: readonly (readonly number[])[] = [
  [],
  [9, 4],
  [2, 3],
  [12, 3, 2, 3],
  [5, 3],
  [16, 4],
  [12, 3, 2, 3, 2, 3],
  [2, 6],
];

export const dashOf = (line: number, text: number): readonly number[] =>
  (dashes[line % dashes.length] ?? []).map((length) => Math.round((length * text * 100) / 16) / 100);

export type Curve = {
  readonly name: string;
  readonly word: string | undefined;
  /** Only what is inside the frame. */
  readonly pieces: readonly (readonly Place[])[];
};

export type CurveShapes = {
  readonly curves: readonly Curve[];
  readonly hatches: readonly PlotPath[];
  /** Each line of the hatching, for words to keep clear of. */
  readonly hatchLines: readonly (readonly [Place, Place])[];
  readonly lines: readonly PlotPath[];
};

/** A run along the floor of a logarithmic scale is left out: its first place, with its arrow, says enough. */
function runsOverFloor(points: readonly PlotPoint[], { y }: PlotFrame): readonly (readonly PlotPoint[])[] {
  if (y.kind === 'linear') return [points];
  const floored = (point: PlotPoint | undefined): boolean => point !== undefined && point[1] <= y.from;
  const runs: PlotPoint[][] = [[]];
  points.forEach((point, at) => {
    if (floored(point) && floored(points[at - 1])) runs.push([]);
    runs.at(-1)?.push(point);
  });
  const seen = runs.filter((run) => !run.every(floored));
  return seen.length > 0 ? seen : [points];
}

/** Where each line lies inside the frame. */
export const curvesIn = (spec: PlotSpec, frame: PlotFrame): readonly Curve[] =>
  layersOf(spec, 'line').map(({ name, word, points }) => ({
    name,
    word,
    pieces: runsOverFloor(
      points.filter((point) => point.every(Number.isFinite)),
      frame,
    ).flatMap((run) => piecesInside(run.map(frame.place), frame.box)),
  }));

/** An arrow wherever a line comes down to the floor of a logarithmic scale: it goes on below. */
function floorArrows(points: readonly PlotPoint[], frame: PlotFrame, text: number): string {
  if (frame.y.kind !== 'log') return '';
  const floored = (point: PlotPoint | undefined): boolean =>
    point !== undefined &&
    point[1] <= frame.y.from &&
    frame.x.share(point[0]) >= 0 &&
    frame.x.share(point[0]) <= 1;
  return points
    .filter((point, at) => floored(point) && !floored(points[at - 1]))
    .map((point) => {
      const [x, y] = frame.place(point);
      return arrowText([x, y + text * 0.4], text * 0.5, 'down');
    })
    .join('');
}

/** Kept to the frame by moving each corner to its edge: the hatching inside stays where it is. */
function hatching(low: readonly PlotPoint[], high: readonly PlotPoint[], frame: PlotFrame): readonly Place[] {
  const { left, top, right, bottom } = frame.box;
  return [...low, ...high.toReversed()]
    .map(frame.place)
    .map(([x, y]): Place => [Math.min(Math.max(x, left), right), Math.min(Math.max(y, top), bottom)]);
}

export function curveShapes(spec: PlotSpec, frame: PlotFrame, text: number): CurveShapes {
  const curves = curvesIn(spec, frame);
  const look = curves.length > 2 ? 'curve' : 'main';
  const lines = layersOf(spec, 'line');
  const hatches = layersOf(spec, 'band').map(({ low, high }, at) =>
    hatchLines(hatching(low, high, frame), text * 0.55, at % 2 === 0),
  );
  return {
    curves,
    hatchLines: hatches.flat(),
    hatches: hatches.map((strokes) => ({
      look: 'hatch',
      path: strokes.map(([from, to]) => straight(from, to)).join(''),
    })),
    lines: [
      ...curves.map(({ pieces }, at): PlotPath => {
        const dash = dashOf(at, text);
        return { look, path: piecesText(pieces), ...(dash.length > 0 ? { dash } : {}) };
      }),
      { look: 'arrow', path: lines.map(({ points }) => floorArrows(points, frame, text)).join('') },
    ],
  };
}
