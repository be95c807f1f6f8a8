/**
 * What readings of a pot make of what was known before. The curve of pH against dose is steep here and flat there, so it is
 * not taken by its tangent but by the straight line that fits it best over all that may still be true (iterated posterior
 * linearisation: García-Fernández, Svensson, Morelande, Särkkä, IEEE Trans. Signal Process. 63, 5561, 2015); what the line
 * leaves out counts as uncertainty of the reading. Then the usual sum of squares: readings against what was known.
 */
import { factorise, solveBy } from '../equilibrium/cholesky';
import { at } from '../equilibrium/floats';
import { type AgainstPh, baseThere, phAfter } from './against-ph';
import { type KnownBefore, placed } from './known-before';
import { normalPoints } from './normal-points';

/** A reading, with the standard uncertainties of its pH, the model not included, and of its dose. */
export type Seen = {
  readonly grams: number;
  readonly pH: number;
  readonly spread: number;
  readonly gramsSpread: number;
};

type Matrix = readonly (readonly number[])[];

/** In the independent quantities of spread one in which what was known is told. */
export type Fit = {
  readonly place: readonly number[];
  /** Lower triangle of what is still uncertain. */
  readonly left: Matrix;
  /**
   * By reading: pH of the fit, its slope against each quantity and against a gram; variance of what the line leaves out, and
   * of what the dose brings in.
   */
  readonly pH: readonly number[];
  readonly slopes: Matrix;
  readonly perGram: readonly number[];
  readonly bend: readonly number[];
  readonly byDose: readonly number[];
  /** How each quantity follows each reading. */
  readonly gain: Matrix;
  /** Squares of how far readings and what was known lie from the fit, in standard uncertainties. */
  readonly strain: number;
};

/**
 * Order of what the fit moves: the logarithms of the parts of the pot, then those of the first three here, then what the pH of
 * the model is off in each region of pH.
 */
export const beside = { gramsPerMole: 0, below8: 1, from8: 2, phOff: 3 } as const;

/** Ends of the regions: acid; copper comes down; what comes down after it. The pH of the model is off alike within each. */
const regionEnds = [3, 6.5];
export const regions = regionEnds.length + 1;

/** Number of the quantity that says how far the pH of the model is off at a pH. */
const phOffAt = (parts: number, pH: number): number =>
  parts + beside.phOff + regionEnds.filter((end) => pH >= end).length;

/** pH between which the model is less close: metals come down there. Source: reference/liquor.json, modelDose. */
const lessClose = { from: 4, to: 8 };

const rounds = 14;
/** From here on each round goes half of the way, so that it does not swing between two places. */
const gentleFrom = 6;
const settled = 5e-3;

const dot = (a: readonly number[], b: readonly number[]): number => {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] ?? 0) * (b[i] ?? 0);
  return sum;
};

/** Factor of a symmetric matrix, rows of a lower triangle. */
function rootOf(matrix: Matrix): number[][] {
  const n = matrix.length;
  const flat = Float64Array.from(matrix.flat());
  factorise(flat, n);
  return matrix.map((_, i) =>
    matrix.map((__, k) => {
      const entry = k > i ? 0 : at(flat, i * n + k);
      return Number.isFinite(entry) ? entry : 0;
    }),
  );
}

/** Number of the quantity that says how far the model may be off at a pH. */
export const offAt = (parts: number, pH: number): number =>
  parts + (pH >= lessClose.from && pH < lessClose.to ? beside.below8 : beside.from8);

/** Mol of base that so many grams as sold bring, in the eyes of the model at a pH. */
export const molesFrom = (x: readonly number[], parts: number, grams: number, pH: number): number =>
  grams / Math.exp((x[parts + beside.gramsPerMole] ?? 0) + (x[offAt(parts, pH)] ?? 0));

/** pH that is read after so many grams; the pH that was read says in which region of the model. */
export const shownAfter = (
  curve: AgainstPh,
  base: Float64Array,
  x: readonly number[],
  { grams, pH }: Pick<Seen, 'grams' | 'pH'>,
): number =>
  phAfter(curve, base, molesFrom(x, curve.amounts.length, grams, pH)) +
  (x[phOffAt(curve.amounts.length, pH)] ?? 0);

export const amountsAt = (x: readonly number[], parts: number): number[] => x.slice(0, parts).map(Math.exp);

type Line = {
  readonly pH: number[];
  readonly slopes: number[][];
  readonly perGram: number[];
  readonly bend: number[];
  readonly byDose: number[];
};

/** The best straight line through the pH of each reading over all that may be true. */
function lineOver(
  curve: AgainstPh,
  known: KnownBefore,
  seen: readonly Seen[],
  place: readonly number[],
  left: Matrix,
): Line {
  const n = place.length;
  const parts = curve.amounts.length;
  const points = normalPoints(n);
  const line: Line = { pH: [], slopes: [], perGram: [], bend: [], byDose: [] };
  const values = seen.map(() => new Float64Array(points.length));
  const steepness = new Float64Array(seen.length);
  const rise = new Float64Array(seen.length);
  for (const [p, point] of points.entries()) {
    const x = placed(
      known,
      place.map((m, i) => m + dot(left[i] ?? [], point)),
    );
    const base = baseThere(curve, amountsAt(x, parts));
    for (const [r, { grams, pH, gramsSpread }] of seen.entries()) {
      const after = (g: number): number => shownAfter(curve, base, x, { grams: g, pH });
      const [low, high] = [after(grams - gramsSpread), after(grams + gramsSpread)];
      const here = (low + high) / 2;
      (values[r] as Float64Array)[p] = here;
      rise[r] = at(rise, r) + (high - low);
      steepness[r] = at(steepness, r) + ((high - low) / 2) ** 2;
    }
  }
  for (const [r, { gramsSpread }] of seen.entries()) {
    const ours = values[r] as Float64Array;
    const mean = ours.reduce((a, b) => a + b, 0) / points.length;
    const against = place.map(
      (_, i) =>
        points.reduce((sum, point, p) => sum + (at(ours, p) - mean) * (point[i] ?? 0), 0) / points.length,
    );
    const all = ours.reduce((sum, v) => sum + (v - mean) ** 2, 0) / points.length;
    line.pH.push(mean);
    line.slopes.push(untwisted(left, against));
    line.perGram.push(gramsSpread === 0 ? 0 : at(rise, r) / points.length / (2 * gramsSpread));
    line.bend.push(Math.max(0, all - dot(against, against)));
    line.byDose.push(at(steepness, r) / points.length);
  }
  return line;
}

/** Slopes against quantities from those against what they are made of: s · root⁻¹, nothing where nothing is made of it. */
export function untwisted(left: Matrix, against: readonly number[]): number[] {
  const n = against.length;
  const slopes = new Array<number>(n).fill(0);
  for (let k = n - 1; k >= 0; k--) {
    let sum = against[k] ?? 0;
    for (let i = k + 1; i < n; i++) sum -= (slopes[i] ?? 0) * (left[i]?.[k] ?? 0);
    const own = left[k]?.[k] ?? 0;
    slopes[k] = own === 0 ? 0 : sum / own;
  }
  return slopes;
}

const unit = (n: number): number[][] =>
  Array.from({ length: n }, (_, i) => Array.from({ length: n }, (__, k) => (i === k ? 1 : 0)));

/** Where readings and what was known pull to, by a line: the minimum of both sums of squares. */
function pulled(line: Line, seen: readonly Seen[], place: readonly number[]) {
  const n = place.length;
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
  const to = gain.map((row) => dot(row, off));
  const covariance = unit(n).map((row, i) =>
    row.map((one, k) => one - (gain[i] ?? []).reduce((sum, g, r) => sum + g * (line.slopes[r]?.[k] ?? 0), 0)),
  );
  return { gain, to, left: rootOf(covariance), variance };
}

/** @param from where to begin: the fit before, or what was known */
export function fitted(
  curve: AgainstPh,
  known: KnownBefore,
  seen: readonly Seen[],
  from?: Pick<Fit, 'place' | 'left'>,
): Fit {
  const n = known.unsure.length;
  let place = from?.place ?? new Array<number>(n).fill(0);
  let left: Matrix = from?.left ?? unit(n);
  if (seen.length === 0)
    return {
      place,
      left,
      pH: [],
      slopes: [],
      perGram: [],
      bend: [],
      byDose: [],
      gain: place.map(() => []),
      strain: 0,
    };
  let line = lineOver(curve, known, seen, place, left);
  let pull = pulled(line, seen, place);
  for (let round = 1; round < rounds; round++) {
    const share = round < gentleFrom ? 1 : 0.5;
    const next = place.map((old, i) => old + share * ((pull.to[i] ?? 0) - old));
    const moved = Math.max(...next.map((x, i) => Math.abs(x - (place[i] ?? 0))));
    place = next;
    left = pull.left;
    line = lineOver(curve, known, seen, place, left);
    pull = pulled(line, seen, place);
    if (moved < settled) break;
  }
  const strain = seen.reduce(
    (sum, { pH }, r) => sum + (pH - (line.pH[r] ?? 0)) ** 2 / (pull.variance[r] ?? 1),
    dot(place, place),
  );
  return { place, left, ...line, gain: pull.gain, strain };
}
