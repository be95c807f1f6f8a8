/**
 * The pH at which the metals of a load stay least over their limits: the sum over the metals of residual ÷ limit, upper ends,
 * and the window around its least in which it is not more than twice that, and no metal counted comes back. Twice, since the
 * upper ends stand 3 to 10 times above a model whose constants differ by 40: a smaller difference says nothing.
 *
 * A metal that is over its limit at every pH the base reaches, even at the model's lower end, is named and left out of that
 * sum: lead or silver would else draw the window to a pH that does not help them and brings zinc back. `ofAll` has the sum
 * with them.
 */
import type { Figure } from '../../quantities/figure';
import { type BaseId, bases, type Metal } from '../../reference/tables';
import type { Load } from '../load';
import type { PhSpan } from './along-dose';
import { type Limits, referenceLimits } from './limits';
import { type ResidualCurve, type ResidualPoint, residualCurve } from './residual-curve';
import type { NotPredicted } from './residual-ends';
import { type Beside, type LevelsFailure, levelsOf } from './residual-levels';
import { type Residual, residualOf } from './residuals';

/** Tenths of pH. */
export type PhWindow = {
  readonly low: number;
  readonly best: number;
  readonly high: number;
  /** Sum of residual ÷ limit at the best. */
  readonly sum: number;
};

/**
 * On the careful side at both ends. `over`: even the lower end, before it is rounded down; `under`: even the upper end, rounded
 * up as it is printed.
 */
export type AgainstLimit = 'under' | 'perhaps' | 'over' | 'no-limit' | 'not-predicted';

export type HeldAgainst = {
  readonly residual: Residual;
  readonly limit?: Figure<'mg/L'>;
  /** Ends of the band ÷ limit; absent without a limit or a prediction. */
  readonly ratio?: { readonly low: number; readonly high: number };
  readonly verdict: AgainstLimit;
};

/** What may bring a metal down that this base never brings under its limit. */
export type Instead =
  | 'chloride-first'
  | 'carbonate'
  | 'sulfate-or-carbonate'
  /** Ammonia holds it up. */
  | 'ammonia-away'
  /** The base ends below the pH that the metal needs. */
  | 'other-base'
  | 'unknown';

export type NeverUnder = { readonly metal: Metal; readonly instead: Instead };

/** From `from` on the upper end is over the limit, where there is one, and three times its least. */
export type ComesBack = { readonly metal: Metal; readonly from: number };

export type PhWarning =
  | { readonly code: 'reference-only' }
  | ({ readonly code: 'comes-back' } & ComesBack)
  | { readonly code: 'ammonia' }
  | { readonly code: 'silver-chloride-first' }
  | { readonly code: 'lead-carbonate' }
  | { readonly code: 'barium-stays' }
  | { readonly code: 'not-predicted'; readonly metal: Metal; readonly why: NotPredicted }
  | { readonly code: 'no-limit'; readonly metals: readonly Metal[] }
  /** The base ends at this pH, below where the window was looked for. */
  | { readonly code: 'base-ends'; readonly pH: number }
  | { readonly code: 'iron-needs-air' }
  /** The best pH lies outside what local rules allow where discharge is authorised. */
  | { readonly code: 'outside-discharge-ph'; readonly best: number }
  | { readonly code: 'open'; readonly liquors: readonly string[] };

export type WhichPh = {
  readonly base: BaseId;
  readonly limits: Limits;
  /** Absent where no metal can be counted: none has a limit and comes under it. */
  readonly window?: PhWindow;
  /** The same with the metals that never come under their limit; absent where there are none, or no metal has a limit. */
  readonly ofAll?: PhWindow;
  readonly counted: readonly Metal[];
  /** Each metal at the best pH; at the best of all where there is no window. Empty where there is neither. */
  readonly atBest: readonly HeldAgainst[];
  readonly neverUnder: readonly NeverUnder[];
  readonly comesBack: readonly ComesBack[];
  readonly warnings: readonly PhWarning[];
  readonly curve: ResidualCurve;
};

export type WhichPhResult =
  | { readonly ok: true; readonly value: WhichPh }
  | { readonly ok: false; readonly failure: LevelsFailure };

/** Where the window is looked for: iron leaves from 4 on, and beyond 12.4 only caustic soda goes, where zinc and lead are long back. */
export const looked: PhSpan = { from: 4, to: 12.4 };
/** The window holds as much of the sum as this many times its least. */
const factor = 2;
/** Sums that differ by less than this part are one, as where all stand at what lime and settle reaches: the lowest pH takes the least base. */
const same = 1e-6;
/** A metal has come back when this many times its least is dissolved again. */
const back = 3;

export function whichPh(
  load: Load,
  base: BaseId,
  limits: Limits = referenceLimits(),
  beside: Beside = {},
): WhichPhResult {
  const curved = residualCurve(load, base, beside, looked);
  if (!curved.ok) return curved;
  const curve = curved.value;
  const limited = curve.metals.filter((m) => limits.values.has(m) && !curve.unpredicted.has(m));
  const neverUnder = limited.flatMap((m) => neverUnderOf(m, curve, limits, base, beside));
  const counted = limited.filter((m) => !neverUnder.some(({ metal }) => metal === m));
  const comesBack = curve.metals.flatMap((m) => comesBackOf(m, curve.points, limits));
  const window = beforeComingBack(windowOf(curve.points, counted, limits), counted, comesBack);
  const ofAll = neverUnder.length > 0 ? windowOf(curve.points, limited, limits) : undefined;
  const best = (window ?? ofAll)?.best;
  return {
    ok: true,
    value: {
      base,
      limits,
      ...(window ? { window } : {}),
      ...(ofAll ? { ofAll } : {}),
      counted,
      atBest: best === undefined ? [] : heldAgainst(load, base, best, limits, beside),
      neverUnder,
      comesBack,
      warnings: warningsOf({ load, base, limits, beside, curve, comesBack, best }),
      curve,
    },
  };
}

/** Sum of upper end ÷ limit at a point. */
export const sumOver = (point: ResidualPoint, metals: readonly Metal[], limits: Limits): number =>
  metals.reduce((sum, m) => {
    const [band, limit] = [point.bands.get(m), limits.values.get(m)];
    return band && limit ? sum + band.high / limit.value.toNumber() : sum;
  }, 0);

export function windowOf(
  points: readonly ResidualPoint[],
  metals: readonly Metal[],
  limits: Limits,
): PhWindow | undefined {
  if (metals.length === 0 || points.length === 0) return undefined;
  const sums = points.map((point) => sumOver(point, metals, limits));
  const least = Math.min(...sums);
  const best = sums.findIndex((sum) => sum <= least * (1 + same));
  const holds = (i: number): boolean => (sums[i] ?? Number.POSITIVE_INFINITY) <= factor * least;
  let [low, high] = [best, best];
  while (holds(low - 1)) low--;
  while (holds(high + 1)) high++;
  const pH = (i: number): number => points[i]?.pH ?? Number.NaN;
  return { low: pH(low), best: pH(best), high: pH(high), sum: sums[best] ?? Number.NaN };
}

/** A window that ends before a metal counted comes back, where the best lies below that. */
function beforeComingBack(
  window: PhWindow | undefined,
  counted: readonly Metal[],
  comesBack: readonly ComesBack[],
): PhWindow | undefined {
  const ends = comesBack
    .filter(({ metal, from }) => counted.includes(metal) && window !== undefined && from > window.best)
    .map(({ from }) => Math.round(from * 10 - 1) / 10);
  return window && { ...window, high: Math.min(window.high, ...ends) };
}

function neverUnderOf(
  metal: Metal,
  { points, ends: baseEnds }: ResidualCurve,
  limits: Limits,
  base: BaseId,
  beside: Beside,
): NeverUnder[] {
  const limit = limits.values.get(metal)?.value.toNumber() ?? 0;
  const ends = points.flatMap(({ bands }) => bands.get(metal) ?? []);
  const over = ends.length > 0 && ends.every(({ low, lowIsMean }) => low > limit && !lowIsMean);
  if (!over) return [];
  return [{ metal, instead: insteadFor(metal, base, baseEnds !== undefined, beside) }];
}

const givesCarbonate = (base: BaseId): boolean => Number(bases[base].carbonDioxidePerMol) > 0;

function insteadFor(metal: Metal, base: BaseId, baseEnds: boolean, { ammonia }: Beside): Instead {
  if (metal === 'Ag') return 'chloride-first';
  if (metal === 'Ba') return 'sulfate-or-carbonate';
  if (metal === 'Pb' && !givesCarbonate(base)) return 'carbonate';
  if (ammonia) return 'ammonia-away';
  return baseEnds ? 'other-base' : 'unknown';
}

/** Where the upper end has left its least behind, and rises. */
function comesBackOf(metal: Metal, points: readonly ResidualPoint[], limits: Limits): ComesBack[] {
  const highs = points.flatMap(({ pH, bands }) => {
    const band = bands.get(metal);
    return band ? [{ pH, high: band.high }] : [];
  });
  const least = Math.min(...highs.map(({ high }) => high));
  const lowest = highs.findIndex(({ high }) => high === least);
  const bar = Math.max(back * least, limits.values.get(metal)?.value.toNumber() ?? 0);
  const found = highs.slice(lowest + 1).find(({ high }) => high > bar);
  return found ? [{ metal, from: found.pH }] : [];
}

function heldAgainst(
  load: Load,
  base: BaseId,
  pH: number,
  limits: Limits,
  beside: Beside,
): readonly HeldAgainst[] {
  const levels = levelsOf(load, base, { from: pH, to: pH }, beside);
  const at = levels.ok ? levels.value.at(pH) : undefined;
  if (!levels.ok || !at) return [];
  return levels.value.metals.map((metal) => against(residualOf(metal, at, load, beside), limits));
}

/** A band against a limit: one that reaches over it as it is printed is never called under it. */
export function against(residual: Residual, limits: Limits): HeldAgainst {
  const limit = limits.values.get(residual.metal);
  if (!residual.predicted) return { residual, ...(limit ? { limit } : {}), verdict: 'not-predicted' };
  if (!limit) return { residual, verdict: 'no-limit' };
  const { low, high } = residual.band;
  const over = residual.madeBy.low !== 'technology' && residual.low.low.gt(limit.value);
  const verdict = over ? 'over' : high.lte(limit.value) ? 'under' : 'perhaps';
  const ratio = { low: low.div(limit.value).toNumber(), high: high.div(limit.value).toNumber() };
  return { residual, limit, ratio, verdict };
}

const outside = (pH: number, allowed: Limits['pH']): boolean =>
  allowed !== undefined && (allowed.low.value.gt(pH) || allowed.high.value.lt(pH));

type Warned = {
  readonly load: Load;
  readonly base: BaseId;
  readonly limits: Limits;
  readonly beside: Beside;
  readonly curve: ResidualCurve;
  readonly comesBack: readonly ComesBack[];
  readonly best: number | undefined;
};

function warningsOf({ load, base, limits, beside, curve, comesBack, best }: Warned): readonly PhWarning[] {
  const has = (metal: Metal): boolean => curve.metals.includes(metal);
  const noLimit = curve.metals.filter((m) => !limits.values.has(m));
  const all: readonly (PhWarning | false)[] = [
    limits.of === 'reference' && { code: 'reference-only' },
    ...comesBack.map((c): PhWarning => ({ code: 'comes-back', ...c })),
    beside.ammonia !== undefined && { code: 'ammonia' },
    has('Ag') && { code: 'silver-chloride-first' },
    has('Pb') && !givesCarbonate(base) && { code: 'lead-carbonate' },
    has('Ba') && !bases[base].alsoTakes?.metals.Ba && { code: 'barium-stays' },
    ...[...curve.unpredicted].map(([metal, why]): PhWarning => ({ code: 'not-predicted', metal, why })),
    noLimit.length > 0 && { code: 'no-limit', metals: noLimit },
    curve.ends !== undefined && { code: 'base-ends', pH: curve.ends },
    load.ironTwo !== undefined && { code: 'iron-needs-air' },
    best !== undefined && outside(best, limits.pH) && { code: 'outside-discharge-ph', best },
    curve.openIn.length > 0 && { code: 'open', liquors: curve.openIn },
  ];
  return all.filter((w) => w !== false);
}
