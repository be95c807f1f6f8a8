/** States how pure one base is. */
import * as z from 'zod/mini';
import { type BaseId, baseIds, bases } from '../../reference/tables';
import { Part } from '../../ui/page';
import { TextField } from '../../ui/text-field';
import { Fault, useWriting } from '../fault';
import { readTyped, Typed, typed, useForm } from '../form';
import { Frame } from '../frame';
import { NumberField } from '../number-field';
import { useShell } from '../shell';
import { given, useTried } from '../tried';
import { words } from '../words';
import { baseWords as w } from './words';

const BaseFields = z.object({ purity: Typed, saidBy: z.string() });

const isBase = (id: string): id is BaseId => (baseIds as readonly string[]).includes(id);

export const BaseScreen = ({ at }: { readonly at: Readonly<Record<string, string>> }) =>
  isBase(at.base ?? '') ? <BaseForm base={at.base as BaseId} /> : <Frame place="record" title={w.gone} />;

function BaseForm({ base }: { readonly base: BaseId }) {
  const { state, go } = useShell();
  const known = state.value.bases.get(base)?.body;
  const { value, change, done } = useForm(`base:${base}`, BaseFields, () => ({
    purity: known ? { typed: known.purity.value, unit: known.purity.unit } : typed('%'),
    saidBy: known?.saidBy ?? '',
  }));
  const leave = (): void => {
    done();
    go('record/bases');
  };
  const { tried, tryNow } = useTried();
  const { write, fault, busy } = useWriting();
  const read = readTyped<'%'>(value.purity, { most: 100, aboveZero: true });
  const { low, high } = bases[base].purity;
  async function keep(): Promise<void> {
    tryNow();
    if (read.state !== 'written') return;
    const said = given('saidBy', value.saidBy);
    if (!(await write({ do: 'describe-base', base, purity: read.written, ...said }))) return;
    leave();
  }
  return (
    <Frame
      place="record"
      title={bases[base].name}
      second={known ? undefined : w.taken(low, high)}
      ways={[
        { label: words.cancel, onTap: leave },
        { label: w.keep, strong: true, disabled: busy, onTap: () => void keep() },
      ]}
    >
      <Part rule>
        <NumberField
          label={w.purity}
          field={value.purity}
          onChange={(purity) => change({ purity })}
          read={read}
          tried={tried}
          units={['%']}
        />
        <TextField
          label={w.saidBy}
          value={value.saidBy}
          onInput={(saidBy) => change({ saidBy })}
          hint={w.saidByHint}
          maxLength={120}
        />
        <Fault words={fault} />
      </Part>
    </Frame>
  );
}
