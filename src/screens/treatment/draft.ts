/** What is chosen for a container's treatment, kept as drafts: they survive a reload, and the run begins with them. */
import * as z from 'zod/mini';
import { usualReference } from '../../chemistry/treatment/limits';
import type { StageAsked } from '../../chemistry/treatment/stage-before';
import type { PlanChoice } from '../../ledger/treatment-plan';
import { type ReferenceId, referenceIds } from '../../reference/residual-tables';
import { type BaseId, baseIds } from '../../reference/tables';
import { type FieldRead, readTyped, Typed, typed } from '../form';
import { treatmentWords as w } from './words';

const Base = z.enum(baseIds as [BaseId, ...BaseId[]]);

const Reference = z.enum(referenceIds as [ReferenceId, ...ReferenceId[]]);

/** `target` empty: the pH that the page proposes. `reference`: held against where there are no local limits. */
export const TreatmentDraft = z.object({
  base: Base,
  target: Typed,
  reference: z._default(Reference, usualReference),
});
export type TreatmentDraft = z.infer<typeof TreatmentDraft>;

export const treatmentDraftName = (containerId: string): string => `treatment-${containerId}`;
export const emptyTreatment = (): TreatmentDraft => ({
  base: 'hydrated-lime',
  target: typed('1'),
  reference: usualReference,
});

/** Ends between which the model is asked: below there is nothing to bring down, above only caustic soda goes. */
const [lowestPh, highestPh] = [2, 12.5];

/** A pH as a stage may end at. */
export function readPh(field: Typed): FieldRead<'1'> {
  const read = readTyped<'1'>(field);
  if (read.state !== 'written') return read;
  const pH = Number(read.written.value);
  return pH < lowestPh || pH > highestPh ? { state: 'wrong', fault: w.phBetween } : read;
}

/** The pH typed; what is proposed where nothing is, or nothing that can be used. */
export const phOr = (read: FieldRead<'1'>, proposed: number): number =>
  read.state === 'written' ? Number(read.written.value) : proposed;

/** `headspace` and `rise` empty: what the container has left, and what is usual. */
export const PlanDraft = z.object({
  way: z.enum(['one', 'limestone-first']),
  limestoneTo: Typed,
  rise: Typed,
  headspace: Typed,
});
export type PlanDraft = z.infer<typeof PlanDraft>;

export const planDraftName = (containerId: string): string => `treatment-plan-${containerId}`;
export const emptyPlan = (): PlanDraft => ({
  way: 'one',
  limestoneTo: typed('1'),
  rise: typed('K'),
  headspace: typed('L'),
});

/** Limestone is taken about so far: above, it hardly goes on. */
export const limestonePh = 5;

export type PlanReads = {
  readonly target: FieldRead<'1'>;
  readonly limestoneTo: FieldRead<'1'>;
  readonly rise: FieldRead<'K'>;
  readonly headspace: FieldRead<'L' | 'mL' | 'US gal'>;
};

export const volumeUnits = ['L', 'mL', 'US gal'] as const;
/** More than this and water boils on the way. */
const mostRise = 60;

export const readPlan = (treatment: TreatmentDraft, plan: PlanDraft): PlanReads => ({
  target: readPh(treatment.target),
  limestoneTo: readPh(plan.limestoneTo),
  rise: readTyped(plan.rise, { aboveZero: true, most: mostRise }),
  headspace: readTyped(plan.headspace, { aboveZero: true, most: 100_000 }),
});

/** The stages of the plan, in order. @param proposed pH where none is typed */
export function stagesOf(
  treatment: TreatmentDraft,
  plan: PlanDraft,
  proposed: number,
): readonly StageAsked[] {
  const reads = readPlan(treatment, plan);
  const last = { base: treatment.base, pH: phOr(reads.target, proposed) };
  if (plan.way === 'one') return [last];
  const base = treatment.base === 'limestone' ? afterLimestone : treatment.base;
  return [
    { base: 'limestone', pH: phOr(reads.limestoneTo, limestonePh) },
    { ...last, base },
  ];
}

/** Goes on where limestone ends. */
const afterLimestone: BaseId = 'hydrated-lime';

/** What the person chose, as the ledger plans it. */
export function planChoice(treatment: TreatmentDraft, plan: PlanDraft, proposed: number): PlanChoice {
  const { rise, headspace } = readPlan(treatment, plan);
  return {
    stages: stagesOf(treatment, plan, proposed),
    ...(rise.state === 'written' ? { rise: rise.written } : {}),
    ...(headspace.state === 'written' ? { headspace: headspace.written } : {}),
  };
}
