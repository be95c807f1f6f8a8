/** Reading how much is in a container: what the record says stands beside it, and what disagrees is asked about. */
import * as z from 'zod/mini';
import { nothing, unitsOf } from '../../ledger/amounts';
import type { Amount } from '../../ledger/entries/containers';
import { Photos } from '../../ledger/entries/photos';
import { levelAgainst } from '../../ledger/level-against';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { PhotoField } from '../../ui/photo-field';
import { heldText } from '../amounts';
import { useWriting } from '../fault';
import { readTyped, Typed, typed, useForm } from '../form';
import { Frame } from '../frame';
import { KeepButton } from '../keep-button';
import { NoteAndWhen } from '../note-and-when';
import { NumberField } from '../number-field';
import { usePhotos } from '../photos/use-photos';
import { useShell } from '../shell';
import { given, givenPhotos, useTried } from '../tried';
import { momentStated, WhenDraft } from '../when';
import { words } from '../words';
import { lifeWords as w } from './life-words';

const Draft = z.object({ level: Typed, note: z.string(), photos: Photos, when: WhenDraft });

export function ReadLevel({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state, go, sign, moment } = useShell();
  const id = at.id ?? '';
  const container = state.value.containers.get(id);
  const held = container?.holds ?? nothing;
  const form = useForm(`level-${id}`, Draft, () => ({
    level: typed(unitsOf(held)[0]),
    note: '',
    photos: [],
    when: '',
  }));
  const pictures = usePhotos(form);
  const { write, fault, busy } = useWriting(form);
  const { tried, tryNow } = useTried();
  const read = readTyped<Amount['unit']>(form.value.level, { most: 1_000_000 });
  async function keep(): Promise<void> {
    tryNow();
    const when = momentStated(form.value.when, moment());
    if (read.state !== 'written' || when === null) return;
    const photos = await pictures.settled();
    if (photos === null) return;
    const level = {
      level: read.written as Amount,
      ...given('note', form.value.note),
      ...givenPhotos(photos),
    };
    if (!(await write({ do: 'log-level', containerId: id, ...level }, when))) return;
    form.done();
    const after = state.value.containers.get(id);
    const against = after ? levelAgainst(after) : null;
    go(`containers/${id}${against && !against.agrees ? '/level/why' : ''}`, 'replace');
  }
  return (
    <Frame
      title={w.levelTitle(unbroken(container?.body.code ?? ''))}
      second={container?.doubtfulSince === null ? w.levelSecond(heldText(held, sign.value)) : undefined}
      ways={[{ label: words.back, href: `#/containers/${id}` }]}
      actions={<KeepButton fault={fault} busy={busy} keep={keep} label={w.keepLevel} />}
    >
      <Part>
        <NumberField
          label={w.level}
          field={form.value.level}
          units={unitsOf(held)}
          onChange={(level) => form.change({ level })}
          read={read}
          tried={tried}
          evidence={w.levelHint}
        />
        <PhotoField {...pictures.field} />
        <NoteAndWhen form={form} label={w.note} />
      </Part>
    </Frame>
  );
}
