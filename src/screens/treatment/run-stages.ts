/** The stages of a treatment as they stand in the form before it begins. */
import * as z from 'zod/mini';
import { Agent, type TreatmentStage } from '../../ledger/entries/treatments';
import { type FieldRead, readTyped, Typed, typed } from '../form';
import type { Shell } from '../shell';
import { emptyPlan, PlanDraft, planDraftName, stagesOf, TreatmentDraft, treatmentDraftName } from './draft';
import { runWords as w } from './run-words';

const StageDraft = z.object({ agent: Agent, target: Typed });
export type StageDraft = z.infer<typeof StageDraft>;
export const BeginDraft = z.object({
  stages: z.array(StageDraft).check(z.minLength(1), z.maxLength(10)),
  note: z._default(z.string(), ''),
  when: z._default(z.string(), ''),
});
export type BeginDraft = z.infer<typeof BeginDraft>;

export const beginDraftName = (containerId: string): string => `begin-${containerId}`;

export const emptyStage = (agent: Agent = 'hydrated-lime'): StageDraft => ({ agent, target: typed('1') });

/** Where the plan goes by the pH that is proposed, nobody chose one yet: it is asked for here. */
const notChosen = Number.NaN;

/** The stages chosen on the pages of the plan; null where nobody chose. */
export function stagesPlanned({ draft }: Shell, containerId: string): readonly StageDraft[] | null {
  const chosen = draft.read(treatmentDraftName(containerId), TreatmentDraft);
  if (!chosen) return null;
  const plan = draft.read(planDraftName(containerId), PlanDraft) ?? emptyPlan();
  return stagesOf(chosen, plan, notChosen).map(({ base, pH }) => ({
    agent: base,
    target: { ...typed('1'), typed: Number.isNaN(pH) ? '' : `${pH}` },
  }));
}

export const emptyBegin = (shell: Shell, containerId: string): BeginDraft => ({
  stages: [...(stagesPlanned(shell, containerId) ?? [emptyStage()])],
  note: '',
  when: '',
});

const between = (ph: number): boolean => ph >= 2 && ph <= 12.5;

/** The pH of a stage as it reads; a stage goes higher than the one before it, and iron has none. */
export function readTarget(stages: readonly StageDraft[], index: number): FieldRead<'1'> {
  const stage = stages[index];
  if (!stage || stage.agent === 'iron') return { state: 'empty' };
  const read = readTyped<'1'>(stage.target);
  if (read.state !== 'written') return read;
  const ph = Number(read.written.value);
  if (!between(ph)) return { state: 'wrong', fault: w.targetFault };
  const before = stages.slice(0, index).findLast(({ agent }) => agent !== 'iron');
  const last = before ? readTyped<'1'>(before.target) : undefined;
  return last?.state === 'written' && Number(last.written.value) >= ph
    ? { state: 'wrong', fault: w.targetLower }
    : read;
}

/** What is written of them; null where a pH is missing or wrong. */
export function stagesRead(
  stages: readonly StageDraft[],
): { readonly stages: TreatmentStage[]; readonly targetPh?: { value: string; unit: '1' } } | null {
  const made: TreatmentStage[] = [];
  for (const [i, { agent }] of stages.entries()) {
    const target = readTarget(stages, i);
    if (agent === 'iron') made.push({ agent });
    else if (target.state === 'written') made.push({ agent, targetPh: target.written });
    else return null;
  }
  const targetPh = made.at(-1)?.targetPh;
  return { stages: made, ...(targetPh ? { targetPh } : {}) };
}
