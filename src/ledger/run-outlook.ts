/**
 * What is left to add to a pot, and the next portion: what the container held before the first dose, refitted to what went
 * in and was read since. Needs the equilibrium model, so only pages that show it may import it.
 */
import Decimal from 'decimal.js';
import { type Expected, expectedOn } from '../chemistry/treatment/expected-ph';
import type { PlanFailure, PlannedStage } from '../chemistry/treatment/plan';
import type { StageDone } from '../chemistry/treatment/pot-after-stages';
import type { Contradiction as ReadAgainst } from '../chemistry/treatment/pot-contradictions';
import type { PotBefore } from '../chemistry/treatment/pot-knowledge';
import { type Learnt, type LearntCurve, learnt } from '../chemistry/treatment/pot-learning';
import type { PotReading } from '../chemistry/treatment/pot-readings';
import type { StageAsked } from '../chemistry/treatment/stage-before';
import { minus, notBelowNothing } from '../quantities/expression';
import { type Figure, workedOut } from '../quantities/figure';
import { inUnit } from '../quantities/quantity';
import type { Written } from '../quantities/written';
import type { BaseId } from '../reference/tables';
import { figuresBefore, type NoBase } from './container-figures';
import { nextPortion, type PortionSize } from './next-portion';
import { planOfRun, type RunChoice } from './run-plan';
import type { State, TreatmentState } from './state';
import { dosedFigure, type ReadPoint, type RunningStage, stageOf, stagesSoFar } from './treatment-run';

/** Why nothing is worked out: the pot is then led by its pH alone. */
export type NoOutlook =
  | { readonly code: 'no-base'; readonly why: NoBase }
  | { readonly code: 'nothing-known' }
  /** `contents-changed`: waste was put in or taken out since the first dose. */
  | { readonly code: 'iron-in' | 'other-agent-in' | 'no-target' | 'contents-changed' }
  | { readonly code: 'no-plan'; readonly why: PlanFailure['why'] };

/** What speaks against the plan: no figure of what is left is shown beside it. */
export type Contradiction = ReadAgainst & { readonly point: ReadPoint | undefined };

export type NextPortion = PortionSize & { readonly expected?: Expected };

export type Outlook = {
  readonly stage: RunningStage & { readonly agent: BaseId };
  readonly planned: PlannedStage;
  /** pH against grams of the stage's base; absent where readings of a stage before contradict the plan. */
  readonly curve?: LearntCurve;
  /** In the order in which they showed. */
  readonly contradictions: readonly Contradiction[];
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

/** As the fit takes it: a reading that came before the wait was over tells too low a pH, and is left out. */
const readingsIn = (points: readonly ReadPoint[]): readonly PotReading[] =>
  points.map(({ reading: { entryId, body }, doses }) => ({
    origin: `entry/${entryId}`,
    dose: dosedFigure({ doses }),
    pH: body.ph.value,
    instrument: body.ph.instrument,
    temperature: body.temperature,
  }));

/** Undefined without a curve, and beyond its end. */
function expectedAfter(curve: LearntCurve | undefined, grams: number): Expected | undefined {
  if (!curve) return undefined;
  const [likely, soonest, latest] = [curve.line, curve.soonest, curve.latest].map((line) =>
    line.map(([x, pH]) => ({ grams: x, pH })),
  );
  return likely && soonest && latest && expectedOn({ likely, soonest, latest }, grams);
}

function isReached({ targetPh, points }: RunningStage): boolean {
  const last = points.at(-1)?.reading.body.ph.value.value;
  return targetPh !== null && last !== undefined && Number(last) >= Number(targetPh);
}

/** What readings of a stage before contradict stays against the plan of the stages after it. */
const against = (
  contradictions: readonly ReadAgainst[],
  points: readonly ReadPoint[],
): readonly Contradiction[] =>
  contradictions.map((one) => ({ ...one, point: 'reading' in one ? points[one.reading] : undefined }));

/** What went in since the last reading that counts is in the pot already. */
function byReadings(
  stage: RunningStage,
  found: Learnt,
  points: readonly ReadPoint[],
): Pick<Outlook, 'contradictions' | 'left'> {
  if (!found.agrees) return { contradictions: against(found.contradictions, points) };
  const read = points.at(-1)?.doses.length ?? 0;
  if (read === stage.doses.length) return { contradictions: [], left: found.remaining };
  const left = workedOut({
    sentence: 'Left to add, with what went in since the last reading',
    unit: 'g',
    formula: notBelowNothing(minus(found.total, dosedFigure(stage))),
  });
  return { contradictions: [], left };
}

function outlookFor(stage: Outlook['stage'], planned: PlannedStage, before: PotBefore): Outlook {
  const points = inTime(stage);
  const found = learnt(before, readingsIn(points));
  const { contradictions, left } = byReadings(stage, found, points);
  const size = left && !isReached(stage) ? nextPortion(left, mostOf(planned)) : null;
  const expected = size ? expectedAfter(found.curve, stage.grams.plus(size.grams).toNumber()) : undefined;
  return {
    stage,
    planned,
    curve: found.curve,
    contradictions,
    ...(left ? { left } : {}),
    next: size && { ...size, ...(expected ? { expected } : {}) },
  };
}

/** Readings that came after the wait was over. */
const inTime = ({ points }: RunningStage): readonly ReadPoint[] => points.filter(({ early }) => !early);

/** A sample is too small to count; whatever else was put in or taken out makes another pot of it. */
function contentsChanged(state: State, { doses, body }: TreatmentState): boolean {
  const [first] = doses;
  const movements = state.containers.get(body.containerId)?.movements ?? [];
  return movements.some(({ at, purpose }) => first && at > first.at && purpose !== 'sample');
}

/** Why nothing can be worked out, whatever the model says; null where it can. */
function whyNone(
  state: State,
  treatment: TreatmentState,
  { agent, foreign, targetPh }: RunningStage,
): NoOutlook | null {
  const { load, noBase } = figuresBefore(state, treatment.body.treatmentId);
  // Ammonia waste is the one thing that goes before all else.
  if (noBase === 'ammonia') return { code: 'no-base', why: noBase };
  if (!isBase(agent) || treatment.doses.some(({ body }) => body.agent === 'iron')) return { code: 'iron-in' };
  if (foreign) return { code: 'other-agent-in' };
  if (targetPh === null) return { code: 'no-target' };
  if (noBase !== null) return { code: 'no-base', why: noBase };
  if (contentsChanged(state, treatment)) return { code: 'contents-changed' };
  return load ? null : { code: 'nothing-known' };
}

type Aimed = RunningStage & { readonly agent: BaseId; readonly targetPh: string };

/** The stages up to the one that runs; one that was passed over without a dose is none. */
const aimed = (sofar: readonly RunningStage[]): readonly Aimed[] =>
  sofar.filter(
    (stage, i): stage is Aimed =>
      isBase(stage.agent) && stage.targetPh !== null && (stage.doses.length > 0 || i === sofar.length - 1),
  );

/** As the plan takes it. */
const askedOf = ({ agent, targetPh }: Aimed): StageAsked => ({ base: agent, pH: Number(targetPh) });

const doneOf = (stage: Aimed): StageDone => ({
  ...askedOf(stage),
  dose: dosedFigure(stage),
  readings: readingsIn(inTime(stage)),
});

function workedOutFor(state: State, treatment: TreatmentState, choice: RunChoice): OutlookFound {
  const stage = stageOf(treatment);
  const why = whyNone(state, treatment, stage);
  if (why) return none(why);
  const { load } = figuresBefore(state, treatment.body.treatmentId);
  const sofar = aimed(stagesSoFar(treatment));
  const running = sofar.at(-1);
  if (!load || !running) return none({ code: 'no-target' });
  const done = sofar.slice(0, -1);
  const plan = planOfRun(state, treatment, {
    load,
    stages: sofar.map(askedOf),
    done: done.map(doneOf),
    choice,
  });
  if (!plan) return none({ code: 'no-target' });
  const { planned, before } = plan;
  if (!planned.ok) return none({ code: 'no-plan', why: planned.failure.why });
  const now = planned.stages.at(-1);
  if (!now) return none({ code: 'no-target' });
  if (before.ok) return { ok: true, value: outlookFor(running, now, before.pot) };
  if (before.why.code !== 'stage-contradicted') return none({ code: 'no-plan', why: before.why });
  const wrong = done[before.why.stage];
  const contradictions = against(before.why.contradictions, wrong ? inTime(wrong) : []);
  return { ok: true, value: { stage: running, planned: now, contradictions, next: null } };
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

/** Largest portion, by its heat and its foam. */
const mostOf = ({ byHeat, byFoam }: PlannedStage): Decimal =>
  Decimal.min(byHeat.low, byFoam?.low ?? byHeat.low);

/** The largest portion of the plan where `mass` is more than that; null where it is not. */
export function mostAtOnce({ planned }: Outlook, mass: Written<'g' | 'kg' | 'lb'>): Decimal | null {
  const most = mostOf(planned);
  return inUnit(mass, 'g').gt(most) ? most : null;
}
