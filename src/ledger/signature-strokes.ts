/** Strokes of a signature: kept few and whole, and drawn again as one path. Pure; lengths in units of the box. */
import type { Signature } from './entries/signatures';

/** x and y in turn. */
type Stroke = readonly number[];
export type Strokes = readonly Stroke[];

type Drawn = Extract<Signature, { strokes: unknown }>;
export const isDrawn = (signature: Signature): signature is Drawn => 'strokes' in signature;

/** The box that every signature is drawn in, however large it stands on a phone, and the width of its line. */
export const signatureBox = { width: 600, height: 240, pen: 5 } as const;

/** With so many points a signature stays under 3 kB as it is stored: a point is at most eight characters. */
const mostPoints = 340;
const mostStrokes = 200;
/** Finer than the eye sees: a quarter of the line's width. */
const finest = 1.25;

type Point = readonly [x: number, y: number];

const pointsOf = (stroke: Stroke): Point[] => {
  const points: Point[] = [];
  for (let at = 0; at + 1 < stroke.length; at += 2) points.push([stroke[at] ?? 0, stroke[at + 1] ?? 0]);
  return points;
};

/** From the stretch between two points; from its nearer end beyond it. */
function distance([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): number {
  const length = (bx - ax) ** 2 + (by - ay) ** 2;
  const along = length === 0 ? 0 : ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / length;
  const share = Math.min(1, Math.max(0, along));
  return Math.hypot(x - ax - share * (bx - ax), y - ay - share * (by - ay));
}

/** Leaves out points that stray less than `by` from the line through the others (Douglas and Peucker 1973). */
function thinned(points: readonly Point[], by: number): Point[] {
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last || points.length < 3) return [...points];
  let furthest = 0;
  let at = 0;
  for (let index = 1; index < points.length - 1; index++) {
    const away = distance(points[index] ?? first, first, last);
    if (away > furthest) [furthest, at] = [away, index];
  }
  if (furthest <= by) return [first, last];
  return [...thinned(points.slice(0, at + 1), by).slice(0, -1), ...thinned(points.slice(at), by)];
}

const within = (value: number, most: number): number => Math.min(most, Math.max(0, Math.round(value)));

const thin = (strokes: Strokes, by: number): number[][] =>
  strokes.map((stroke) => thinned(pointsOf(stroke), by).flat());

const count = (strokes: Strokes): number => strokes.reduce((sum, { length }) => sum + length / 2, 0);

/**
 * With one stroke more, in whole units inside the box; where they get too many, all are drawn a little plainer.
 * A stroke after the two hundredth is left out.
 */
export function withStroke(strokes: Strokes, drawn: Stroke): number[][] {
  const inBox = drawn.map((value, at) =>
    within(value, at % 2 === 0 ? signatureBox.width : signatureBox.height),
  );
  const [one = []] = thin([inBox], finest);
  let all = [...strokes.map((stroke) => [...stroke]), one].slice(0, mostStrokes);
  // By then every stroke is down to its two ends: at most 400 points of dots and dashes.
  for (let by = finest * 1.5; count(all) > mostPoints && by < signatureBox.width; by *= 1.5)
    all = thin(all, by);
  return all;
}

const number = (value: number): string => String(Math.round(value * 10) / 10);
const text = ([x, y]: Point): string => `${number(x)} ${number(y)}`;

/** Control point beside `b` of the curve that leads on from `a` over `b` to `c` (centripetal Catmull-Rom: it never loops). */
function beside(a: Point, b: Point, c: Point, next: Point): Point {
  const [near, far] = [Math.hypot(b[0] - a[0], b[1] - a[1]), Math.hypot(c[0] - b[0], c[1] - b[1])];
  if (near === 0 || far === 0) return b;
  const [d1, d2] = [Math.sqrt(near), Math.sqrt(far)];
  const on = (at: 0 | 1) =>
    (near * next[at] - far * a[at] + (2 * near + 3 * d1 * d2 + far) * b[at]) / (3 * d1 * (d1 + d2));
  return [on(0), on(1)];
}

function strokePath(stroke: Stroke): string {
  const points = pointsOf(stroke);
  const [first] = points;
  if (!first) return '';
  // A dot: a line of no length, which round ends make a dot of.
  if (points.length === 1) return `M${text(first)}L${text(first)}`;
  const curves = points.slice(1).map((to, index) => {
    const from = points[index] ?? first;
    const before = points[index - 1] ?? from;
    const after = points[index + 2] ?? to;
    return `C${text(beside(before, from, to, to))} ${text(beside(after, to, from, from))} ${text(to)}`;
  });
  return `M${text(first)}${curves.join('')}`;
}

/** SVG path text, to be drawn as a line of `signatureBox.pen` with round ends; y downwards. Empty where nothing was drawn. */
export const signaturePath = (strokes: Strokes): string => strokes.map(strokePath).join('');
