/** Taking something out of a container: into another, as a sample, spilled, into a treatment pot. */
import * as z from 'zod/mini';
import { nothing, unitsOf } from '../../ledger/amounts';
import type { Amount } from '../../ledger/entries/containers';
import { mayHaveHappened } from '../../ledger/refused-plan';
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
import { momentStated, When, WhenDraft } from '../when';
import { words } from '../words';
import { containerChoice } from './container-choice';
import { containerWords as w } from './words';

const Draft = z.object({
  amount: Typed,
  purpose: z.enum(['transfer', 'sample', 'spill', 'treatment']),
  into: z.string(),
  note: z.string(),
  when: WhenDraft,
});

export function TakeOut({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state, go, sign, moment } = useShell();
  const id = at.id ?? '';
  const container = state.value.containers.get(id);
  const form = useForm(`out-${id}`, Draft, () => ({
    amount: typed(unitsOf(container?.holds ?? nothing)[0]),
    purpose: 'transfer' as const,
    into: '',
    note: '',
    when: '',
  }));
  const { write, fault, refusal, busy } = useWriting(form);
  const { tried, tryNow } = useTried();
  const { amount, purpose, into, note, when } = form.value;
  const read = readTyped<Amount['unit']>(amount, { aboveZero: true });
  const others = [...state.value.containers.values()].filter(({ body }) => body.containerId !== id);
  const missing = purpose === 'transfer' && into === '';
  async function keep(how: 'move-contents' | 'log-move-happened'): Promise<void> {
    tryNow();
    const at = momentStated(when, moment());
    if (read.state !== 'written' || missing || at === null) return;
    const moved = {
      fromContainerId: id,
      toContainerId: purpose === 'transfer' ? into : null,
      amount: read.written as Amount,
      purpose,
      ...(note.trim() === '' ? {} : { note: note.trim() }),
    };
    const written = await write({ do: how, ...moved }, at);
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
          {refusal && mayHaveHappened(refusal) && (
            <Button disabled={busy} onTap={() => void keep('log-move-happened')}>
              {w.happenedAnyway}
            </Button>
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
          units={unitsOf(container?.holds ?? nothing)}
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
            options={others.map((other) => containerChoice(state.value, other, sign.value))}
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
        <When value={when} onInput={(stated) => form.change({ when: stated })} />
      </Part>
    </Frame>
  );
}
