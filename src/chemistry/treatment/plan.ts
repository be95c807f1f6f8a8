/**
 * A dosing plan: stages of one base each, in portions that are small enough for the rise in temperature that is allowed and,
 * where carbon dioxide comes off, for the free space over the liquor; a wait and a reading after each. The portions go on in
 * full up to the low end of what is needed, then in quarters of what lies between the ends: there the pH decides.
 */
import Decimal from 'decimal.js';
import { minus, over, plus, times } from '../../quantities/expression';
import { type Figure, workedOut } from '../../quantities/figure';
import { dosing } from '../../reference/dosing-tables';
import { type BaseId, liquor } from '../../reference/tables';
import { asSold, carbonDioxide, overTheModel, perHydroxide, type StatedPurity } from '../base-needed';
import { ranged } from '../constants';
import { densityOf } from '../density';
import { heatPerAcid } from '../heat';
import type { Load } from '../load';
import { type BaseTo, baseTo } from './base-to';
import { type DoseCurve, doseCurve } from './dose-curve';
import { doseTo } from './dose-to';
import { type Expected, expectedOn } from './expected-ph';
import { lastParts, weighable } from './portion-size';
import { amountsAfter, forCarbonate, type StageAsked } from './stage-before';
import { likely, treatedPot } from './treated-pot';

export type PlanAsked = {
  readonly load: Load;
  /** In order; each brings the pot on from where the one before left it. */
  readonly stages: readonly StageAsked[];
  readonly purity: (base: BaseId) => StatedPurity | undefined;
  /** What one portion may warm the liquor. */
  readonly rise: Figure<'K'>;
  /** Free space over the liquor; absent where it is not known. */
  readonly headspace?: Figure<'L'>;
};

export type Portion = {
  /** As weighed, g: at most two digits. */
  readonly grams: Decimal;
  /** Of this stage, this portion included. */
  readonly soFar: Decimal;
  /** `full`: below the low end of what is needed; `last`: the pH decides whether it goes in. */
  readonly kind: 'full' | 'last';
  /** Absent where the model has no curve for it. */
  readonly expected?: Expected;
};

export type PlannedStage = {
  readonly base: BaseId;
  readonly pH: number;
  readonly needed: Figure<'g'>;
  readonly hydroxide: Figure<'mol'>;
  /** Largest portion, and what holds it down. */
  readonly byHeat: Figure<'g'>;
  readonly byFoam?: Figure<'g'>;
  readonly portions: readonly Portion[];
  /** From where the stage before ended; absent where the model tells none. */
  readonly curve?: DoseCurve;
  readonly wait: Figure<'min'>;
  /** Carbon dioxide of the stage in all. */
  readonly gas?: Figure<'L'>;
};

export type PlanFailure = {
  readonly stage: number;
  readonly why:
    | Exclude<BaseTo, { ok: true }>['why']
    /** Carbon dioxide comes off, and nobody said how much free space there is, or there may be none. */
    | { readonly code: 'headspace-open' }
    /** The stage before went further already. */
    | { readonly code: 'nothing-left' }
    /** More portions than anybody weighs. */
    | { readonly code: 'too-many-portions'; readonly count: number };
};

export type Planned =
  | { readonly ok: true; readonly stages: readonly PlannedStage[] }
  | { readonly ok: false; readonly failure: PlanFailure };

/** Nobody weighs more portions than this in one go. */
const mostPortions = 60;

export function planOf(asked: PlanAsked): Planned {
  const stages: PlannedStage[] = [];
  let before: Reached | undefined;
  for (const [i, { base, pH }] of asked.stages.entries()) {
    const to = baseTo(base, asked.load, pH, asked.purity(base));
    if (!to.ok) return { ok: false, failure: { stage: i, why: to.why } };
    const planned = stage(asked, to, before && { to: before, stages: asked.stages.slice(0, i) });
    if (!planned.ok) return { ok: false, failure: { stage: i, why: planned.why } };
    stages.push(planned.value);
    before = to;
  }
  return { ok: true, stages };
}

type Reached = Extract<BaseTo, { ok: true }>;

type Stage =
  | { readonly ok: true; readonly value: PlannedStage }
  | { readonly ok: false; readonly why: PlanFailure['why'] };

/** Where the stage before ended, and all stages up to that one. */
type BeforeIt = { readonly to: Reached; readonly stages: readonly StageAsked[] };

function stage(asked: PlanAsked, to: Reached, before: BeforeIt | undefined): Stage {
  const { base, hydroxide: toPh } = to.needed;
  const stated = asked.purity(base);
  const hydroxide = before ? fromStageBefore(asked.load, to, before) : toPh;
  if ((before && to.pH <= before.to.pH) || hydroxide.high.lte(0))
    return { ok: false, why: { code: 'nothing-left' } };
  const needed = asSold(base, hydroxide, overTheModel(base), stated);
  const gas = carbonDioxide({ base, hydroxide, mass: needed, leaves: [], openIn: [] });
  if (gas && !asked.headspace?.low.gt(0)) return { ok: false, why: { code: 'headspace-open' } };
  const byHeat = portionByHeat(asked, base, stated);
  const byFoam =
    gas && asked.headspace ? portionByFoam(gas, hydroxide, base, asked.headspace, stated) : undefined;
  const largest = weighable(Decimal.min(byHeat.low, byFoam?.low ?? byHeat.low));
  const portions = cut(largest, needed);
  if (!portions)
    return {
      ok: false,
      why: { code: 'too-many-portions', count: needed.high.div(largest).ceil().toNumber() },
    };
  const curve = doseCurve(asked.load, base, {
    stated,
    upTo: needed.high.toNumber(),
    after: before?.stages,
  });
  return {
    ok: true,
    value: {
      base,
      pH: to.pH,
      needed,
      hydroxide,
      byHeat,
      ...(byFoam ? { byFoam } : {}),
      ...(curve.ok ? { curve: curve.value } : {}),
      portions: curve.ok ? portions.map((p) => ({ ...p, ...expectedAt(curve.value, p.soFar) })) : portions,
      wait: ranged(`wait/${base}`, 'Wait before the reading', dosing.wait[base], 'min'),
      ...(gas ? { gas } : {}),
    },
  };
}

/** What a second stage takes: on from the first, and what carbonate that has stayed in the pot takes of it. */
function fromStageBefore(load: Load, to: Reached, { to: before, stages }: BeforeIt): Figure<'mol'> {
  return workedOut({
    sentence: `Base from the stage before on to pH ${to.pH}`,
    unit: 'mol',
    formula: plus(
      minus(to.needed.hydroxide, before.needed.hydroxide),
      carbonateLeft(load, to, stages, before),
    ),
    note: 'What the stage before gave, grit not counted.',
  });
}

function carbonateLeft(
  load: Load,
  to: Reached,
  stages: readonly StageAsked[],
  before: Reached,
): Figure<'mol'> {
  const pot = treatedPot(load, to.needed.base);
  const after = amountsAfter(load, stages, likely);
  const dose = pot && after.found === 'amounts' ? doseTo(pot, after.amounts, to.pH) : undefined;
  const value = dose?.found === 'dose' ? Math.max(0, dose.base - (to.dose - before.dose)) : 0;
  const stage = { base: before.needed.base, pH: before.pH };
  return forCarbonate(stage, 'For carbonate that the stage before leaves', value);
}

/** Base that warms the liquor by the rise allowed: rise × mass × heat capacity × g/mol ÷ heat of a mole. */
function portionByHeat(
  { load, rise }: PlanAsked,
  base: BaseId,
  stated: StatedPurity | undefined,
): Figure<'g'> {
  const mass = workedOut({
    sentence: 'Mass of the liquor',
    unit: 'kg',
    formula: times(load.volume, densityOf(load)),
  });
  const capacity = ranged('heat-capacity', 'Heat capacity of the liquor', liquor.heatCapacity, 'kJ/(kg·K)');
  const heat = heatPerAcid(base);
  // A base that cools the liquor is held down by foam alone: it is counted as if it warmed.
  const each = heat.value.isNegative() ? times(-1, heat) : heat;
  return workedOut({
    sentence: 'Largest portion for the rise allowed',
    unit: 'g',
    formula: over(times(rise, mass, capacity, perHydroxide(base, stated)), each),
    note: 'As if all of it met acid and no heat were lost.',
  });
}

/** Base whose carbon dioxide fills the free space once, if all of it came at once. */
function portionByFoam(
  gas: Figure<'L'>,
  hydroxide: Figure<'mol'>,
  base: BaseId,
  headspace: Figure<'L'>,
  stated: StatedPurity | undefined,
): Figure<'g'> {
  const each = workedOut({
    sentence: 'Carbon dioxide from one mole of base',
    unit: 'L/mol',
    formula: over(gas, hydroxide),
  });
  return workedOut({
    sentence: 'Largest portion for the free space',
    unit: 'g',
    formula: over(times(headspace, perHydroxide(base, stated)), each),
    note: 'The gas of one portion, all at once, must find room over the liquor.',
  });
}

/** Undefined where it would be more portions than anybody weighs. */
function cut(largest: Decimal, needed: Figure<'g'>): Portion[] | undefined {
  if (largest.lte(0)) return undefined;
  const low = Decimal.max(0, needed.low);
  const full = low.div(largest).ceil().toNumber();
  const last = Decimal.min(largest, weighableUp(needed.high.minus(low).div(lastParts)));
  if (full > mostPortions) return undefined;
  const portions: Portion[] = [];
  let soFar = new Decimal(0);
  const add = (grams: Decimal, kind: Portion['kind']): void => {
    soFar = soFar.plus(grams);
    portions.push({ grams, soFar, kind });
  };
  // All alike, and what rounding left over at the end.
  const each = full === 0 ? low : weighable(low.div(full));
  while (each.gt(0) && soFar.plus(each).lte(low)) add(each, 'full');
  const rest = weighable(low.minus(soFar));
  if (rest.gt(each.div(4))) add(rest, 'full');
  while (soFar.lt(needed.high) && last.gt(0) && portions.length < mostPortions) {
    add(last, 'last');
  }
  return soFar.lt(needed.high) ? undefined : portions;
}

const weighableUp = (grams: Decimal): Decimal => grams.toSignificantDigits(2, Decimal.ROUND_UP);

function expectedAt(
  { points, soonest, latest }: DoseCurve,
  soFar: Decimal,
): { readonly expected?: Expected } {
  const expected = expectedOn({ likely: points, soonest, latest }, soFar.toNumber());
  return expected ? { expected } : {};
}
