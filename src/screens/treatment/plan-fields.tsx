/** What is chosen of a plan: the way, the pH of each stage, the rise, the free space. */
import { freeSpace } from '../../ledger/free-space';
import { printed } from '../../quantities/format';
import { dosing } from '../../reference/dosing-tables';
import { bases } from '../../reference/tables';
import { Choices } from '../../ui/choices';
import { Part } from '../../ui/page';
import type { Form } from '../form';
import { NumberField } from '../number-field';
import { useShell } from '../shell';
import {
  limestonePh,
  type PlanDraft,
  type PlanReads,
  stagesOf,
  type TreatmentDraft,
  volumeUnits,
} from './draft';
import styles from './plan.module.css';
import { aimText } from './pot-plot';
import { type Proposed, targetHint } from './target';
import type { Pot } from './with-pot';
import { treatmentWords as w } from './words';

export type PlanFieldsProps = Pot & {
  readonly proposed: Proposed;
  readonly treatment: Form<TreatmentDraft>;
  readonly plan: Form<PlanDraft>;
  readonly reads: PlanReads;
};

/** The ways to go: one base, or limestone as far as it goes. */
function Ways({ treatment, plan, proposed }: PlanFieldsProps) {
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
function Headspace({ id, plan, reads }: PlanFieldsProps) {
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
      tried={plan.restored}
      optional={text !== undefined}
      hint={text ? w.headspaceEmpty(`${text.value}\u202f${text.unit}`) : w.headspaceAsk}
    />
  );
}

export function PlanFields(props: PlanFieldsProps) {
  const { treatment, plan, reads, proposed } = props;
  const { sign } = useShell();
  const stages = stagesOf(treatment.value, plan.value, proposed.pH);
  const foams = stages.some(({ base }) => bases[base].carbonDioxidePerMol !== '0');
  return (
    <Part>
      <div class={styles.fields}>
        <Ways {...props} />
        {plan.value.way === 'limestone-first' && (
          <NumberField
            label={w.limestoneTo}
            field={plan.value.limestoneTo}
            units={['1']}
            onChange={(limestoneTo) => plan.change({ limestoneTo })}
            read={reads.limestoneTo}
            tried={plan.restored}
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
          tried={treatment.restored}
          optional
          hint={targetHint(proposed, sign.value)}
        />
        <NumberField
          label={w.riseAllowed}
          field={plan.value.rise}
          units={['K']}
          onChange={(rise) => plan.change({ rise })}
          read={reads.rise}
          tried={plan.restored}
          optional
          hint={w.riseEmpty(dosing.warmest.value)}
        />
        {foams && <Headspace {...props} />}
      </div>
    </Part>
  );
}
