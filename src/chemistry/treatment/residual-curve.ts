/** What stays of each metal against pH, in plain numbers: for the plot, and for the sum that `which-ph.ts` looks through. */
import type { BaseId, Metal } from '../../reference/tables';
import type { Load } from '../load';
import type { PhSpan } from './along-dose';
import { type NotPredicted, notPredicted, plainEnds } from './residual-ends';
import { type Beside, type LevelsFailure, levelsOf } from './residual-levels';

export type CurveBand = {
  readonly low: number;
  readonly high: number;
  /** The lower end is what lime and settle reaches, which is a mean: there may be less. */
  readonly lowIsMean: boolean;
};

export type ResidualPoint = {
  readonly pH: number;
  /** mol/kg */
  readonly ionicStrength: number;
  /** mg/L, not rounded: for drawing. A metal of which nothing is foretold has none. */
  readonly bands: ReadonlyMap<Metal, CurveBand>;
};

export type ResidualCurve = {
  /** Every tenth of a pH, from the span's first on. */
  readonly points: readonly ResidualPoint[];
  /** Where the base ends, if it does not reach the end of the span. */
  readonly ends?: number;
  readonly metals: readonly Metal[];
  /** Metals of which nothing is foretold at any point, and why. */
  readonly unpredicted: ReadonlyMap<Metal, NotPredicted>;
  readonly openIn: readonly string[];
};

export type ResidualCurved =
  | { readonly ok: true; readonly value: ResidualCurve }
  | { readonly ok: false; readonly failure: LevelsFailure };

/** As it is drawn. */
export const drawn: PhSpan = { from: 6, to: 12.4 };

/** Tenths of a pH within a span. */
export const tenths = ({ from, to }: PhSpan): readonly number[] =>
  Array.from({ length: Math.round((to - from) * 10) + 1 }, (_, i) => Math.round(from * 10 + i) / 10);

export function residualCurve(
  load: Load,
  base: BaseId,
  beside: Beside = {},
  span: PhSpan = drawn,
): ResidualCurved {
  const levels = levelsOf(load, base, span, beside);
  if (!levels.ok) return levels;
  const { metals: present, ends, at, openIn } = levels.value;
  const unpredicted = new Map<Metal, NotPredicted>();
  const points = tenths(span).flatMap((pH): ResidualPoint[] => {
    const here = at(pH);
    if (!here) return [];
    const bands = new Map<Metal, CurveBand>();
    for (const [metal, levelsHere] of here.of) {
      const why = notPredicted(metal, here, load, beside);
      if (why) unpredicted.set(metal, why);
      else {
        const { low, high, by } = plainEnds(metal, levelsHere, here.ionicStrength);
        bands.set(metal, { low, high, lowIsMean: by.low === 'technology' });
      }
    }
    return [{ pH, ionicStrength: here.ionicStrength, bands }];
  });
  for (const { bands } of points) for (const metal of bands.keys()) unpredicted.delete(metal);
  return {
    ok: true,
    value: { points, ...(ends < span.to ? { ends } : {}), metals: present, unpredicted, openIn },
  };
}
