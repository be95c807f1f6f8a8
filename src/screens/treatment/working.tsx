/** The working of a figure of a treatment, from what is chosen for it. */

import { baseForPh, benchFor, comesOf, whichPhFor } from '../../ledger/before-treatment';
import { codeOfContainer } from '../../ledger/put-away';
import type { State } from '../../ledger/state';
import { planFor } from '../../ledger/treatment-plan';
import type { Figure } from '../../quantities/figure';
import { type BaseId, bases } from '../../reference/tables';
import { unbroken } from '../../ui/figure-value';
import { useShell } from '../shell';
import { WorkingPage } from '../working';
import { comesRows } from './choice';
import {
  emptyPlan,
  emptyTreatment,
  PlanDraft,
  phOr,
  planChoice,
  planDraftName,
  readPh,
  TreatmentDraft,
  treatmentDraftName,
} from './draft';
import { planFigures } from './plan-rows';
import { proposal } from './target';
import { whichFigures } from './which-ph-rows';
import { treatmentWords as w } from './words';

const isBase = (key: string): key is BaseId => key in bases;

type Kept = { readonly treatment: TreatmentDraft; readonly plan: PlanDraft };

/** The figure of a name: of the page of the treatment, else of its plan. */
function figureOf(state: State, id: string, key: string, { treatment, plan }: Kept): Figure | undefined {
  const proposed = proposal(state, id, treatment.reference).pH;
  const pH = phOr(readPh(treatment.target), proposed);
  if (isBase(key)) {
    const to = baseForPh(state, id, key, pH);
    return to?.ok ? to.needed.mass : undefined;
  }
  if (key === 'bench') return benchFor(state, id, treatment.base)?.estimate.fromTest;
  const comes = comesOf(state, id, treatment.base, pH);
  const row = comes && comesRows(comes).find(([name]) => name === key);
  if (row) return row[2];
  const which = whichPhFor(state, id, treatment.base, treatment.reference);
  const end = which && whichFigures(which).get(key);
  if (end) return end;
  const planned = planFor(state, id, planChoice(treatment, plan, proposed));
  return planned?.ok ? planFigures(planned.value).get(key) : undefined;
}

/** The page that a figure stands on. */
function pageOf(key: string): string {
  if (key.startsWith('stage-') || ['time', 'water', 'solids'].includes(key)) return '/plan';
  return /-(least|most)$/.test(key) ? '/ph' : '';
}

export function TreatmentWorking({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { draft, state } = useShell();
  const [id, key] = [at.id ?? '', at.key ?? ''];
  const code = codeOfContainer(state.value, id) ?? '';
  const kept = {
    treatment: draft.read(treatmentDraftName(id), TreatmentDraft) ?? emptyTreatment(),
    plan: draft.read(planDraftName(id), PlanDraft) ?? emptyPlan(),
  };
  const here = `containers/${id}/treatment`;
  return (
    <WorkingPage
      root={figureOf(state.value, id, key, kept)}
      steps={at.steps ?? ''}
      here={`${here}/working/${key}`}
      subject={w.with(unbroken(code), bases[kept.treatment.base].name.toLowerCase())}
      back={`${here}${pageOf(key)}`}
    />
  );
}
