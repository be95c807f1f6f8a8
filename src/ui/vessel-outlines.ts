/** The shapes of the three families in mm, y upwards from the ground: body, hole of the handle, cap, and the inside. */
import { line, type Outline, type Point, turn } from './drawn-path';
import type { VesselKind } from './vessel-kinds';

export type VesselOutlines = {
  readonly body: Outline;
  readonly hole?: Outline | undefined;
  /** Where liquid can stand, inside a wall of the given thickness; it ends under the neck. */
  readonly inside: Outline;
  readonly cap: Outline;
  /** The vent: a stem on the cap. */
  readonly stem: Outline;
};

const box = (left: number, bottom: number, right: number, top: number): Outline => ({
  from: [left, bottom],
  strokes: line([right, bottom], [right, top], [left, top]),
});

const roundedBox = (left: number, bottom: number, right: number, top: number, radius: number): Outline => {
  const corners: readonly (readonly [Point, Point, Point])[] = [
    [
      [right - radius, bottom],
      [right, bottom],
      [right, bottom + radius],
    ],
    [
      [right, top - radius],
      [right, top],
      [right - radius, top],
    ],
    [
      [left + radius, top],
      [left, top],
      [left, top - radius],
    ],
    [
      [left, bottom + radius],
      [left, bottom],
      [left + radius, bottom],
    ],
  ];
  return {
    from: [left + radius, bottom],
    strokes: corners.flatMap(([from, corner, to]) => [{ to: from }, turn(from, corner, to)]),
  };
};

const stemOn = (centre: number, top: number, half: number, height: number): Outline =>
  box(centre - half, top, centre + half, top + height);

/** A jerrican: cap at the left, handle with its hole at the right. Shares of width and height, from our drawings. */
function jerrican({ widthMm: w, heightMm: h, shoulderMm }: VesselKind, wallMm: number): VesselOutlines {
  const [neckLeft, neckRight, capLeft, capRight] = [0.16 * w, 0.39 * w, 0.145 * w, 0.405 * w];
  const deck = shoulderMm + 0.034 * h;
  const [capBottom, handleTop, foot, bend] = [0.913 * h, 0.955 * h, 0.075 * w, 0.125 * w];
  const sLeft = 0.42 * w;
  const sRight = 0.52 * w;
  const body: Outline = {
    from: [foot, 0],
    strokes: [
      { to: [w - foot, 0] },
      turn([w - foot, 0], [w, 0], [w, foot]),
      { to: [w, handleTop - foot] },
      turn([w, handleTop - foot], [w, handleTop], [w - foot, handleTop]),
      { to: [sRight + 0.03 * w, handleTop] },
      {
        to: [sLeft, deck],
        by: [
          [sRight - 0.05 * w, handleTop],
          [sRight - 0.04 * w, deck],
        ],
      },
      ...line(
        [neckRight, deck],
        [neckRight, capBottom],
        [neckLeft, capBottom],
        [neckLeft, deck],
        [bend, deck],
      ),
      turn([bend, deck], [0, deck], [0, deck - bend]),
      { to: [0, foot] },
      turn([0, foot], [0, 0], [foot, 0]),
    ],
  };
  // Above the deck the inside goes on under the handle; a liquid as high as that is overfull and drawn to the deck.
  const [left, right, bottom, top] = [wallMm, w - wallMm, wallMm, deck - wallMm];
  const [r, b] = [Math.max(0.5, foot - wallMm), Math.max(0.5, bend - wallMm)];
  const inside: Outline = {
    from: [left + r, bottom],
    strokes: [
      { to: [right - r, bottom] },
      turn([right - r, bottom], [right, bottom], [right, bottom + r]),
      ...line([right, top], [left + b, top]),
      turn([left + b, top], [left, top], [left, top - b]),
      { to: [left, bottom + r] },
      turn([left, bottom + r], [left, bottom], [left + r, bottom]),
    ],
  };
  return {
    body,
    hole: roundedBox(0.55 * w, deck + 0.005 * h, 0.9 * w, 0.921 * h, 0.035 * h),
    inside,
    cap: box(capLeft, capBottom, capRight, h),
    stem: stemOn((capLeft + capRight) / 2, h, 0.013 * w, 0.035 * h),
  };
}

/** A round bottle: straight to the shoulder, then an S to the neck. */
function bottle({ widthMm: w, heightMm: h, shoulderMm: s }: VesselKind, wallMm: number): VesselOutlines {
  const neck = 0.165 * w;
  const centre = w / 2;
  const rise = (h - s) * 0.42;
  const capBottom = h - (h - s) * 0.32;
  const foot = 0.08 * w;
  const shape = (inset: number, neckTop: number): Outline => {
    const [l, r, b, f] = [inset, w - inset, inset, Math.max(0.5, foot - inset)];
    const [nl, nr] = [centre - neck + inset, centre + neck - inset];
    return {
      from: [l + f, b],
      strokes: [
        { to: [r - f, b] },
        turn([r - f, b], [r, b], [r, b + f]),
        { to: [r, s] },
        {
          to: [nr, s + rise],
          by: [
            [r, s + 0.7 * rise],
            [nr, s + 0.45 * rise],
          ],
        },
        ...line([nr, neckTop], [nl, neckTop], [nl, s + rise]),
        {
          to: [l, s],
          by: [
            [nl, s + 0.45 * rise],
            [l, s + 0.7 * rise],
          ],
        },
        { to: [l, b + f] },
        turn([l, b + f], [l, b], [l + f, b]),
      ],
    };
  };
  const capHalf = neck + 0.045 * w;
  return {
    body: shape(0, capBottom),
    inside: shape(Math.min(wallMm, neck * 0.8), s + rise),
    cap: box(centre - capHalf, capBottom, centre + capHalf, h),
    stem: stemOn(centre, h, 0.022 * w, 0.035 * h),
  };
}

/** A tub, narrower at the foot, with a lid over the whole of it. */
function tub({ widthMm: w, heightMm: h }: VesselKind, wallMm: number): VesselOutlines {
  const lid = 0.92 * h;
  const taper = 0.045 * w;
  const rim = 0.02 * w;
  const foot = 0.06 * w;
  const shape = (inset: number): Outline => {
    const edge = (y: number): number => rim + (taper * (lid - y)) / lid + inset;
    const b = inset;
    const f = Math.max(0.5, foot - inset);
    return {
      from: [edge(b) + f, b],
      strokes: [
        { to: [w - edge(b) - f, b] },
        turn([w - edge(b) - f, b], [w - edge(b), b], [w - edge(b + f), b + f]),
        ...line([w - edge(lid), lid - inset], [edge(lid), lid - inset], [edge(b + f), b + f]),
        turn([edge(b + f), b + f], [edge(b), b], [edge(b) + f, b]),
      ],
    };
  };
  return {
    body: shape(0),
    inside: shape(wallMm),
    cap: box(0, lid, w, h),
    stem: stemOn(w * 0.5, h, 0.013 * w, 0.04 * h),
  };
}

/** Outlines of a kind. @param wallMm paper gap between outline and liquid */
export function vesselOutlines(kind: VesselKind, wallMm: number): VesselOutlines {
  if (kind.family === 'jerrican') return jerrican(kind, wallMm);
  return kind.family === 'bottle' ? bottle(kind, wallMm) : tub(kind, wallMm);
}
