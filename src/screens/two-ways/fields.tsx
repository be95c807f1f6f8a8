/** What is asked of treating: base, pH, solids, and what a person knows better of portions and hours. */
import { baseIds, bases, liquor } from '../../reference/tables';
import { Part } from '../../ui/page';
import { SelectField } from '../../ui/select-field';
import type { Form } from '../form';
import { NumberField } from '../number-field';
import type { TwoWaysDraft, TwoWaysReads } from './draft';
import { twoWaysWords as w } from './words';

type FieldsProps = { readonly form: Form<TwoWaysDraft>; readonly reads: TwoWaysReads };

/** What everything else follows from. */
export function Fields({ form, reads }: FieldsProps) {
  const { value: draft, change } = form;
  return (
    <Part>
      <SelectField
        label={w.base}
        value={draft.base}
        options={baseIds.map((base) => ({ value: base, label: bases[base].name }))}
        onChoose={(base) => change({ base })}
      />
      <NumberField
        label={w.pH}
        field={draft.pH}
        units={['1']}
        onChange={(pH) => change({ pH })}
        read={reads.pH}
      />
    </Part>
  );
}

/** What a person may know better than what is usual. */
export function FinerFields({ form, reads }: FieldsProps) {
  const { value: draft, change } = form;
  const { low, high } = liquor.cakeSolids;
  return (
    <Part rule title={w.finer}>
      <NumberField
        label={w.solids}
        field={draft.solids}
        units={['%']}
        onChange={(solids) => change({ solids })}
        read={reads.solids}
        hint={w.solidsEmpty(low, high)}
        optional
      />
      <NumberField
        label={w.portions}
        field={draft.portions}
        units={['1']}
        onChange={(portions) => change({ portions })}
        read={reads.portions}
        hint={w.portionsEmpty}
        optional
      />
      <NumberField
        label={w.hours}
        field={draft.hours}
        units={['h']}
        onChange={(hours) => change({ hours })}
        read={reads.hours}
        hint={w.hoursEmpty}
        optional
      />
    </Part>
  );
}
