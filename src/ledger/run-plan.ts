/**
 * The plan that a run rests on, worked out once: it stays the same however many portions and readings come after it. Needs
 * the equilibrium model.
 */
import type { StatedPurity } from '../chemistry/base-needed';
import { volumeRead } from '../chemistry/liquor';
import type { Load } from '../chemistry/load';
import { planOf } from '../chemistry/treatment/plan';
import { type AfterStages, potAfterStages, type StageDone } from '../chemistry/treatment/pot-after-stages';
import { seenIn } from '../chemistry/treatment/pot-readings';
import type { StageAsked } from '../chemistry/treatment/stage-before';
import type { Figure } from '../quantities/figure';
import type { Written } from '../quantities/written';
import type { BaseId } from '../reference/tables';
import { figuresBefore } from './container-figures';
import { freeSpace } from './free-space';
import { purityStated } from './purity-stated';
import type { State, TreatmentState } from './state';
import { allowedRise } from './treatment-run';

/** Each base as pure as the last dose of it said, or as it was described. */
const purityIn =
  (state: State, treatment: TreatmentState) =>
  (base: BaseId): StatedPurity | undefined => {
    const dose = treatment.doses.findLast(({ body }) => body.agent === base && body.purity !== undefined);
    return dose?.body.purity
      ? { purity: dose.body.purity, origin: `entry/${dose.entryId}/purity` }
      : purityStated(state, base);
  };

/** What was chosen on the pages of the plan, where it differs from what is usual. */
export type RunChoice = {
  readonly rise?: Written<'K'>;
  readonly headspace?: Written<'L' | 'mL' | 'US gal'>;
};

/** Free space over the liquor as stated, or as it was before anything went in: the plan stays as it is while portions do. */
const headspaceOf = (
  state: State,
  { body }: TreatmentState,
  stated: RunChoice['headspace'],
): Figure<'L'> | undefined =>
  stated
    ? volumeRead(stated, 'plan/headspace', 'Free space over the liquor')
    : freeSpace(state, body.containerId, figuresBefore(state, body.treatmentId));

type Plan = {
  readonly planned: ReturnType<typeof planOf>;
  /** What is known of the pot before the first reading of the stage. */
  readonly before: AfterStages;
};

let last: { readonly key: string; readonly plan: Plan } | undefined;

const figureKey = (figure: Figure | undefined): string =>
  figure ? `${figure.value} ${figure.low} ${figure.high}` : '';

/** All that the plan rests on: as long as it is the same, the plan is, however many readings came since. */
const planKey = (
  { volume, freeAcid, metals, density }: Load,
  stages: unknown,
  room: readonly (Figure | undefined)[],
): string =>
  JSON.stringify([
    [volume, freeAcid.figure, density, ...room].map(figureKey),
    [...metals].map(([metal, { figure, named, openIn }]) => [metal, figureKey(figure), named, openIn]),
    stages,
  ]);

function planOnce(key: string, make: () => Plan): Plan {
  const plan = last?.key === key ? last.plan : make();
  last = { key, plan };
  return plan;
}

type Asked = {
  readonly load: Load;
  /** Up to the one that runs. */
  readonly stages: readonly StageAsked[];
  /** Of those that are over, what went in and was read, in the same order. */
  readonly done: readonly StageDone[];
  readonly choice: RunChoice;
};

/** Undefined where no stage is asked for. */
export function planOfRun(
  state: State,
  treatment: TreatmentState,
  { load, stages, done, choice }: Asked,
): Plan | undefined {
  const now = stages.at(-1);
  if (!now) return undefined;
  const purity = purityIn(state, treatment);
  const headspace = headspaceOf(state, treatment, choice.headspace);
  const rise = allowedRise(choice.rise);
  const key = planKey(
    load,
    [
      stages.map((one) => [one, purity(one.base)]),
      done.map(({ dose, readings }) => [figureKey(dose), readings.map(seenIn)]),
    ],
    [rise, headspace],
  );
  return planOnce(key, () => ({
    planned: planOf({ load, stages, purity, rise, ...(headspace ? { headspace } : {}) }),
    before: potAfterStages(
      { load, ...now, stated: purity(now.base) },
      done.map((stage) => ({ ...stage, stated: purity(stage.base) })),
    ),
  }));
}
