/** Working out a dilution: from the acid as it comes to water, acid, heat and portions. For planning: it writes nothing. */
import { Button, Buttons } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { SelectField } from '../../ui/select-field';
import { batchWords } from '../batches/words';
import { Begun } from '../begun';
import { type Form, useForm } from '../form';
import { Frame } from '../frame';
import { NumberField } from '../number-field';
import { useShell } from '../shell';
import { words } from '../words';
import {
  DilutionDraft,
  type DilutionReads,
  draftName,
  emptyDilution,
  readDilution,
  strengthUnits,
  usualRoomC,
  volumeUnits,
} from './draft';
import { Result } from './result';
import { dilutionWords as w } from './words';

type FieldsProps = { readonly form: Form<DilutionDraft>; readonly reads: DilutionReads };
type Name = keyof DilutionReads;

const labels: Readonly<Record<Name, string>> = {
  stock: w.stock,
  wanted: w.wanted,
  volume: w.volume,
  acid: w.acid,
  water: w.water,
  room: w.room,
};
const units: Readonly<Record<Name, readonly string[]>> = {
  stock: strengthUnits,
  wanted: strengthUnits,
  volume: volumeUnits,
  acid: volumeUnits,
  water: volumeUnits,
  room: ['°C'],
};
const asked: Readonly<Record<DilutionDraft['find'], readonly Name[]>> = {
  recipe: ['stock', 'wanted', 'volume', 'room'],
  mixture: ['stock', 'acid', 'water', 'room'],
};
const finds = Object.entries(w.finds) as [DilutionDraft['find'], string][];

const Fields = ({ form, reads }: FieldsProps) => (
  <Part>
    <SelectField
      label={w.find}
      value={form.value.find}
      options={finds.map(([value, label]) => ({ value, label }))}
      onChoose={(find) => form.change({ find })}
    />
    {asked[form.value.find].map((name) => (
      <NumberField
        key={name}
        label={labels[name]}
        field={form.value[name]}
        units={units[name]}
        onChange={(changed) => form.change({ [name]: changed })}
        read={reads[name]}
        {...(name === 'room' ? { optional: true, hint: w.roomEmpty(usualRoomC) } : {})}
      />
    ))}
  </Part>
);

export function DilutionScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const batch = state.value.batches.get(at.batch ?? '')?.body;
  if (!batch)
    return (
      <Frame place="batches" title={w.title}>
        <Part>
          <p>{batchWords.gone}</p>
        </Part>
      </Frame>
    );
  return <Recipe batchId={batch.batchId} code={batch.code} />;
}

function Recipe({ batchId, code }: { readonly batchId: string; readonly code: string }) {
  const form = useForm(draftName(batchId), DilutionDraft, emptyDilution);
  const { reads, outcome } = readDilution(form.value);
  return (
    <Frame
      title={w.title}
      second={w.forBatch(unbroken(code))}
      ways={[{ label: w.back, href: `#/batches/${batchId}` }]}
    >
      <Begun form={form} />
      <Fields form={form} reads={reads} />
      {outcome ? (
        <Result outcome={outcome} batchId={batchId} />
      ) : (
        <Part rule title={w.result}>
          <p>{w.notYet}</p>
        </Part>
      )}
      <Part rule>
        {w.cautions.map((line) => (
          <p key={line}>{line}</p>
        ))}
        <p>{words.caution}</p>
        <Buttons>
          <Button href={`#/batches/${batchId}/step`} second={w.toChecklistSecond}>
            {w.toChecklist}
          </Button>
        </Buttons>
      </Part>
    </Frame>
  );
}
