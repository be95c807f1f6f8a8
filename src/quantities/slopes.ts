/**
 * Slopes of a figure against the independent origins of its uncertainty, and the range they make together: first-order
 * propagation after JCGM 100:2008, equation 10. Plain numbers: a range is never exact, and there are many of them.
 */
import type { How } from './figure';

/** Slope against one origin, with the standard uncertainty of that origin on either side, in coherent units. */
export type Slope = {
  readonly slope: number;
  readonly minus: number;
  readonly plus: number;
  readonly sentence: string;
  /** How the origin is known. */
  readonly how: How;
};

export type Slopes = ReadonlyMap<string, Slope>;

export const noSlopes: Slopes = new Map();

/** Coverage factor: a range is ± 2 standard uncertainties. Source: JCGM 100:2008, 6.3.3. */
export const coverage = 2;

export function scaled(slopes: Slopes, factor: number): Slopes {
  if (slopes.size === 0 || factor === 1) return slopes;
  const all = new Map<string, Slope>();
  for (const [origin, s] of slopes) all.set(origin, { ...s, slope: s.slope * factor });
  return all;
}

export function merged(a: Slopes, b: Slopes): Slopes {
  if (a.size === 0) return b;
  if (b.size === 0) return a;
  const all = new Map(a);
  for (const [origin, s] of b) {
    const before = all.get(origin);
    all.set(origin, before ? { ...s, slope: before.slope + s.slope } : s);
  }
  return all;
}

/** What one origin adds to either side, one standard uncertainty. */
export const sides = ({ slope, minus, plus }: Slope): { readonly minus: number; readonly plus: number } =>
  slope < 0 ? { minus: -slope * plus, plus: -slope * minus } : { minus: slope * minus, plus: slope * plus };

/** Half-widths of the range on either side, in coherent units. */
export function halfWidths(slopes: Slopes): { readonly minus: number; readonly plus: number } {
  let [minus, plus] = [0, 0];
  for (const slope of slopes.values()) {
    const part = sides(slope);
    minus += part.minus ** 2;
    plus += part.plus ** 2;
  }
  return { minus: Math.sqrt(minus) * coverage, plus: Math.sqrt(plus) * coverage };
}
