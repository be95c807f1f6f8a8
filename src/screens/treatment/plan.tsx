/** The plan of a treatment: stages, portions, waits, room. It writes nothing. */
import { useMemo } from 'preact/hooks';
import { treatmentRuleFault } from '../../ledger/treatment';
import { planFor } from '../../ledger/treatment-plan';
import { Button } from '../../ui/button';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { TreatmentRule } from '../containers/base-rows';
import { useForm } from '../form';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { words } from '../words';
import { AtLeast } from './comes-of';
import {
  emptyPlan,
  emptyTreatment,
  PlanDraft,
  planChoice,
  planDraftName,
  readPlan,
  stagesOf,
  TreatmentDraft,
  treatmentDraftName,
} from './draft';
import { PlanFields, type PlanFieldsProps } from './plan-fields';
import { planFault, wholeRows } from './plan-rows';
import { PlanFigureRows, StagePart } from './plan-stage';
import { proposal } from './target';
import { useBegin } from './use-begin';
import { useLater, useSettled } from './use-worked-out';
import { type Pot, withPot } from './with-pot';
import { treatmentWords as w } from './words';

/** The stages as they stand, or why there are none. */
function Outcome({ id, treatment, plan, proposed }: PlanFieldsProps) {
  const { state, sign } = useShell();
  const now = state.value;
  const choice = useSettled(JSON.stringify(planChoice(treatment.value, plan.value, proposed.pH)));
  const of = useMemo(() => ({ now, id, choice }), [now, id, choice]);
  const planned = useLater(() => planFor(now, id, JSON.parse(choice)), of);
  if (!planned)
    return (
      <Part>
        <p role="status">{w.coming}</p>
      </Part>
    );
  if (!planned.ok) {
    const stages = stagesOf(treatment.value, plan.value, proposed.pH);
    const base = stages[planned.failure.stage]?.base ?? treatment.value.base;
    return <Notice mark="wrong">{planFault(planned.failure, base, sign.value)}</Notice>;
  }
  const { stages, overfull, openIn } = planned.value;
  return (
    <>
      {openIn.length > 0 && <AtLeast openIn={openIn} />}
      {stages.map((stage, i) => (
        <StagePart key={stage.base} stage={stage} number={i + 1} containerId={id} drawn={stages.length > 1} />
      ))}
      <Part rule title={w.whole} width="edge">
        <PlanFigureRows rows={wholeRows(planned.value)} containerId={id} />
        {overfull && <Notice mark="wrong">{w.overfull}</Notice>}
      </Part>
    </>
  );
}

function Plan({ id, code }: Pot) {
  const { state } = useShell();
  const treatment = useForm(treatmentDraftName(id), TreatmentDraft, emptyTreatment);
  const plan = useForm(planDraftName(id), PlanDraft, emptyPlan);
  const now = state.value;
  const { reference } = treatment.value;
  const proposed = useLater(
    () => proposal(now, id, reference),
    useMemo(() => ({ now, id, reference }), [now, id, reference]),
  );
  const reads = readPlan(treatment.value, plan.value);
  const begin = useBegin(id, treatment, proposed);
  return (
    <Frame
      title={w.planTitle(code)}
      ways={[{ label: words.back, href: `#/containers/${id}/treatment` }]}
      actions={
        treatmentRuleFault(now) === null ? (
          <Button look="primary" second={w.beginSecond} onTap={begin}>
            {w.begin}
          </Button>
        ) : undefined
      }
    >
      <TreatmentRule state={state.value} />
      {proposed ? (
        <>
          <PlanFields {...{ id, code, treatment, plan, reads, proposed }} />
          <Outcome {...{ id, code, treatment, plan, reads, proposed }} />
        </>
      ) : (
        <Part>
          <p role="status">{w.coming}</p>
        </Part>
      )}
      <Part rule>
        {w.planCautions.map((line) => (
          <p key={line}>{line}</p>
        ))}
        <p>{words.caution}</p>
      </Part>
    </Frame>
  );
}

export const PlanScreen = withPot(Plan);
