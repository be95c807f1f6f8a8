/**
 * What readings of a pot make of what was known before. The curve of pH against dose is steep here and flat there, so it is
 * not taken by its tangent but by the straight line that fits it best over all that may still be true (iterated posterior
 * linearisation: García-Fernández, Svensson, Morelande, Särkkä, IEEE Trans. Signal Process. 63, 5561, 2015); what the line
 * leaves out counts as uncertainty of the reading. Then the usual sum of squares: readings against what was known.
 */
import { factorise, solveBy } from '../equilibrium/cholesky';
import type { AgainstPh } from './against-ph';
import type { KnownBefore } from './known-before';
import { dot, type Matrix, rootOf, unit } from './matrices';
import { type Line, lineOver, type Place, type Seen } from './shown-ph';

/** In the independent quantities of spread one in which what was known is told. */
export type Fit = Place &
  Line & {
    /** How each quantity follows each reading. */
    readonly gain: Matrix;
    /** Squares of how far readings and what was known lie from the fit, in standard uncertainties. */
    readonly strain: number;
  };

/** Rounds at most, and from which on each goes half of the way, so that it does not swing between two places. */
export type Pace = { readonly most: number; readonly gentleFrom: number };
export const quick: Pace = { most: 5, gentleFrom: 5 };
const full: Pace = { most: 10, gentleFrom: 5 };
export const careful: Pace = { most: 25, gentleFrom: 1 };
const settled = 1e-2;

/** Where readings and what was known pull to, by a line: the minimum of both sums of squares. */
function pulled(line: Line, seen: readonly Seen[], place: readonly number[]) {
  const count = seen.length;
  const variance = seen.map(({ spread }, r) => spread ** 2 + (line.bend[r] ?? 0) + (line.byDose[r] ?? 0));
  const all = new Float64Array(count * count);
  for (let r = 0; r < count; r++)
    for (let q = 0; q < count; q++)
      all[r * count + q] =
        dot(line.slopes[r] ?? [], line.slopes[q] ?? []) + (r === q ? (variance[r] ?? 0) : 0);
  factorise(all, count);
  const gain = place.map((_, i) => {
    const row = Float64Array.from(line.slopes.map((s) => s[i] ?? 0));
    solveBy(all, row, count);
    return [...row];
  });
  const off = seen.map(({ pH }, r) => pH - (line.pH[r] ?? 0) + dot(line.slopes[r] ?? [], place));
  const covariance = unit(place.length).map((row, i) =>
    row.map((one, k) => one - (gain[i] ?? []).reduce((sum, g, r) => sum + g * (line.slopes[r]?.[k] ?? 0), 0)),
  );
  return { gain, to: gain.map((row) => dot(row, off)), left: rootOf(covariance), variance };
}

/** What was known, with nothing read. */
const unread = (n: number): Fit => ({
  place: new Array<number>(n).fill(0),
  left: unit(n),
  pH: [],
  slopes: [],
  bend: [],
  byDose: [],
  gain: Array.from({ length: n }, () => []),
  strain: 0,
});

/** @param from where to begin: a fit of some of the readings */
export function fitted(
  curve: AgainstPh,
  known: KnownBefore,
  seen: readonly Seen[],
  from?: Place,
  { most, gentleFrom }: Pace = full,
): Fit {
  const before = unread(known.unsure.length);
  if (seen.length === 0) return before;
  let at: Place = from ?? before;
  let line = lineOver(curve, known, seen, at);
  let pull = pulled(line, seen, at.place);
  for (let round = 1; round < most; round++) {
    const share = round < gentleFrom ? 1 : 0.5;
    const place = at.place.map((old, i) => old + share * ((pull.to[i] ?? 0) - old));
    const moved = Math.max(...place.map((x, i) => Math.abs(x - (at.place[i] ?? 0))));
    at = { place, left: pull.left };
    line = lineOver(curve, known, seen, at);
    pull = pulled(line, seen, place);
    if (moved < settled) break;
  }
  const strain = seen.reduce(
    (sum, { pH }, r) => sum + (pH - (line.pH[r] ?? 0)) ** 2 / (pull.variance[r] ?? 1),
    dot(at.place, at.place),
  );
  return { ...at, ...line, gain: pull.gain, strain };
}
