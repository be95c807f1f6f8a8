/** What may still be dissolved, in powers of ten: the model is no finer than that. */

import Decimal from 'decimal.js';
import { molarMass } from '../../chemistry/formula';
import type { CurvePoint } from '../../chemistry/treatment/dose-curve';
import { decadesAround, modelHoldsAt, plainEnds } from '../../chemistry/treatment/residual-ends';
import type { DecimalSign } from '../../quantities/format';
import { formatNumber } from '../../quantities/format';
import type { Metal } from '../../reference/tables';
import { treatmentWords as w } from './words';

const thin = '\u202f';
/** More than this part of a metal counts as all of it. */
const nearlyAll = 0.9;
/** No constants that can be believed. */
const unpredicted: ReadonlySet<Metal> = new Set<Metal>(['Pd', 'Sn']);

/** "0.1 mg/L", "10 g/L": grams from 1000 mg on. @param milligrams a litre, a power of ten */
export function perLitreText(milligrams: Decimal, sign: DecimalSign): string {
  const grams = milligrams.gte(1000);
  const value = grams ? milligrams.div(1000) : milligrams;
  return `${formatNumber(value, value.decimalPlaces(), sign)}${thin}${grams ? 'g/L' : 'mg/L'}`;
}

/** mg in a litre of the liquor as it came. */
const perLitre = (moles: number, metal: Metal, litres: number): number =>
  (moles * molarMass(metal).value.toNumber() * 1000) / litres;

/** The most of a metal that may stay at a point of the curve, or why nobody can say. */
export function mostLeft(
  metal: Metal,
  point: CurvePoint,
  all: number,
  litres: number,
  sign: DecimalSign,
): string {
  const now = point.dissolved.get(metal) ?? 0;
  if (now > nearlyAll * all) return w.nearlyAll;
  if (unpredicted.has(metal) || modelHoldsAt(point.ionicStrength) === 'outside') return w.notPredicted;
  const fresh = perLitre(now, metal, litres);
  const { high } = plainEnds(
    metal,
    { fresh, aged: fresh, all: perLitre(all, metal, litres) },
    point.ionicStrength,
  );
  return w.upTo(perLitreText(decadesAround(new Decimal(high), new Decimal(high)).high, sign));
}
