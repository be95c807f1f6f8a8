/** A container that was found or taken over, and nobody knows what is in it: from the start it stands as not determined. */
import * as z from 'zod/mini';
import { nextCode } from '../../ledger/decisions/codes';
import type { Amount } from '../../ledger/entries/containers';
import { Photos } from '../../ledger/entries/photos';
import { Choices } from '../../ui/choices';
import { Part } from '../../ui/page';
import { PhotoField } from '../../ui/photo-field';
import { TextField } from '../../ui/text-field';
import { Begun } from '../begun';
import { useWriting } from '../fault';
import { readTyped, Typed, typed, useForm } from '../form';
import { Frame } from '../frame';
import { KeepButton } from '../keep-button';
import { NumberField } from '../number-field';
import { usePhotos } from '../photos/use-photos';
import { useShell } from '../shell';
import { given, givenPhotos, useTried } from '../tried';
import { momentStated, When, WhenDraft } from '../when';
import { words } from '../words';
import { doubtWords, lifeWords as w } from './life-words';
import { emptyVessel, VesselDraft, VesselForm, vesselIntention } from './vessel-form';

const ways = ['found', 'inherited', 'label-gone', 'mixed-up'] as const;

const Draft = z.extend(VesselDraft, {
  doubt: z.enum(ways),
  level: Typed,
  note: z.string(),
  photos: Photos,
  when: WhenDraft,
});

export function FoundContainer() {
  const { state, go, moment } = useShell();
  const form = useForm('container-found', Draft, () => ({
    ...emptyVessel(),
    // What it is made of and what it takes is seldom written on it.
    material: 'other' as const,
    // Until somebody looks, it may be under pressure.
    cap: 'tight' as const,
    capacity: typed('L'),
    doubt: 'found' as const,
    level: typed('L'),
    note: '',
    photos: [],
    when: '',
  }));
  const pictures = usePhotos(form);
  const { write, fault, busy } = useWriting(form);
  const { tried, tryNow } = useTried();
  const { doubt, note, when } = form.value;
  const level = readTyped<Amount['unit']>(form.value.level, { most: 100_000 });
  const codes = [...state.value.containers.values()].map(({ body }) => body.code);
  async function keep(): Promise<void> {
    tryNow();
    const at = momentStated(when, moment());
    const intention = vesselIntention(form.value, at ?? moment());
    if (!intention || at === null || level.state === 'wrong') return;
    const photos = await pictures.settled();
    if (photos === null) return;
    const written = await write(
      {
        ...intention,
        doubt: { doubt, ...given('note', note) },
        ...(level.state === 'written' ? { level: level.written as Amount } : {}),
        ...givenPhotos(photos),
      },
      at,
    );
    const body = written?.[0]?.body;
    if (body?.kind !== 'container-opened') return;
    form.done();
    go(`containers/${body.containerId}`, 'replace');
  }
  return (
    <Frame
      title={w.foundTitle}
      second={w.foundSecond}
      ways={[{ label: words.back, href: '#/containers' }]}
      actions={<KeepButton fault={fault} busy={busy} keep={keep} label={w.keepFound} />}
    >
      <Begun form={form} />
      <Part>
        <Choices
          legend={w.foundHow}
          value={doubt}
          choices={ways.map((value) => ({ value, label: doubtWords[value] }))}
          onChoose={(chosen) => form.change({ doubt: chosen })}
        />
        <PhotoField {...pictures.field} />
        <NumberField
          label={w.foundLevel}
          field={form.value.level}
          units={['L', 'mL', 'US gal', 'g', 'kg', 'lb']}
          onChange={(changed) => form.change({ level: changed })}
          read={level}
          tried={tried}
          optional
          hint={w.foundLevelHint}
        />
        <TextField
          label={w.foundNote}
          value={note}
          maxLength={500}
          hint={words.optional}
          onInput={(text) => form.change({ note: text })}
        />
        <VesselForm draft={form.value} onChange={form.change} tried={tried} nextCode={nextCode('C', codes)} />
        <When value={when} onInput={(stated) => form.change({ when: stated })} />
      </Part>
    </Frame>
  );
}
