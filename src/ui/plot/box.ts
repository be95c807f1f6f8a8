/** Upright rectangles on a drawing; y grows downwards. */

export type Place = readonly [x: number, y: number];

export type Box = {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
};

export const boxAround = ([x, y]: Place, width: number, height: number): Box => ({
  left: x - width / 2,
  right: x + width / 2,
  top: y - height / 2,
  bottom: y + height / 2,
});

export const grown = (box: Box, by: number): Box => ({
  left: box.left - by,
  right: box.right + by,
  top: box.top - by,
  bottom: box.bottom + by,
});

export const overlap = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

export const within = (inner: Box, outer: Box): boolean =>
  inner.left >= outer.left - 1e-6 &&
  inner.right <= outer.right + 1e-6 &&
  inner.top >= outer.top - 1e-6 &&
  inner.bottom <= outer.bottom + 1e-6;

export const holds = (box: Box, [x, y]: Place): boolean =>
  x > box.left && x < box.right && y > box.top && y < box.bottom;

/** The place of a box that is nearest to a place outside of it. */
export const nearestIn = (box: Box, [x, y]: Place): Place => [
  Math.min(Math.max(x, box.left), box.right),
  Math.min(Math.max(y, box.top), box.bottom),
];

/** The part of a straight line inside a box (Liang and Barsky), if there is any. */
export function clipped(from: Place, to: Place, box: Box): readonly [Place, Place] | undefined {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  let [start, end] = [0, 1];
  const edges = [
    [-dx, from[0] - box.left],
    [dx, box.right - from[0]],
    [-dy, from[1] - box.top],
    [dy, box.bottom - from[1]],
  ] as const;
  for (const [towards, room] of edges) {
    if (towards === 0 && room < 0) return undefined;
    if (towards < 0) start = Math.max(start, room / towards);
    if (towards > 0) end = Math.min(end, room / towards);
  }
  if (start > end) return undefined;
  const at = (share: number): Place => [from[0] + dx * share, from[1] + dy * share];
  return [at(start), at(end)];
}
