/** States how pure one base is. */
import * as z from 'zod/mini';
import { type BaseId, baseIds, bases } from '../../reference/tables';
import { Notice } from '../../ui/notice';
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

const BaseFields = z.object({ purity: Typed, basicity: Typed, saidBy: z.string() });

const isBase = (id: string): id is BaseId => (baseIds as readonly string[]).includes(id);

export const BaseScreen = ({ at }: { readonly at: Readonly<Record<string, string>> }) =>
  isBase(at.base ?? '') ? <BaseForm base={at.base as BaseId} /> : <Frame place="record" title={w.gone} />;

function BaseForm({ base }: { readonly base: BaseId }) {
  const { state, go } = useShell();
  const known = state.value.bases.get(base)?.body;
  const { value, change, done } = useForm(`base:${base}`, BaseFields, () => ({
    purity: known?.purity ? { typed: known.purity.value, unit: known.purity.unit } : typed('%'),
    basicity: known?.basicity ? { typed: known.basicity.value, unit: known.basicity.unit } : typed('1'),
    saidBy: known?.saidBy ?? '',
  }));
  const leave = (): void => {
    done();
    go('record/bases');
  };
  const { tried, tryNow } = useTried();
  const { write, fault, busy } = useWriting();
  const purity = readTyped<'%'>(value.purity, { most: 100, aboveZero: true });
  const basicity = readTyped<'1'>(value.basicity, { most: 2, aboveZero: true });
  const both = purity.state !== 'empty' && basicity.state !== 'empty';
  const { low, high } = bases[base].purity;
  async function keep(): Promise<void> {
    tryNow();
    const stated =
      purity.state === 'written'
        ? { purity: purity.written }
        : basicity.state === 'written' && { basicity: basicity.written };
    if (both || !stated) return;
    if (!(await write({ do: 'describe-base', base, ...stated, ...given('saidBy', value.saidBy) }))) return;
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
          onChange={(next) => change({ purity: next })}
          read={purity}
          tried={tried}
          units={['%']}
          optional={basicity.state !== 'empty'}
          hint={null}
        />
        <NumberField
          label={w.basicity}
          field={value.basicity}
          onChange={(next) => change({ basicity: next })}
          read={basicity}
          tried={tried}
          units={['1']}
          optional
          hint={w.basicityHint}
        />
        {both && <Notice mark="wrong">{w.onlyOne}</Notice>}
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
