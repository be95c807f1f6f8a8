/** Closed outlines as lines and cubic curves, y upwards in mm: written as SVG path text, or cut off at a height. */
export type Point = readonly [xMm: number, yMm: number];

export type Stroke =
  | { readonly to: Point }
  /** Cubic Bézier to `to`, with its two control points. */
  | { readonly to: Point; readonly by: readonly [Point, Point] };

export type Outline = { readonly from: Point; readonly strokes: readonly Stroke[] };

export const line = (...points: readonly Point[]): readonly Stroke[] => points.map((to) => ({ to }));

/** Share of the radius at which a cubic's control points make a quarter circle. */
const quarter = 0.5523;

/** A quarter turn from `from` round the sharp corner `corner` to `to`. */
export const turn = (from: Point, corner: Point, to: Point): Stroke => {
  const towards = (start: Point): Point => [
    start[0] + (corner[0] - start[0]) * quarter,
    start[1] + (corner[1] - start[1]) * quarter,
  ];
  return { to, by: [towards(from), towards(to)] };
};

/** From mm with y upwards to px with y downwards. */
export type Placing = { readonly scale: number; readonly topMm: number };

const number = (value: number): string => String(Math.round(value * 100) / 100);

const placed = ([x, y]: Point, { scale, topMm }: Placing): string =>
  `${number(x * scale)} ${number((topMm - y) * scale)}`;

/** SVG path text of an outline. @param closed draws back to the start */
export function pathText({ from, strokes }: Outline, placing: Placing, closed = true): string {
  const parts = strokes.map((stroke) =>
    'by' in stroke
      ? `C${placed(stroke.by[0], placing)} ${placed(stroke.by[1], placing)} ${placed(stroke.to, placing)}`
      : `L${placed(stroke.to, placing)}`,
  );
  return `M${placed(from, placing)}${parts.join('')}${closed ? 'Z' : ''}`;
}

const onCurve = (from: Point, [a, b]: readonly [Point, Point], to: Point, t: number): Point => {
  const mix = (at: 0 | 1) =>
    (1 - t) ** 3 * from[at] + 3 * (1 - t) ** 2 * t * a[at] + 3 * (1 - t) * t ** 2 * b[at] + t ** 3 * to[at];
  return [mix(0), mix(1)];
};

/** The outline as a polygon, each curve in `pieces` straight ones. */
export function polygon({ from, strokes }: Outline, pieces = 12): readonly Point[] {
  const points: Point[] = [from];
  let last = from;
  for (const stroke of strokes) {
    if ('by' in stroke)
      for (let piece = 1; piece < pieces; piece++)
        points.push(onCurve(last, stroke.by, stroke.to, piece / pieces));
    points.push(stroke.to);
    last = stroke.to;
  }
  return points;
}

const crossing = (a: Point, b: Point, yMm: number): Point => [
  a[0] + ((b[0] - a[0]) * (yMm - a[1])) / (b[1] - a[1]),
  yMm,
];

/** The part of a polygon at or below a height (Sutherland and Hodgman's clipping, one edge). */
export function below(points: readonly Point[], yMm: number): readonly Point[] {
  const kept: Point[] = [];
  points.forEach((point, at) => {
    const before = points.at(at - 1) ?? point;
    if (point[1] > yMm !== before[1] > yMm) kept.push(crossing(before, point, yMm));
    if (point[1] <= yMm) kept.push(point);
  });
  return kept;
}

/** Leftmost and rightmost x of a polygon at a height; nothing where it is not as high. */
export function spanAt(
  points: readonly Point[],
  yMm: number,
): readonly [leftMm: number, rightMm: number] | undefined {
  const xs: number[] = [];
  points.forEach((point, at) => {
    const before = points.at(at - 1) ?? point;
    if (point[1] === yMm) xs.push(point[0]);
    if ((point[1] - yMm) * (before[1] - yMm) < 0) xs.push(crossing(before, point, yMm)[0]);
  });
  return xs.length === 0 ? undefined : [Math.min(...xs), Math.max(...xs)];
}
