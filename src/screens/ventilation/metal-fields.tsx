/** What acid can dissolve: each metal with its grams, or grams in all where nobody knows which. */
import { type Metal, metals } from '../../reference/tables';
import { Button } from '../../ui/button';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { SelectField } from '../../ui/select-field';
import { typed } from '../form';
import { NumberField } from '../number-field';
import { capital } from '../record/entry-words';
import { words } from '../words';
import type { FieldsProps } from './charge-fields';
import { gassing, massUnits, type VentilationDraft } from './draft';
import { ventilationWords as w } from './words';

const ways = (['each', 'total'] as const).map((value) => ({ value, label: w[value] }));

const nameOf = (metal: Metal): string => metals[metal].name;

function Each({ form, read, tried }: FieldsProps) {
  const { masses } = form.value;
  const put = (next: VentilationDraft['masses']): void => form.change({ masses: next });
  const left = gassing.filter((metal) => masses.every((line) => line.metal !== metal));
  return (
    <>
      {masses.map(({ metal, mass }, i) => (
        <div key={metal}>
          <NumberField
            label={capital(nameOf(metal))}
            field={mass}
            onChange={(next) =>
              put(masses.map((line) => (line.metal === metal ? { metal, mass: next } : line)))
            }
            read={read.reads.masses[i] ?? { state: 'empty' }}
            tried={tried}
            units={massUnits}
          />
          <Button look="plain" onTap={() => put(masses.filter((line) => line.metal !== metal))}>
            {w.takeAway(nameOf(metal))}
          </Button>
        </div>
      ))}
      {left.length > 0 && (
        <SelectField
          key={masses.length}
          label={masses.length === 0 ? w.first : w.next}
          value={undefined}
          none={words.choose}
          options={left.map((metal) => ({ value: metal, label: capital(nameOf(metal)) }))}
          onChoose={(metal) => put([...masses, { metal, mass: typed('g') }])}
          error={tried ? read.faults.metals : undefined}
        />
      )}
    </>
  );
}

export function MetalFields(props: FieldsProps) {
  const { form, read, tried } = props;
  return (
    <Part rule title={w.metal}>
      <SelectField
        label={w.known}
        value={form.value.known}
        options={ways}
        onChoose={(known) => form.change({ known })}
      />
      {form.value.known === 'each' ? (
        <Each {...props} />
      ) : (
        <NumberField
          label={w.totalMass}
          field={form.value.total}
          onChange={(total) => form.change({ total })}
          read={read.reads.total}
          tried={tried}
          units={massUnits}
          hint={w.totalHint}
        />
      )}
      {read.faults.charge !== undefined && <Notice mark="wrong">{read.faults.charge}</Notice>}
    </Part>
  );
}
