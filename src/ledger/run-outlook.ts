/**
 * What is left to add to a pot, and the next portion: the plan on what the container held before the first dose, against
 * what went in and what was read since. Needs the equilibrium model, so only pages that show it may import it.
 */

import Decimal from 'decimal.js';
import type { StatedPurity } from '../chemistry/base-needed';
import { volumeRead } from '../chemistry/liquor';
import type { Load } from '../chemistry/load';
import { type DoseCurve, doseCurve, phAt } from '../chemistry/treatment/dose-curve';
import {
  type Expected,
  type PlanFailure,
  type PlannedStage,
  type Portion,
  planOf,
} from '../chemistry/treatment/plan';
import { minus, notBelowNothing } from '../quantities/expression';
import { exact, type Figure, given, workedOut } from '../quantities/figure';
import { inUnit, type Quantity } from '../quantities/quantity';
import type { Written } from '../quantities/written';
import type { BaseId } from '../reference/tables';
import { figuresBefore, type NoBase } from './container-figures';
import { capacityOf, takesUp } from './fill';
import type { State, TreatmentState } from './state';
import { allowedRise, dosedFigure, type RunningStage, stageOf } from './treatment-run';

/** Why nothing is worked out: the pot is then led by its pH alone. */
export type NoOutlook =
  | { readonly code: 'no-base'; readonly why: NoBase }
  | { readonly code: 'nothing-known' }
  | { readonly code: 'iron-in' | 'other-agent-in' | 'no-target' }
  | { readonly code: 'no-plan'; readonly why: PlanFailure['why'] };

/** What speaks against the plan: no figure of what is left is shown beside it. */
export type Contradiction = {
  /** More went in than the plan holds possible, and the target was not read. */
  readonly code: 'more-in-than-needed';
  readonly most: Figure<'g'>;
};

export type NextPortion = Pick<Portion, 'grams' | 'kind'> & { readonly expected?: Expected };

export type Outlook = {
  readonly stage: RunningStage & { readonly agent: BaseId };
  readonly planned: PlannedStage;
  /** pH against grams of the stage's base; absent in a stage that does not begin with the liquor as it was. */
  readonly curve?: DoseCurve;
  readonly contradiction: Contradiction | null;
  /** Absent where readings contradict the plan. */
  readonly left?: Figure<'g'>;
  /** Null where nothing more is planned, or readings contradict the plan. */
  readonly next: NextPortion | null;
};

export type OutlookFound =
  | { readonly ok: true; readonly value: Outlook }
  | { readonly ok: false; readonly why: NoOutlook };

const none = (why: NoOutlook): OutlookFound => ({ ok: false, why });

const isBase = (agent: RunningStage['agent']): agent is BaseId => agent !== 'iron';

/** Each base as pure as the last dose of it said, or as it was described. */
const purityIn =
  (state: State, treatment: TreatmentState) =>
  (base: BaseId): StatedPurity | undefined => {
    const dose = treatment.doses.findLast(({ body }) => body.agent === base && body.purity !== undefined);
    if (dose?.body.purity) return { purity: dose.body.purity, origin: `entry/${dose.entryId}/purity` };
    const purity = state.bases.get(base)?.body.purity;
    return purity && { purity, origin: `purity/${base}` };
  };

/** What was chosen on the pages of the plan, where it differs from what is usual. */
export type RunChoice = {
  readonly rise?: Written<'K'>;
  readonly headspace?: Written<'L' | 'mL' | 'US gal'>;
};

/** Free space over the liquor, as stated or as the container has it left. */
function headspaceOf(
  state: State,
  treatment: TreatmentState,
  stated: RunChoice['headspace'],
): Figure<'L'> | undefined {
  if (stated) return volumeRead(stated, 'plan/headspace', 'Free space over the liquor');
  const container = state.containers.get(treatment.body.containerId);
  if (!container) return undefined;
  const free = capacityOf(container).minus(takesUp(container.holds));
  if (free.lte(0)) return undefined;
  return given({
    origin: `container/${treatment.body.containerId}/headspace`,
    sentence: 'Free space over the liquor',
    value: free,
    unit: 'L',
    how: 'stated',
    spread: exact,
  });
}

/** Sizes of the plan, wherever the pot stands: the first portion of which the middle is not in yet. */
function portionAt(portions: readonly Portion[], grams: Quantity<'g'>): Portion | null {
  return portions.find(({ soFar, grams: own }) => soFar.minus(own.div(2)).gte(grams)) ?? null;
}

function expectedOn(curve: DoseCurve | undefined, grams: number): { readonly expected?: Expected } {
  const all = [curve?.latest, curve?.points, curve?.soonest].map((line) => line && phAt(line, grams));
  const [low, likely, high] = all;
  if (low === undefined || likely === undefined || high === undefined) return {};
  return { expected: { low: Math.min(low, likely, high), likely, high: Math.max(low, likely, high) } };
}

function isReached({ targetPh, points }: RunningStage): boolean {
  const last = points.at(-1)?.reading.body.ph.value.value;
  return targetPh !== null && last !== undefined && Number(last) >= Number(targetPh);
}

function contradicted(stage: RunningStage, { needed }: PlannedStage): Contradiction | null {
  const over = stage.grams.gt(needed.high) && !isReached(stage) && stage.points.length > 0;
  return over ? { code: 'more-in-than-needed', most: needed } : null;
}

const leftOf = (stage: RunningStage, { needed }: PlannedStage): Figure<'g'> =>
  stage.doses.length === 0
    ? needed
    : workedOut({
        sentence: 'Left to add in this stage',
        unit: 'g',
        formula: notBelowNothing(minus(needed, dosedFigure(stage))),
      });

type Asked = {
  readonly load: Load;
  readonly stage: Outlook['stage'];
  readonly purity: ReturnType<typeof purityIn>;
};

function outlookFor({ load, stage, purity }: Asked, planned: PlannedStage): Outlook {
  const drawn =
    stage.index === 0
      ? doseCurve(
          load,
          stage.agent,
          purity(stage.agent),
          Math.max(planned.needed.high.toNumber(), Number(stage.grams)),
        )
      : undefined;
  const curve = drawn?.ok ? drawn.value : undefined;
  const contradiction = contradicted(stage, planned);
  const portion = contradiction || isReached(stage) ? null : portionAt(planned.portions, stage.grams);
  return {
    stage,
    planned,
    ...(curve ? { curve } : {}),
    contradiction,
    ...(contradiction ? {} : { left: leftOf(stage, planned) }),
    next: portion && {
      grams: portion.grams,
      kind: portion.kind,
      ...expectedOn(curve, stage.grams.plus(portion.grams).toNumber()),
    },
  };
}

function workedOutFor(state: State, treatment: TreatmentState, choice: RunChoice): OutlookFound {
  const stage = stageOf(treatment);
  const { agent, targetPh, foreign } = stage;
  if (!isBase(agent) || treatment.doses.some(({ body }) => body.agent === 'iron'))
    return none({ code: 'iron-in' });
  if (foreign) return none({ code: 'other-agent-in' });
  if (targetPh === null) return none({ code: 'no-target' });
  const { load, noBase } = figuresBefore(state, treatment.body.treatmentId);
  if (noBase !== null) return none({ code: 'no-base', why: noBase });
  if (!load) return none({ code: 'nothing-known' });
  const purity = purityIn(state, treatment);
  const headspace = headspaceOf(state, treatment, choice.headspace);
  const asked = treatment.body.stages
    .slice(0, stage.index + 1)
    .flatMap(({ agent: base, targetPh: pH }, i) => {
      const wanted = i === stage.index ? targetPh : pH?.value;
      return isBase(base) && wanted !== undefined ? [{ base, pH: Number(wanted) }] : [];
    });
  const plan = planOf({
    load,
    stages: asked,
    purity,
    rise: allowedRise(choice.rise),
    ...(headspace ? { headspace } : {}),
  });
  if (!plan.ok) return none({ code: 'no-plan', why: plan.failure.why });
  const planned = plan.stages.at(-1);
  if (!planned) return none({ code: 'no-target' });
  return { ok: true, value: outlookFor({ load, stage: { ...stage, agent }, purity }, planned) };
}

const known = new WeakMap<State, Map<string, OutlookFound>>();

const keyOf = (treatment: TreatmentState, choice: RunChoice): string =>
  JSON.stringify([treatment.body.treatmentId, choice.rise, choice.headspace]);

/** Worked out once for a state: it takes the model a moment. */
export function outlookOf(state: State, treatment: TreatmentState, choice: RunChoice = {}): OutlookFound {
  const ofState = known.get(state) ?? new Map<string, OutlookFound>();
  known.set(state, ofState);
  const key = keyOf(treatment, choice);
  const found = ofState.get(key) ?? workedOutFor(state, treatment, choice);
  ofState.set(key, found);
  return found;
}

/** Whether `outlookOf` would answer at once. */
export const outlookReady = (state: State, treatment: TreatmentState, choice: RunChoice = {}): boolean =>
  known.get(state)?.has(keyOf(treatment, choice)) ?? false;

/** The largest portion of the plan where `mass` is more than that; null where it is not. */
export function mostAtOnce({ planned }: Outlook, mass: Written<'g' | 'kg' | 'lb'>): Decimal | null {
  const { byHeat, byFoam } = planned;
  const most = Decimal.min(byHeat.low, byFoam?.low ?? byHeat.low);
  return inUnit(mass, 'g').gt(most) ? most : null;
}
