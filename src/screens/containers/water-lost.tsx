/** Water that went off from a container: less liquid, with the same in it. */
import * as z from 'zod/mini';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { useWriting } from '../fault';
import { readTyped, Typed, typed, useForm } from '../form';
import { Frame } from '../frame';
import { KeepButton } from '../keep-button';
import { NoteAndWhen } from '../note-and-when';
import { NumberField } from '../number-field';
import { useShell } from '../shell';
import { given, useTried } from '../tried';
import { momentStated, WhenDraft } from '../when';
import { words } from '../words';
import { lifeWords as w } from './life-words';

export const waterDraft = (containerId: string): string => `water-${containerId}`;

const Draft = z.object({ amount: Typed, note: z.string(), when: WhenDraft });

export function WaterLost({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state, go, moment } = useShell();
  const id = at.id ?? '';
  const container = state.value.containers.get(id);
  const form = useForm(waterDraft(id), Draft, () => ({ amount: typed('L'), note: '', when: '' }));
  const { write, fault, busy } = useWriting(form);
  const { tried, tryNow } = useTried();
  const { amount, note, when } = form.value;
  const read = readTyped<'L' | 'mL' | 'US gal'>(amount, { aboveZero: true, most: 100_000 });
  async function keep(): Promise<void> {
    tryNow();
    const at = momentStated(when, moment());
    if (read.state !== 'written' || at === null) return;
    const lost = { containerId: id, amount: read.written, ...given('note', note) };
    if (!(await write({ do: 'log-water-lost', ...lost }, at))) return;
    form.done();
    go(`containers/${id}`, 'replace');
  }
  return (
    <Frame
      title={w.waterTitle(unbroken(container?.body.code ?? ''))}
      second={w.waterSecond}
      ways={[{ label: words.back, href: `#/containers/${id}` }]}
      actions={<KeepButton fault={fault} busy={busy} keep={keep} label={w.keep} />}
    >
      <Part>
        <NumberField
          label={w.water}
          field={amount}
          units={['L', 'mL', 'US gal']}
          onChange={(changed) => form.change({ amount: changed })}
          read={read}
          tried={tried}
        />
        <NoteAndWhen form={form} label={w.note} />
      </Part>
    </Frame>
  );
}
