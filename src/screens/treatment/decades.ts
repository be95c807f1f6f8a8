/** What may still be dissolved, in powers of ten: nobody knows it finer. */
import Decimal from 'decimal.js';
import type { ResidualPoint } from '../../chemistry/treatment/residual-curve';
import { decadesAround } from '../../chemistry/treatment/residual-ends';
import type { WhichPh } from '../../chemistry/treatment/which-ph';
import { type DecimalSign, formatNumber } from '../../quantities/format';
import type { Metal } from '../../reference/tables';
import { words } from '../words';
import { grouped } from './grouped';
import { treatmentWords as w } from './words';

const thin = '\u202f';
/** More than this part of a metal counts as all of it. */
const nearlyAll = 0.9;
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

function mostOf(metal: Metal, point: ResidualPoint, first: ResidualPoint, sign: DecimalSign): string {
  const [here, all] = [point.bands.get(metal)?.high, first.bands.get(metal)?.high];
  if (here === undefined) return w.notPredicted;
  if (all !== undefined && here > nearlyAll * all) return w.nearlyAll;
  const most = decadesAround(new Decimal(here), new Decimal(here)).high;
  return w.upTo(perLitreText(most, sign));
}

/** "Cu, Ni up to 1 mg/L; Ba nearly all" at a pH: the upper ends. Below where they are looked for only iron has left. */
export function stillDissolved({ curve }: WhichPh, pH: number, sign: DecimalSign): string {
  const [point, first] = [pointNear(curve.points, pH), curve.points[0]];
  if (!point || !first || pH < first.pH) return curve.metals.length > 0 ? w.nearlyAllOfThem : '';
  const bySaid = grouped(curve.metals, (metal) => mostOf(metal, point, first, sign));
  return [...bySaid].map(([said, of]) => `${of.join(', ')} ${said}`).join('; ');
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
