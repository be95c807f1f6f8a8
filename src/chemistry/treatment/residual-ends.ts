/**
 * The ends between which a metal is left, in plain mg/L: lower end beside aged solids, upper end beside fresh ones × 3, 5 or 10
 * by ionic strength, both raised to what lime and settle reaches in the long run, neither more than there is.
 * Recommendation and factors: reference/residuals.json.
 */
import Decimal from 'decimal.js';
import type { Figure } from '../../quantities/figure';
import { residuals as told } from '../../reference/residual-tables';
import type { Metal } from '../../reference/tables';
import { type Load, molesOf, molesOfIronTwo } from '../load';
import type { Beside, MetalLevels } from './residual-levels';

/** How far the model of activities holds: formally, as used and compared, or not. */
export type ModelHolds = 'yes' | 'doubtful' | 'outside';

/** mg/L, whole powers of ten; `low` is nothing where there may be none at all. */
export type DecadeBand = { readonly low: Decimal; readonly high: Decimal };

/** What makes an end: the model, what lime and settle reaches, or that there is no more of the metal. */
export type EndBy = 'model' | 'technology' | 'all-there-is';

/**
 * `too-strong`: ionic strength above 9 mol/kg. `ammonia`: more of it than metal. `palladium`: published constants differ by
 * 900 times. `tin`: it goes through a filter as a colloid.
 */
export type NotPredicted = 'too-strong' | 'ammonia' | 'palladium' | 'tin';

const formal = Number(told.reach.formal.value);
const used = Number(told.reach.used.value);

/** @param ionicStrength mol/kg */
export const modelHoldsAt = (ionicStrength: number): ModelHolds =>
  ionicStrength > used ? 'outside' : ionicStrength > formal ? 'doubtful' : 'yes';

/** What the upper end stands above the model with fresh solids. */
export const factorAt = (ionicStrength: number): string =>
  told.above.rows.find(({ upTo }) => upTo === null || ionicStrength < Number(upTo))?.factor ?? '10';

/** Nothing is foretold of palladium from here on; below it stays dissolved. Source: reference/equilibrium.json. */
const palladiumFrom = 4;
/** Plain ends of one metal, mg/L: what curves and sums are made of. */
export type PlainEnds = {
  readonly low: number;
  readonly high: number;
  readonly by: { readonly low: EndBy; readonly high: EndBy };
};

export function plainEnds(metal: Metal, { fresh, aged, all }: MetalLevels, ionicStrength: number): PlainEnds {
  const floor = Number(told.floor.values[metal] ?? 0);
  const end = (model: number): readonly [number, EndBy] => {
    const [value, by] = model >= floor ? [model, 'model' as const] : [floor, 'technology' as const];
    return value >= all ? [all, 'all-there-is'] : [value, by];
  };
  const [low, lowBy] = end(aged);
  const [high, highBy] = end(fresh * Number(factorAt(ionicStrength)));
  return { low, high, by: { low: lowBy, high: highBy } };
}

export function notPredicted(
  metal: Metal,
  at: { readonly pH: number; readonly ionicStrength: number },
  load: Load,
  { ammonia }: Beside,
): NotPredicted | undefined {
  if (metal === 'Sn') return 'tin';
  if (metal === 'Pd' && at.pH >= palladiumFrom) return 'palladium';
  if (at.ionicStrength > used) return 'too-strong';
  return ammonia && ammoniaPerMetal(load, ammonia) > Number(told.reach.ammonia.value) ? 'ammonia' : undefined;
}

function ammoniaPerMetal(load: Load, ammonia: Figure<'mol'>): number {
  const all = [...load.metals.keys()].reduce(
    (sum, m) => sum + (molesOf(load, m)?.value.toNumber() ?? 0),
    molesOfIronTwo(load)?.value.toNumber() ?? 0,
  );
  return ammonia.value.toNumber() / Math.max(all, 1e-12);
}

/** Outwards to powers of ten; a value that is one stays. */
export function decadesAround(low: Decimal, high: Decimal): DecadeBand {
  const power = (x: Decimal, rounding: Decimal.Rounding): Decimal =>
    x.lte(0)
      ? new Decimal(0)
      : Decimal.pow(10, Decimal.log10(x).toDecimalPlaces(9).toDecimalPlaces(0, rounding));
  return { low: power(low, Decimal.ROUND_FLOOR), high: power(high, Decimal.ROUND_CEIL) };
}
