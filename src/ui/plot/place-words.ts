/** Puts words beside what they name, clear of each other and, where it can be, of the curves. */
import { type Box, boxAround, clipped, grown, holds, nearestIn, overlap, type Place, within } from './box';
import { along, type Occupied, type OccupiedPlaces, occupiedPlaces } from './occupied';

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

type Search = PlacingRoom & { readonly occupied: OccupiedPlaces; readonly taken: readonly Box[] };

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

/** What it costs to lie there, and whether anything is under it. */
function costOf(box: Box, wanted: WordWanted, { occupied, text }: Search) {
  const around = grown(box, text * 0.4);
  let cost = 0;
  let covers = false;
  for (const { owner, at, light } of occupied.near(around)) {
    if (!holds(around, at)) continue;
    const on = holds(box, at);
    covers ||= on;
    if (light) cost += on ? 0.1 : 0;
    else if (owner === wanted.owner) cost += on ? (wanted.onCurve ? 0.12 : 1.5) : 0;
    else cost += on ? 1.5 : 0.25;
  }
  return { cost, covers };
}

const align = (box: Box, [x]: Place): WordPlaced['align'] =>
  box.left >= x ? 'start' : box.right <= x ? 'end' : 'middle';

type Trial = { readonly box: Box; readonly anchor: Place; readonly more: number };

/** The better of what was found so far and a trial; what cannot be better is not looked at further. */
function better(best: Candidate | undefined, trial: Trial, wanted: WordWanted, search: Search) {
  const { box, anchor, more } = trial;
  const near = nearestIn(box, anchor);
  const distance = Math.hypot(near[0] - anchor[0], near[1] - anchor[1]) / search.text;
  const limit = best?.cost ?? Infinity;
  if (distance + more >= limit || !within(box, search.frame)) return best;
  if (search.taken.some((other) => overlap(other, box))) return best;
  const leader = distance > farRing ? ([anchor, near] as const) : undefined;
  const crosses =
    leader && search.taken.some((other) => !holds(other, anchor) && clipped(...leader, other) !== undefined);
  const { cost, covers } = costOf(box, wanted, search);
  const total = distance + more + cost + (crosses ? 5 : 0);
  if (total >= limit) return best;
  return { box, covers, cost: total, align: align(box, anchor), ...(leader ? { leader } : {}) };
}

function besideAnchors(wanted: WordWanted, search: Search): Candidate | undefined {
  let best: Candidate | undefined;
  const attempt = (trial: Trial) => {
    best = better(best, trial, wanted, search);
  };
  wanted.anchors.forEach((anchor, rank) => {
    if (wanted.onCurve)
      attempt({ box: boxAround(anchor, wanted.width, wanted.height), anchor, more: 0.4 + rank * 0.1 });
    for (const ring of rings)
      sides.forEach((side, at) => {
        const box = beside(anchor, side, wanted, ring * search.text);
        attempt({ box, anchor, more: rank * 0.1 + at * 0.05 });
      });
  });
  return best;
}

/** What a place may cost before the whole plot is looked through for a better one: about three letters on a curve. */
const dear = 5;

/** Wherever there is room at all: slower, so only where nothing beside the anchors is free, or all of it is dear. */
function anywhere(wanted: WordWanted, search: Search, found: Candidate | undefined): Candidate | undefined {
  const { frame, text } = search;
  const [anchor] = wanted.anchors;
  let best = found;
  if (!anchor) return best;
  for (let left = frame.left; left + wanted.width <= frame.right; left += text / 2)
    for (let top = frame.top; top + wanted.height <= frame.bottom; top += text / 2) {
      const box = { left, top, right: left + wanted.width, bottom: top + wanted.height };
      best = better(best, { box, anchor, more: 0 }, wanted, search);
    }
  return best;
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
  const search: Search = { ...room, taken, occupied: occupiedPlaces(room.text, room.curves) };
  const gap = room.text * 0.12;
  return wanted.map((word) => {
    const near = besideAnchors(word, search);
    // What is long has other places beside it; a word far from it would seem to belong to something else.
    const settled = near && (near.cost < dear || word.anchors.length > 1);
    const best = settled ? near : anywhere(word, search, near);
    if (!best) return undefined;
    taken.push(grown(best.box, gap));
    const { cost: _, ...placed } = best;
    const { leader } = placed;
    if (leader) search.occupied.add(along(leader, room.text / 3).map((at) => ({ owner: word.owner, at })));
    return placed;
  });
}
