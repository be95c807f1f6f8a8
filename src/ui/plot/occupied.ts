/** Places that words keep clear of, kept in squares so that only those near a word are looked at. */
import type { Box, Place } from './box';

/** A place of a curve that words keep clear of; of hatching, rather than not. */
export type Occupied = { readonly owner: string; readonly at: Place; readonly light?: boolean };

export type OccupiedPlaces = {
  readonly add: (more: readonly Occupied[]) => void;
  /** All in the box, and some around it. */
  readonly near: (box: Box) => readonly Occupied[];
};

/** @param side of a square */
export function occupiedPlaces(side: number, all: readonly Occupied[]): OccupiedPlaces {
  const squares = new Map<string, Occupied[]>();
  const square = (value: number): number => Math.floor(value / side);
  const add = (more: readonly Occupied[]): void => {
    for (const one of more) {
      const key = `${square(one.at[0])} ${square(one.at[1])}`;
      const held = squares.get(key);
      if (held) held.push(one);
      else squares.set(key, [one]);
    }
  };
  const near = ({ left, top, right, bottom }: Box): readonly Occupied[] => {
    const found: Occupied[] = [];
    for (let column = square(left); column <= square(right); column += 1)
      for (let row = square(top); row <= square(bottom); row += 1)
        found.push(...(squares.get(`${column} ${row}`) ?? []));
    return found;
  };
  add(all);
  return { add, near };
}

/** Places along a line, at most `apart` from one to the next, and not many more than that asks for. */
export function along(line: readonly Place[], apart: number): readonly Place[] {
  const [first] = line;
  if (!first) return [];
  const found: Place[] = [first];
  let [lastX, lastY] = first;
  for (const [x, y] of line.slice(1)) {
    const length = Math.hypot(x - lastX, y - lastY);
    if (length < apart / 2) continue;
    const count = Math.ceil(length / apart);
    for (let step = 1; step <= count; step += 1)
      found.push([lastX + ((x - lastX) * step) / count, lastY + ((y - lastY) * step) / count]);
    [lastX, lastY] = [x, y];
  }
  return found;
}
