/** The plan of a treatment: stages, portions, waits, room. It writes nothing. */
import { useMemo } from 'preact/hooks';
import { freeSpace, planFor } from '../../ledger/treatment-plan';
import { printed } from '../../quantities/format';
import { dosing } from '../../reference/dosing-tables';
import { bases } from '../../reference/tables';
import { Choices } from '../../ui/choices';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { TreatmentRule } from '../containers/base-rows';
import { type Form, useForm } from '../form';
import { Frame } from '../frame';
import { NumberField } from '../number-field';
import { useShell } from '../shell';
import { words } from '../words';
import {
  emptyPlan,
  emptyTreatment,
  limestonePh,
  PlanDraft,
  type PlanReads,
  planChoice,
  planDraftName,
  readPlan,
  stagesOf,
  TreatmentDraft,
  treatmentDraftName,
  volumeUnits,
} from './draft';
import { planFault, wholeRows } from './plan-rows';
import { PlanFigureRows, StagePart } from './plan-stage';
import { aimText } from './pot-plot';
import { type Proposed, proposal, targetHint } from './target';
import { useLater, useSettled } from './use-worked-out';
import { type Pot, withPot } from './with-pot';
import { treatmentWords as w } from './words';

type Fields = Pot & {
  readonly proposed: Proposed;
  readonly treatment: Form<TreatmentDraft>;
  readonly plan: Form<PlanDraft>;
  readonly reads: PlanReads;
};

/** The ways to go: one base, or limestone as far as it goes. */
function Ways({ treatment, plan, proposed }: Fields) {
  const stages = stagesOf(treatment.value, { ...plan.value, way: 'limestone-first' }, proposed.pH);
  const lastBase = stages.at(-1)?.base;
  return (
    <Choices
      legend={w.way}
      value={plan.value.way}
      choices={[
        { value: 'one', label: w.ways.one(bases[treatment.value.base].name) },
        {
          value: 'limestone-first',
          label: w.ways['limestone-first'](bases[lastBase ?? 'hydrated-lime'].name.toLowerCase()),
        },
      ]}
      onChoose={(way) => plan.change({ way })}
    />
  );
}

/** Asked where carbon dioxide comes off. */
function Headspace({ id, plan, reads }: Fields) {
  const { state, sign } = useShell();
  const free = freeSpace(state.value, id);
  const text = free && printed(free, sign.value);
  return (
    <NumberField
      label={w.headspace}
      field={plan.value.headspace}
      units={volumeUnits}
      onChange={(headspace) => plan.change({ headspace })}
      read={reads.headspace}
      optional={text !== undefined}
      hint={text ? w.headspaceEmpty(`${text.value}\u202f${text.unit}`) : w.headspaceAsk}
    />
  );
}

function PlanFields(props: Fields) {
  const { treatment, plan, reads, proposed } = props;
  const { sign } = useShell();
  const stages = stagesOf(treatment.value, plan.value, proposed.pH);
  const foams = stages.some(({ base }) => bases[base].carbonDioxidePerMol !== '0');
  return (
    <Part>
      <Ways {...props} />
      {plan.value.way === 'limestone-first' && (
        <NumberField
          label={w.limestoneTo}
          field={plan.value.limestoneTo}
          units={['1']}
          onChange={(limestoneTo) => plan.change({ limestoneTo })}
          read={reads.limestoneTo}
          optional
          hint={w.targetEmpty(aimText(limestonePh, sign.value))}
        />
      )}
      <NumberField
        label={w.target}
        field={treatment.value.target}
        units={['1']}
        onChange={(target) => treatment.change({ target })}
        read={reads.target}
        optional
        hint={targetHint(proposed, sign.value)}
      />
      <NumberField
        label={w.riseAllowed}
        field={plan.value.rise}
        units={['K']}
        onChange={(rise) => plan.change({ rise })}
        read={reads.rise}
        optional
        hint={w.riseEmpty(dosing.warmest.value)}
      />
      {foams && <Headspace {...props} />}
    </Part>
  );
}

/** The stages as they stand, or why there are none. */
function Outcome({ id, treatment, plan, proposed }: Fields) {
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
  const { stages, overfull } = planned.value;
  return (
    <>
      {stages.map((stage, i) => (
        <StagePart key={stage.base} stage={stage} number={i + 1} containerId={id} />
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
  const proposed = useLater(
    () => proposal(now, id),
    useMemo(() => ({ now, id }), [now, id]),
  );
  const reads = readPlan(treatment.value, plan.value);
  return (
    <Frame title={w.planTitle(code)} ways={[{ label: words.back, href: `#/containers/${id}/treatment` }]}>
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
