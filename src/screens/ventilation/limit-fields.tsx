/** The limit for the air that people breathe, with who set it, and how badly a room mixes. */
import { formatWritten } from '../../quantities/format';
import { exposureLimits, limitIds } from '../../reference/exposure-limits-tables';
import { nitrousGas } from '../../reference/nitrous-gas-tables';
import { sources } from '../../reference/tables';
import { Part } from '../../ui/page';
import { SelectField } from '../../ui/select-field';
import { TextField } from '../../ui/text-field';
import { containerWords } from '../containers/words';
import { NumberField } from '../number-field';
import { useShell } from '../shell';
import { words } from '../words';
import type { FieldsProps } from './charge-fields';
import type { VentilationDraft } from './draft';
import { ventilationWords as w } from './words';

/** Where the chosen one was published, and whether one of us read it there. */
function LimitSource({ limit }: Pick<VentilationDraft, 'limit'>) {
  if (limit === undefined || limit === 'own') return null;
  const { source, status, note } = exposureLimits.limits[limit].nitrogenDioxide;
  return (
    <>
      {sources[source]?.title}: {containerWords.working.status[status]}. {note}
    </>
  );
}

export function LimitFields({ form, read, tried }: FieldsProps) {
  const { sign } = useShell();
  const { limit, ownLimit, whose } = form.value;
  const options = limitIds.map((id) => {
    const { name, nitrogenDioxide } = exposureLimits.limits[id];
    return { value: id, label: w.of(name, formatWritten(nitrogenDioxide, sign.value)) };
  });
  return (
    <Part rule title={w.limit}>
      <SelectField
        label={w.limitWhich}
        value={limit}
        none={words.choose}
        options={[...options, { value: 'own' as const, label: w.own }]}
        onChoose={(chosen) => form.change({ limit: chosen })}
        hint={<LimitSource limit={limit} />}
        error={tried ? read.faults.limit : undefined}
      />
      {limit === 'own' && (
        <>
          <NumberField
            label={w.ownLimit}
            field={ownLimit}
            onChange={(next) => form.change({ ownLimit: next })}
            read={read.reads.ownLimit}
            tried={tried}
            units={['ppm']}
          />
          <TextField
            label={w.whose}
            value={whose}
            onInput={(next) => form.change({ whose: next })}
            error={tried ? read.faults.whose : undefined}
            required
            maxLength={120}
          />
        </>
      )}
    </Part>
  );
}

export function MixingFields({ form, read, tried }: FieldsProps) {
  const { sign } = useShell();
  const { usual } = nitrousGas.mixing;
  const text = (value: string) => value.replace('.', sign.value);
  const options = (['usual', '1', '3', '5', '10', 'own'] as const).map((value) => ({
    value,
    label:
      value === 'usual'
        ? w.mixings.usual(text(usual.value), text(usual.low), text(usual.high))
        : w.mixings[value],
  }));
  return (
    <Part rule title={w.mixing}>
      <SelectField
        label={w.mixing}
        value={form.value.mixing}
        options={options}
        onChoose={(mixing) => form.change({ mixing })}
        hint={w.mixingSecond}
      />
      {form.value.mixing === 'own' && (
        <NumberField
          label={w.ownMixing}
          field={form.value.ownMixing}
          onChange={(ownMixing) => form.change({ ownMixing })}
          read={read.reads.ownMixing}
          tried={tried}
          units={['1']}
          hint={w.ownMixingHint}
        />
      )}
    </Part>
  );
}
