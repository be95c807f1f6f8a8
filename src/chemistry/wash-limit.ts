/** How many washes keep a limit, how large each must be, and the wash water that makes: the fewer washes, the more water. */
import { minus, over, root, times } from '../quantities/expression';
import { type Figure, workedOut } from '../quantities/figure';
import type { Metal } from '../reference/tables';
import { leftAfter, mixedPerfectly, type Washable, washWaterMade } from './washing';

/** The most of a metal that may stay: of the dry residue, or in the liquor it holds. */
export type WashLimit = { readonly metal: Metal; readonly at: Figure<'mg/kg'> | Figure<'mg/L'> };

/** Share that may stay under a limit; undefined where nobody knows how much of the metal there is. */
export function shareAllowed(residue: Washable, { metal, at }: WashLimit): Figure<'1'> | undefined {
  const before = residue.load.metals.get(metal)?.figure;
  if (!before?.value.gt(0)) return undefined;
  return workedOut({
    sentence: 'Share that may stay',
    unit: '1',
    formula: over(times(at, at.unit === 'mg/kg' ? residue.dry : residue.stays), before),
  });
}

/** Nobody washes more often; a limit that takes more is out of reach. */
const mostWashes = 60;

/** Smallest number of washes of one volume: likely enough, and enough at the high end of what stays. */
export type WashesNeeded = { readonly likely?: number; readonly sure?: number };

/** Undefined numbers where that many washes are not enough. Zero where the limit is kept before any. */
export function washesNeeded(residue: Washable, volume: Figure<'L'>, limit: WashLimit): WashesNeeded {
  const before = residue.load.metals.get(limit.metal)?.figure;
  const base = limit.at.unit === 'mg/kg' ? residue.dry : residue.stays;
  if (!before) return {};
  let [likely, sure]: (number | undefined)[] = [];
  for (let count = 0; count <= mostWashes && sure === undefined; count += 1) {
    const now = workedOut({
      sentence: 'What stays, against the limit',
      unit: limit.at.unit,
      formula: over(times(before, leftAfter(residue, volume, count)), base),
    });
    if (likely === undefined && now.value.lte(limit.at.value)) likely = count;
    if (now.high.lte(limit.at.value)) sure = count;
  }
  return { ...(likely === undefined ? {} : { likely }), ...(sure === undefined ? {} : { sure }) };
}

/**
 * Volume of each of `count` equal washes that just keeps the limit: with x = (1 − ⁿ√share) ÷ evenness it is h·x ÷ (1 − x).
 * Undefined where no volume is enough: a wash that mixes badly leaves something however large it is.
 */
export function volumeOfEach(
  residue: Washable,
  allowed: Figure<'1'>,
  count: number,
): Figure<'L'> | undefined {
  if (allowed.value.lte(0) || allowed.value.gte(1)) return undefined;
  const out = workedOut({
    sentence: 'Share that each wash has to take out',
    unit: '1',
    formula: over(minus(1, root(allowed, count)), residue.evenness),
  });
  if (out.value.gte(1)) return undefined;
  return workedOut({
    sentence: `Volume of each of ${count} washes`,
    unit: 'L',
    formula: over(times(residue.stays, out), minus(1, out)),
  });
}

export type TradeOffPoint = {
  readonly washes: number;
  /** Wash water in all with perfect mixing: no washing makes less. */
  readonly least: Figure<'L'>;
  /** As washing usually mixes; absent where no volume is enough. */
  readonly each?: Figure<'L'>;
  readonly water?: Figure<'L'>;
};

/** The most washes that the trade-off looks at. */
export const tradeOffWashes = 12;

/** Wash water in all against the number of washes that keep a limit, for 1 to 12 of them; empty where it is kept already. */
export function washingTradeOff(residue: Washable, allowed: Figure<'1'>): readonly TradeOffPoint[] {
  const ideal = mixedPerfectly(residue);
  return Array.from({ length: tradeOffWashes }, (_, i) => i + 1).flatMap((count) => {
    const [likely, best] = [volumeOfEach(residue, allowed, count), volumeOfEach(ideal, allowed, count)];
    if (!best) return [];
    return {
      washes: count,
      least: washWaterMade(best, count),
      ...(likely ? { each: likely, water: washWaterMade(likely, count) } : {}),
    };
  });
}

/** The point with the smallest total of wash water; undefined where none keeps the limit. */
export const leastWater = (points: readonly TradeOffPoint[]): TradeOffPoint | undefined =>
  points
    .filter(({ water }) => water !== undefined)
    .reduce<TradeOffPoint | undefined>(
      (best, p) => (best?.water && p.water?.value.gte(best.water.value) ? best : p),
      undefined,
    );

/** The fewest washes after which one more saves less than a tenth of the water. */
export function worthStopping(points: readonly TradeOffPoint[]): TradeOffPoint | undefined {
  const known = points.filter(({ water }) => water !== undefined);
  return known.find((p, i) => {
    const next = known[i + 1]?.water;
    return !next || (p.water && next.value.gt(p.water.value.times(0.9)));
  });
}
