/** Puts words beside what they name, clear of each other and, where it can be, of the curves. */
import { type Box, boxAround, clipped, grown, holds, nearestIn, overlap, type Place, within } from './box';

export type WordWanted = {
  /** Whose word it is: its own curve may be near, another's may not. */
  readonly owner: string;
  readonly width: number;
  readonly height: number;
  /** Places that it may stand at, best first. */
  readonly anchors: readonly Place[];
  /** May interrupt its own curve, as the words on a contour do. */
  readonly onCurve?: boolean;
};

/** A place of a curve that words keep clear of; of hatching, rather than not. */
export type Occupied = { readonly owner: string; readonly at: Place; readonly light?: boolean };

export type WordPlaced = {
  readonly box: Box;
  /** From what it names to the word, where that is not beside it. */
  readonly leader?: readonly [Place, Place];
  /** Which side of it is next to what it names. */
  readonly align: 'start' | 'middle' | 'end';
  /** Whether it lies on a curve, and so needs paper under it. */
  readonly covers: boolean;
};

export type PlacingRoom = {
  readonly frame: Box;
  readonly curves: readonly Occupied[];
  /** What no word may lie on. */
  readonly taken: readonly Box[];
  /** Height of the type. */
  readonly text: number;
};

/** Distance from the thing to its word, in heights of the type. */
const rings = [0.35, 0.7, 1.2, 2, 3, 4.5] as const;
const farRing = 1;

const sides: readonly Place[] = [
  [0, -1],
  [1, 0],
  [-1, 0],
  [0, 1],
  [0.7, -0.7],
  [-0.7, -0.7],
  [0.7, 0.7],
  [-0.7, 0.7],
];

type Candidate = WordPlaced & { readonly cost: number };

/** Which way a word goes from its anchor: its near side, not its middle, is `distance` away. */
const beside = ([x, y]: Place, [dx, dy]: Place, wanted: WordWanted, distance: number): Box =>
  boxAround(
    [
      x + dx * distance + (Math.sign(dx) * wanted.width) / 2,
      y + dy * distance + (Math.sign(dy) * wanted.height) / 2,
    ],
    wanted.width,
    wanted.height,
  );

function weighed(box: Box, anchor: Place, wanted: WordWanted, room: PlacingRoom): Candidate | undefined {
  if (!within(box, room.frame) || room.taken.some((other) => overlap(other, box))) return undefined;
  const near = nearestIn(box, anchor);
  const distance = Math.hypot(near[0] - anchor[0], near[1] - anchor[1]) / room.text;
  const leader = distance > farRing ? ([anchor, near] as const) : undefined;
  if (leader && room.taken.some((other) => !holds(other, anchor) && clipped(...leader, other)))
    return undefined;
  const around = grown(box, room.text * 0.4);
  let cost = distance;
  let covers = false;
  for (const { owner, at, light } of room.curves) {
    if (!holds(around, at)) continue;
    const on = holds(box, at);
    covers ||= on;
    if (light) cost += on ? 0.1 : 0;
    else if (owner === wanted.owner) cost += on ? (wanted.onCurve ? 0.12 : 1.5) : 0;
    else cost += on ? 1.5 : 0.25;
  }
  const align = box.left >= anchor[0] ? 'start' : box.right <= anchor[0] ? 'end' : 'middle';
  return { box, align, covers, cost, ...(leader ? { leader } : {}) };
}

/** Wherever there is room at all, nearest first; tried only where nothing beside the anchors is free. */
function anywhere(wanted: WordWanted, room: PlacingRoom): Candidate[] {
  const { frame, text } = room;
  const anchor = wanted.anchors[0];
  const found: Candidate[] = [];
  if (!anchor) return found;
  for (let left = frame.left; left + wanted.width <= frame.right; left += text / 2)
    for (let top = frame.top; top + wanted.height <= frame.bottom; top += text / 2) {
      const box = { left, top, right: left + wanted.width, bottom: top + wanted.height };
      const candidate = weighed(box, anchor, wanted, room);
      if (candidate) found.push(candidate);
    }
  return found;
}

const cheapest = (candidates: readonly Candidate[]): Candidate | undefined =>
  candidates.reduce<Candidate | undefined>(
    (best, next) => (best === undefined || next.cost < best.cost ? next : best),
    undefined,
  );

function besideAnchors(wanted: WordWanted, room: PlacingRoom): Candidate[] {
  const tried = (anchor: Place, box: Box, more: number): Candidate[] => {
    const candidate = weighed(box, anchor, wanted, room);
    return candidate ? [{ ...candidate, cost: candidate.cost + more }] : [];
  };
  return wanted.anchors.flatMap((anchor, rank) => [
    ...(wanted.onCurve
      ? tried(anchor, boxAround(anchor, wanted.width, wanted.height), 0.4 + rank * 0.1)
      : []),
    ...rings.flatMap((ring) =>
      sides.flatMap((side, sideRank) =>
        tried(anchor, beside(anchor, side, wanted, ring * room.text), rank * 0.1 + sideRank * 0.05),
      ),
    ),
  ]);
}

/** Places along a straight line, close enough that no word lies between two of them. */
export function along([x, y]: Place, [toX, toY]: Place, apart: number): readonly Place[] {
  const count = Math.max(1, Math.ceil(Math.hypot(toX - x, toY - y) / apart));
  return Array.from(
    { length: count + 1 },
    (_, at): Place => [x + ((toX - x) * at) / count, y + ((toY - y) * at) / count],
  );
}

/**
 * One word after the other, each at the cheapest free place; a word that finds none is missing from the answer. No two
 * lie on each other and all lie in the frame.
 */
export function placeWords(
  wanted: readonly WordWanted[],
  room: PlacingRoom,
): readonly (WordPlaced | undefined)[] {
  const taken = [...room.taken];
  const curves = [...room.curves];
  const gap = room.text * 0.12;
  return wanted.map((word) => {
    const now = { ...room, taken, curves };
    const best = cheapest(besideAnchors(word, now)) ?? cheapest(anywhere(word, now));
    if (!best) return undefined;
    taken.push(grown(best.box, gap));
    if (best.leader)
      curves.push(...along(...best.leader, room.text / 3).map((at) => ({ owner: word.owner, at })));
    const { cost: _, ...placed } = best;
    return placed;
  });
}
