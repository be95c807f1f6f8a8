/** Taking something out of a container: into another, as a sample, spilled, into a treatment pot. */
import * as z from 'zod/mini';
import type { Amount } from '../../ledger/entries/containers';
import { Button } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { SelectField } from '../../ui/select-field';
import { TextField } from '../../ui/text-field';
import { contentsTitle } from '../amounts';
import { Fault, useWriting } from '../fault';
import { readTyped, Typed, typed, useForm } from '../form';
import { Frame } from '../frame';
import { NumberField } from '../number-field';
import { useShell } from '../shell';
import { useTried } from '../tried';
import { words } from '../words';
import { containerWords as w } from './words';

const Draft = z.object({
  amount: Typed,
  purpose: z.enum(['transfer', 'sample', 'spill', 'treatment']),
  into: z.string(),
  note: z.string(),
});

export function TakeOut({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state, go } = useShell();
  const id = at.id ?? '';
  const container = state.value.containers.get(id);
  const form = useForm(`out-${id}`, Draft, () => ({
    amount: typed(container && !container.holds.volume.isZero() ? 'L' : 'g'),
    purpose: 'transfer' as const,
    into: '',
    note: '',
  }));
  const { write, fault, refusal, busy } = useWriting();
  const { tried, tryNow } = useTried();
  const { amount, purpose, into, note } = form.value;
  const read = readTyped<Amount['unit']>(amount, { aboveZero: true });
  const others = [...state.value.containers.values()].filter(({ body }) => body.containerId !== id);
  const missing = purpose === 'transfer' && into === '';
  async function keep(how: 'move-contents' | 'log-move-happened'): Promise<void> {
    tryNow();
    if (read.state !== 'written' || missing) return;
    const written = await write({
      do: how,
      fromContainerId: id,
      toContainerId: purpose === 'transfer' ? into : null,
      amount: read.written as Amount,
      purpose,
      ...(note.trim() === '' ? {} : { note: note.trim() }),
    });
    if (!written) return;
    form.done();
    go(`containers/${id}`, 'replace');
  }
  return (
    <Frame
      title={w.takeOutTitle(unbroken(container?.body.code ?? ''))}
      second={contentsTitle(state.value, id)}
      ways={[{ label: words.back, href: `#/containers/${id}` }]}
      actions={
        <>
          <Fault words={fault} />
          {(refusal === 'over-fill-limit' || refusal === 'over-capacity') && (
            <Button onTap={() => void keep('log-move-happened')}>{w.happenedAnyway}</Button>
          )}
          <Button look="primary" disabled={busy} onTap={() => void keep('move-contents')}>
            {w.takeItOut}
          </Button>
        </>
      }
    >
      <Part>
        <NumberField
          label={w.takeOut}
          field={amount}
          units={['L', 'mL', 'US gal', 'g', 'kg', 'lb']}
          onChange={(changed) => form.change({ amount: changed })}
          read={read}
          tried={tried}
        />
        <SelectField
          label={w.whereTo}
          value={purpose}
          options={(Object.entries(w.purposes) as [typeof purpose, string][]).map(([value, label]) => ({
            value,
            label,
          }))}
          onChoose={(chosen) => form.change({ purpose: chosen })}
        />
        {purpose === 'transfer' && (
          <SelectField
            label={w.into}
            value={into === '' ? undefined : into}
            none={words.choose}
            options={others.map(({ body }) => ({ value: body.containerId, label: body.code }))}
            onChoose={(chosen) => form.change({ into: chosen })}
            error={tried && missing ? words.choice.missing : undefined}
          />
        )}
        <TextField
          label={w.note}
          value={note}
          maxLength={500}
          hint={words.optional}
          onInput={(text) => form.change({ note: text })}
        />
      </Part>
    </Frame>
  );
}
