/** Lines, rings and hatching as SVG path texts, read alike by a page and by the papers. */
import { type Box, clipped, type Place } from './box';

const number = (value: number): string => String(Math.round(value * 100) / 100);

export const moved = ([x, y]: Place): string => `M${number(x)} ${number(y)}`;
const lined = ([x, y]: Place): string => `L${number(x)} ${number(y)}`;

export const straight = (from: Place, to: Place): string => `${moved(from)}${lined(to)}`;

export const polygonText = (places: readonly Place[]): string =>
  places.length === 0
    ? ''
    : `${places.map((place, at) => (at === 0 ? moved(place) : lined(place))).join('')}Z`;

export const boxText = ({ left, top, right, bottom }: Box): string =>
  polygonText([
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ]);

export const circleText = ([x, y]: Place, radius: number): string => {
  const r = number(radius);
  const across = number(2 * radius);
  return `${moved([x - radius, y])}a${r} ${r} 0 1 0 ${across} 0a${r} ${r} 0 1 0 -${across} 0Z`;
};

/** A small triangle whose point is at `tip`. */
export const arrowText = ([x, y]: Place, size: number, way: 'up' | 'down'): string => {
  const base = way === 'down' ? y - size : y + size;
  return polygonText([
    [x, y],
    [x - size * 0.6, base],
    [x + size * 0.6, base],
  ]);
};

/** The parts of a line inside a box. */
export function piecesInside(places: readonly Place[], box: Box): readonly (readonly Place[])[] {
  const found: Place[][] = [];
  places.slice(1).forEach((to, at) => {
    const from = places[at] ?? to;
    const part = clipped(from, to, box);
    if (!part) return;
    const last = found.at(-1)?.at(-1);
    if (last && Math.hypot(last[0] - part[0][0], last[1] - part[0][1]) < 1e-6) found.at(-1)?.push(part[1]);
    else found.push([...part]);
  });
  return found;
}

export const piecesText = (pieces: readonly (readonly Place[])[]): string =>
  pieces.map((piece) => piece.map((place, at) => (at === 0 ? moved(place) : lined(place))).join('')).join('');

/**
 * Lines at 45 degrees through a polygon, `gap` apart. Drawn as lines because a paper has no pattern to fill with.
 * @param rising upwards to the right, else downwards
 */
export function hatchLines(
  polygon: readonly Place[],
  gap: number,
  rising: boolean,
): readonly (readonly [Place, Place])[] {
  const turned = polygon.map(([x, y]): Place => [x, rising ? y : -y]);
  const sums = turned.map(([x, y]) => x + y);
  const strokes: (readonly [Place, Place])[] = [];
  const back = (x: number, sum: number): Place => [x, rising ? sum - x : x - sum];
  const last = Math.max(...sums);
  for (let sum = Math.ceil(Math.min(...sums) / gap) * gap; sum < last; sum += gap) {
    const cuts = turned.flatMap(([x, y], at): number[] => {
      const [px, py] = turned.at(at - 1) ?? [x, y];
      const [a, b] = [px + py - sum, x + y - sum];
      return a > 0 === b > 0 ? [] : [px + ((x - px) * a) / (a - b)];
    });
    cuts.sort((a, b) => a - b);
    for (let at = 0; at + 1 < cuts.length; at += 2) {
      const [from = 0, to = 0] = [cuts[at], cuts[at + 1]];
      strokes.push([back(from, sum), back(to, sum)]);
    }
  }
  return strokes;
}
