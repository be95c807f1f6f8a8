/** What may still be dissolved, in powers of ten: nobody knows it finer. */
import Decimal from 'decimal.js';
import type { CurvePoint } from '../../chemistry/treatment/dose-curve';
import type { ResidualPoint } from '../../chemistry/treatment/residual-curve';
import { decadesAround, modelHoldsAt } from '../../chemistry/treatment/residual-ends';
import type { WhichPh } from '../../chemistry/treatment/which-ph';
import { type DecimalSign, formatNumber } from '../../quantities/format';
import type { Metal } from '../../reference/tables';
import { words } from '../words';
import { grouped } from './grouped';
import { treatmentWords as w } from './words';

const thin = '\u202f';
/** More than this part of a metal counts as all of it. */
const nearlyAll = 0.9;
/** From here down the model's own error decides what is left. */
const hardlyAny = 0.05;
const milligramsInGram = 1000;

/** "0.1 mg/L", "10 g/L": grams from 1000 mg on. @param milligrams a litre, a power of ten */
export function perLitreText(milligrams: Decimal, sign: DecimalSign): string {
  const grams = milligrams.gte(milligramsInGram);
  const value = grams ? milligrams.div(milligramsInGram) : milligrams;
  return `${formatNumber(value, value.decimalPlaces(), sign)}${thin}${grams ? 'g/L' : 'mg/L'}`;
}

/** The point at a pH, or the nearest to it. */
function pointNear(points: readonly ResidualPoint[], pH: number): ResidualPoint | undefined {
  const after = points.findIndex((point) => point.pH >= pH);
  const [a, b] = [points[Math.max(after - 1, 0)], after < 0 ? points.at(-1) : points[after]];
  return a && b && Math.abs(a.pH - pH) < Math.abs(b.pH - pH) ? a : b;
}

/** Null in a liquor that is too strong for the model, which is said once of the curve and not of each metal. */
function mostOf(metal: Metal, point: ResidualPoint, sign: DecimalSign): string | null {
  const most = point.bands.get(metal)?.high;
  if (most === undefined) return modelHoldsAt(point.ionicStrength) === 'outside' ? null : w.notPredicted;
  return w.upTo(perLitreText(decadesAround(new Decimal(most), new Decimal(most)).high, sign));
}

/**
 * What may stay of a metal at a pH, in decades; undefined where nothing is foretold of it there. At the best pH as the row of
 * the metal has it.
 */
export function spanAt(
  { window, ofAll, atBest, curve }: WhichPh,
  metal: Metal,
  pH: number,
  sign: DecimalSign,
): { readonly value: string; readonly unit: string } | undefined {
  const held = pH === (window ?? ofAll)?.best && atBest.find(({ residual }) => residual.metal === metal);
  if (held)
    return held.residual.predicted
      ? spanText(held.residual.band.low, held.residual.band.high, sign)
      : undefined;
  const band = pointNear(curve.points, pH)?.bands.get(metal);
  if (!band) return undefined;
  const { low, high } = decadesAround(new Decimal(band.low), new Decimal(band.high));
  return spanText(low, high, sign);
}

/** Share of a metal that the dose has left in solution: straight between the points of the curve, as the base is used up. */
function shareLeft(points: readonly CurvePoint[], grams: number, metal: Metal): number {
  const after = points.findIndex((point) => point.grams >= grams);
  const [a, b] = [points[Math.max(after - 1, 0)], points[after]];
  const all = points[0]?.dissolved.get(metal) ?? 0;
  const [x, y] = [a?.dissolved.get(metal) ?? 0, b?.dissolved.get(metal) ?? 0];
  if (all === 0 || !a || !b) return 0;
  return (a.grams === b.grams ? y : x + ((grams - a.grams) / (b.grams - a.grams)) * (y - x)) / all;
}

export type ReadAt = {
  readonly which: WhichPh;
  readonly points: readonly CurvePoint[];
  readonly grams: number;
  readonly pH: number;
};

/**
 * "Ni nearly all; Cu in part; Zn up to 1 mg/L". While a metal comes down the base that is used up tells how much; what is left
 * of it afterwards only the upper end of its band does.
 */
export function stillDissolved({ which, points, grams, pH }: ReadAt, sign: DecimalSign): string {
  const near = pointNear(which.curve.points, pH);
  const said = (metal: Metal): string | null => {
    const share = shareLeft(points, grams, metal);
    // Before, all are dissolved, whatever the model holds of them.
    const begun = pH >= (which.curve.points[0]?.pH ?? 0);
    const why = which.curve.unpredicted.get(metal);
    if (begun && why && why !== 'too-strong') return w.notPredicted;
    if (share > nearlyAll) return w.nearlyAll;
    if (share > hardlyAny) return w.inPart;
    return near ? mostOf(metal, near, sign) : w.notPredicted;
  };
  return [...grouped(which.curve.metals, said)]
    .flatMap(([what, of]) => (what === null ? [] : [`${of.join(', ')} ${what}`]))
    .join('; ');
}

/** The same in the unit of the other end, so that a span has one unit. */
export function spanText(low: Decimal, high: Decimal, sign: DecimalSign): { value: string; unit: string } {
  const grams = high.gte(milligramsInGram);
  const [from, to] = [low, high].map((end) => {
    const value = grams ? end.div(milligramsInGram) : end;
    return formatNumber(value, value.decimalPlaces(), sign);
  });
  const value = from === to ? `${to}` : `${from} ${words.to} ${to}`;
  return { value, unit: grams ? 'g/L' : 'mg/L' };
}
