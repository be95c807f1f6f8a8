/** The pH that a pot shows after a dose, for amounts that may be: the model as the fit asks it, and over all that may be at once. */
import { type AgainstPh, baseThere, phAfter } from './against-ph';
import { type KnownBefore, placed } from './known-before';
import { dot, type Matrix, through, throughInverse } from './matrices';
import { normalPoints } from './normal-points';

/** A reading, with the standard uncertainties of its pH, the model not included, and of its dose. */
export type Seen = {
  readonly grams: number;
  readonly pH: number;
  readonly spread: number;
  readonly gramsSpread: number;
};

/**
 * Order of what the fit moves: the logarithms of the parts of the pot, then those of the first three here, then what the pH of
 * the model is off in each region of pH.
 */
export const beside = { gramsPerMole: 0, amongMetals: 1, beyond: 2, phOff: 3 } as const;

/** Ends of the regions: acid; copper comes down; what comes down after it. The pH of the model is off alike within each. */
const regionEnds = [3, 6];

/** Whether metals come down at a pH: which way they do makes the dose of the model less close there. */
export const among = (pH: number): boolean => pH >= 4 && pH < 8;

/** Number of the quantity that says how far the pH of the model is off at a pH. */
export const phOffAt = (parts: number, pH: number): number =>
  parts + beside.phOff + regionEnds.filter((end) => pH >= end).length;

/** Number of the quantity that says how far the dose of the model may be off at a pH. */
export const offAt = (parts: number, pH: number): number =>
  parts + (among(pH) ? beside.amongMetals : beside.beyond);

/** mol of each part. */
export const amountsAt = (x: readonly number[], parts: number): number[] => x.slice(0, parts).map(Math.exp);

/** Where it is, and what is left uncertain about it, in the independent quantities of what was known. */
export type Place = { readonly place: readonly number[]; readonly left: Matrix };

function along(row: Float64Array, point: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < row.length; k++) sum += (row[k] as number) * (point[k] as number);
  return sum;
}

/**
 * pH after doses, at each of the points that stand for what may be; `high` and `low` for the ends of each dose. The pH that was read
 * says in which region of the model it is. Called for every step of every fit, so it makes nothing anew for a point.
 */
function overAll(curve: AgainstPh, known: KnownBefore, seen: readonly Seen[], { place, left }: Place) {
  const points = normalPoints(place.length);
  const parts = curve.amounts.length;
  const middle = placed(known, place);
  const mix = known.root.map((row) => Float64Array.from(through(row, left)));
  const ends = seen.map(({ grams, pH, gramsSpread }) => ({
    from: grams - gramsSpread,
    to: grams + gramsSpread,
    off: offAt(parts, pH),
    phOff: phOffAt(parts, pH),
    low: new Float64Array(points.length),
    high: new Float64Array(points.length),
  }));
  const x = new Float64Array(middle.length);
  const amounts = new Float64Array(parts);
  const base = new Float64Array(curve.pH.length);
  for (let p = 0; p < points.length; p++) {
    const point = points[p] as Float64Array;
    for (let i = 0; i < x.length; i++) x[i] = (middle[i] as number) + along(mix[i] as Float64Array, point);
    for (let k = 0; k < parts; k++) amounts[k] = Math.exp(x[k] as number);
    baseThere(curve, amounts, base);
    const perMole = x[parts + beside.gramsPerMole] as number;
    for (const { from, to, off, phOff, low, high } of ends) {
      const each = Math.exp(perMole + (x[off] as number));
      const shift = x[phOff] as number;
      low[p] = phAfter(curve, base, from / each) + shift;
      high[p] = phAfter(curve, base, to / each) + shift;
    }
  }
  return { points, low: ends.map((one) => one.low), high: ends.map((one) => one.high) };
}

/** By reading: pH, its slope against each quantity, variance of what the line leaves out, and of what the dose brings in. */
export type Line = {
  readonly pH: readonly number[];
  readonly slopes: Matrix;
  readonly bend: readonly number[];
  readonly byDose: readonly number[];
};

/** The best straight line through the pH of each reading over all that may be. */
export function lineOver(curve: AgainstPh, known: KnownBefore, seen: readonly Seen[], from: Place): Line {
  const { points, low, high } = overAll(curve, known, seen, from);
  const count = points.length;
  const lines = seen.map((_, r) => {
    const [a, b] = [low[r] as Float64Array, high[r] as Float64Array];
    const here = a.map((v, p) => (v + (b[p] as number)) / 2);
    const pH = here.reduce((sum, v) => sum + v, 0) / count;
    const against = new Array<number>(from.place.length).fill(0);
    let all = 0;
    let byDose = 0;
    for (const [p, point] of points.entries()) {
      const off = (here[p] as number) - pH;
      for (let i = 0; i < against.length; i++)
        against[i] = (against[i] ?? 0) + (off * (point[i] ?? 0)) / count;
      all += off ** 2 / count;
      byDose += (((b[p] as number) - (a[p] as number)) / 2) ** 2 / count;
    }
    const bend = Math.max(0, all - dot(against, against));
    return { pH, slopes: throughInverse(against, from.left), bend, byDose };
  });
  return {
    pH: lines.map((l) => l.pH),
    slopes: lines.map((l) => l.slopes),
    bend: lines.map((l) => l.bend),
    byDose: lines.map((l) => l.byDose),
  };
}

export type Expected = { readonly low: number; readonly high: number };

/** pH to be expected at a dose, lowest and highest over the points that stand for what may be. */
export function expectedAt(curve: AgainstPh, known: KnownBefore, one: Seen, from: Place): Expected {
  const { low, high } = overAll(curve, known, [one], from);
  return { low: Math.min(...(low[0] ?? [])), high: Math.max(...(high[0] ?? [])) };
}
