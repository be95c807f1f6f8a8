/** What is other about a vessel from now on: its cap, its tray, its place, its photos. Only what is other is written. */
import * as z from 'zod/mini';
import { type Photo, Photos } from '../../ledger/entries/photos';
import type { ContainerState } from '../../ledger/state';
import { Button } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { PhotoField } from '../../ui/photo-field';
import { useWriting } from '../fault';
import { useForm } from '../form';
import { Frame } from '../frame';
import { KeepButton } from '../keep-button';
import { NoteAndWhen } from '../note-and-when';
import { usePhotos } from '../photos/use-photos';
import { useShell } from '../shell';
import { given, useTried } from '../tried';
import { momentStated, WhenDraft } from '../when';
import { words } from '../words';
import { lifeWords as w } from './life-words';
import { VesselDraft, VesselForm, vesselChange, vesselDraftOf } from './vessel-form';
import { containerWords } from './words';

const Draft = z.extend(VesselDraft, { note: z.string(), photos: Photos, when: WhenDraft });

const samePhotos = (a: readonly Photo[], b: readonly Photo[]): boolean =>
  a.map(({ hash }) => hash).join() === b.map(({ hash }) => hash).join();

function ChangeForm({ container }: { readonly container: ContainerState }) {
  const { go, moment } = useShell();
  const { body, entryId } = container;
  const { containerId } = body;
  const form = useForm(`change-${containerId}`, Draft, () => ({
    ...vesselDraftOf(body),
    note: '',
    photos: body.photos ?? [],
    when: '',
  }));
  const pictures = usePhotos(form);
  const { write, fault, setFault, busy } = useWriting(form);
  const { tried, tryNow } = useTried();
  const { note, when } = form.value;
  async function keep(): Promise<void> {
    tryNow();
    const at = momentStated(when, moment());
    const change = vesselChange(body, form.value);
    if (!change || at === null) return;
    const photos = await pictures.settled();
    if (photos === null) return;
    const pictured = samePhotos(photos, body.photos ?? []) ? {} : { photos: [...photos] };
    const other = { ...change, ...pictured };
    if (Object.keys(other).length === 0) return setFault(w.unchanged);
    if (!(await write({ do: 'change-container', containerId, ...other, ...given('note', note) }, at))) return;
    form.done();
    go(`containers/${containerId}`, 'replace');
  }
  return (
    <Frame
      title={w.changeTitle(unbroken(body.code))}
      ways={[{ label: words.back, href: `#/containers/${containerId}` }]}
      actions={<KeepButton fault={fault} busy={busy} keep={keep} label={w.keepChange} />}
    >
      <Part>
        <VesselForm draft={form.value} onChange={form.change} tried={tried} />
        <PhotoField {...pictures.field} />
        <NoteAndWhen form={form} label={containerWords.note} />
        <Button look="plain" href={`#/record/entry/${entryId}`}>
          {w.changeHint}
        </Button>
      </Part>
    </Frame>
  );
}

export function ChangeVessel({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const container = state.value.containers.get(at.id ?? '');
  return container ? (
    <ChangeForm container={container} />
  ) : (
    <Frame place="containers" title={containerWords.gone} />
  );
}
