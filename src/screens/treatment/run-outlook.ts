/** What is left to add, worked out once the page stands: the model takes a moment, the buttons need not wait for it. */
import { useEffect, useState } from 'preact/hooks';
import { type OutlookFound, outlookOf, outlookReady } from '../../ledger/run-outlook';
import type { RunChoice } from '../../ledger/run-plan';
import type { TreatmentState } from '../../ledger/state';
import { type Shell, useShell } from '../shell';
import { emptyTreatment, PlanDraft, planDraftName, readPlan } from './draft';

/** What was chosen on the pages of the plan of this container. */
export function runChoice({ draft }: Pick<Shell, 'draft'>, containerId: string): RunChoice {
  const plan = draft.read(planDraftName(containerId), PlanDraft);
  if (!plan) return {};
  const { rise, headspace } = readPlan(emptyTreatment(), plan);
  return {
    ...(rise.state === 'written' ? { rise: rise.written } : {}),
    ...(headspace.state === 'written' ? { headspace: headspace.written } : {}),
  };
}

/** Null while it is being worked out. */
export function useOutlook(treatment: TreatmentState): OutlookFound | null {
  const shell = useShell();
  const state = shell.state.value;
  const choice = runChoice(shell, treatment.body.containerId);
  const [, drawAgain] = useState(0);
  const ready = outlookReady(state, treatment, choice);
  useEffect(() => {
    if (ready) return;
    const timer = setTimeout(() => {
      outlookOf(state, treatment, choice);
      drawAgain((n) => n + 1);
    });
    return () => clearTimeout(timer);
  }, [ready, state, treatment]);
  return ready ? outlookOf(state, treatment, choice) : null;
}
