/** The base and the pH wanted: every base with its amount, also those that do not get there. */
import { useMemo } from 'preact/hooks';
import { baseForPh } from '../../ledger/before-treatment';
import { baseIds, bases } from '../../reference/tables';
import { Choices } from '../../ui/choices';
import { Part } from '../../ui/page';
import type { Form } from '../form';
import { NumberField } from '../number-field';
import { useShell } from '../shell';
import { massText } from './choice';
import { readPh, type TreatmentDraft } from './draft';
import { type Proposed, targetHint } from './target';
import { useOneByOne } from './use-worked-out';
import { treatmentWords as w } from './words';

type Props = {
  readonly form: Form<TreatmentDraft>;
  readonly containerId: string;
  /** The pH that the amounts are for. */
  readonly pH: number;
  readonly proposed: Proposed;
};

export function BaseChoice({ form, containerId, pH, proposed }: Props) {
  const { state, sign } = useShell();
  const now = state.value;
  const basis = useMemo(() => ({ now, containerId, pH }), [now, containerId, pH]);
  const amounts = useOneByOne(baseIds, (base) => baseForPh(now, containerId, base, pH), basis);
  return (
    <Part rule>
      <NumberField
        label={w.target}
        field={form.value.target}
        units={['1']}
        onChange={(changed) => form.change({ target: changed })}
        read={readPh(form.value.target)}
        tried={form.restored}
        optional
        hint={targetHint(proposed, sign.value)}
      />
      <Choices
        legend={w.base}
        value={form.value.base}
        choices={baseIds.map((base) => ({
          value: base,
          label: bases[base].name,
          second: massText(amounts.get(base), sign.value),
        }))}
        onChoose={(base) => form.change({ base })}
      />
    </Part>
  );
}
