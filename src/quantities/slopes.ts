/**
 * Slopes of a figure against the independent origins of its uncertainty, and the range they make together: first-order
 * propagation after JCGM 100:2008, equation 10. Plain numbers: a range is never exact, and there are many of them.
 */
import type { How } from './figure';

/** Slope against one origin, with the standard uncertainty of that origin on either side, in coherent units. */
export type Slope = {
  readonly slope: number;
  /** Of what bends: the slopes of the chords to the ends of the range, as the origin falls and as it rises. */
  readonly chords?: Chords;
  readonly minus: number;
  readonly plus: number;
  readonly sentence: string;
  /** How the origin is known. */
  readonly how: How;
};

export type Chords = { readonly falling: number; readonly rising: number };

export type Slopes = ReadonlyMap<string, Slope>;

export const noSlopes: Slopes = new Map();

/** Coverage factor: a range is ± 2 standard uncertainties. Source: JCGM 100:2008, 6.3.3. */
export const coverage = 2;

export const chordsOf = ({ slope, chords }: Slope): Chords => chords ?? { falling: slope, rising: slope };

export function scaled(slopes: Slopes, factor: number): Slopes {
  if (slopes.size === 0 || factor === 1) return slopes;
  const all = new Map<string, Slope>();
  for (const [origin, s] of slopes)
    all.set(origin, {
      ...s,
      slope: s.slope * factor,
      ...(s.chords
        ? { chords: { falling: s.chords.falling * factor, rising: s.chords.rising * factor } }
        : {}),
    });
  return all;
}

/** Widths that differ by no more than the last digits of a plain number. */
const alike = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-9 * Math.max(a, b);

function joined(origin: string, a: Slope, b: Slope): Slope {
  if (!alike(a.minus, b.minus) || !alike(a.plus, b.plus))
    throw new Error(`"${origin}" is uncertain in two ways: two things have one name`);
  const slope = a.slope + b.slope;
  if (!a.chords && !b.chords) return { ...b, slope };
  const [of, and] = [chordsOf(a), chordsOf(b)];
  return { ...b, slope, chords: { falling: of.falling + and.falling, rising: of.rising + and.rising } };
}

/** Throws where one origin has two widths: a fault of the program, since one of the two would be kept and nobody told. */
export function merged(a: Slopes, b: Slopes): Slopes {
  if (a.size === 0) return b;
  if (b.size === 0) return a;
  const all = new Map(a);
  for (const [origin, s] of b) {
    const before = all.get(origin);
    all.set(origin, before ? joined(origin, before, s) : s);
  }
  return all;
}

/** What one origin adds to either side, one standard uncertainty. What bends back lies on one side at both its ends. */
export function sides(s: Slope): { readonly minus: number; readonly plus: number } {
  const { falling, rising } = chordsOf(s);
  const [atMinus, atPlus] = [-falling * s.minus, rising * s.plus];
  return { minus: Math.max(0, -atMinus, -atPlus), plus: Math.max(0, atMinus, atPlus) };
}

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
