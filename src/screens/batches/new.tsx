/** A batch with its feed. */
import * as z from 'zod/mini';
import { nextCode } from '../../ledger/decisions/codes';
import type { Feed } from '../../ledger/entries/batches';
import { Choices } from '../../ui/choices';
import { Part } from '../../ui/page';
import { TextField } from '../../ui/text-field';
import { useWriting } from '../fault';
import { readTyped, Typed, typed, useForm } from '../form';
import { Frame } from '../frame';
import { KeepButton } from '../keep-button';
import { NumberField } from '../number-field';
import { useShell } from '../shell';
import { given, useTried } from '../tried';
import { words } from '../words';
import { capacitorWords, eraWords, batchWords as w } from './words';

const Draft = z.object({
  capacitors: z.optional(z.enum(['precious-metal-electrode', 'base-metal-electrode', 'mixed', 'unknown'])),
  era: z.optional(z.enum(['may-hold-lead', 'lead-free', 'unknown'])),
  mass: Typed,
  code: z.string(),
  note: z.string(),
});

const choices = <V extends string>(names: Readonly<Record<V, string>>) =>
  (Object.entries(names) as [V, string][]).map(([value, label]) => ({ value, label }));

export function NewBatch() {
  const { state, go } = useShell();
  const form = useForm('batch-new', Draft, () => ({ mass: typed('g'), code: '', note: '' }));
  const { write, fault, busy } = useWriting();
  const { tried, tryNow } = useTried();
  const { capacitors, era, mass, code, note } = form.value;
  const read = readTyped<Feed['mass']['unit']>(mass, { aboveZero: true });
  const codes = [...state.value.batches.values()].map(({ body }) => body.code);
  async function keep(): Promise<void> {
    tryNow();
    if (!capacitors || !era || read.state !== 'written') return;
    const written = await write({
      do: 'open-batch',
      feed: { capacitors, era, mass: read.written },
      ...given('code', code),
      ...given('note', note),
    });
    const body = written?.[0]?.body;
    if (body?.kind !== 'batch-opened') return;
    form.done();
    go(`batches/${body.batchId}`, 'replace');
  }
  return (
    <Frame
      title={w.newTitle}
      ways={[{ label: words.back, href: '#/batches' }]}
      actions={<KeepButton fault={fault} busy={busy} keep={keep} label={w.keep} />}
    >
      <Part>
        <NumberField
          label={w.mass}
          field={mass}
          units={['g', 'kg', 'lb']}
          onChange={(changed) => form.change({ mass: changed })}
          read={read}
          tried={tried}
        />
        <Choices
          legend={w.capacitors}
          choices={choices(capacitorWords)}
          value={capacitors}
          onChoose={(chosen) => form.change({ capacitors: chosen })}
          error={tried && !capacitors ? words.choice.missing : undefined}
        />
        <Choices
          legend={w.era}
          choices={choices(eraWords)}
          value={era}
          onChoose={(chosen) => form.change({ era: chosen })}
          error={tried && !era ? words.choice.missing : undefined}
        />
        <TextField
          label={w.code}
          value={code}
          maxLength={16}
          hint={w.codeHint(nextCode('B', codes))}
          onInput={(text) => form.change({ code: text })}
        />
        <TextField
          label={w.note}
          value={note}
          maxLength={500}
          kind="lines"
          hint={words.optional}
          onInput={(text) => form.change({ note: text })}
        />
      </Part>
    </Frame>
  );
}
