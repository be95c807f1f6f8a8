/** A container taken into use, empty; for a waste that must not go elsewhere, for what is taken out of another, or instead of a damaged one. */
import * as z from 'zod/mini';
import { nextCode } from '../../ledger/decisions/codes';
import { Photos } from '../../ledger/entries/photos';
import { contentsSide, streamSide } from '../../ledger/meeting-sides';
import type { State } from '../../ledger/state';
import { goesWith } from '../../safety/must-not-meet/matter';
import { Part } from '../../ui/page';
import { PhotoField } from '../../ui/photo-field';
import { useWriting } from '../fault';
import { useForm } from '../form';
import { Frame } from '../frame';
import { KeepButton } from '../keep-button';
import { usePhotos } from '../photos/use-photos';
import { useShell } from '../shell';
import { givenPhotos, useTried } from '../tried';
import { words } from '../words';
import { TakeOutDraft, takeOutDraft } from './take-out';
import { emptyVessel, VesselDraft, VesselForm, vesselIntention } from './vessel-form';
import { containerWords as w } from './words';

type Props = { readonly at: Readonly<Record<string, string>> };

/** Where the waste that it is opened for belongs; undefined where it is opened for none. */
function belongs(state: State, { stream, from, instead }: Props['at']): string | undefined {
  const side = stream === undefined ? contentsSide(state, from ?? instead ?? '') : streamSide(state, stream);
  return side.flatMap(({ thing }) => goesWith(thing)?.text ?? [])[0];
}

/** A photo of it may be kept at once. */
const Draft = z.extend(VesselDraft, { photos: z._default(Photos, []) });

export function NewContainer({ at }: Props) {
  const { state, go, moment, draft } = useShell();
  const form = useForm('container-new', Draft, () => ({ ...emptyVessel(), photos: [] }));
  const pictures = usePhotos(form);
  const { write, fault, busy } = useWriting();
  const { tried, tryNow } = useTried();
  const codes = [...state.value.containers.values()].map(({ body }) => body.code);
  async function keep(): Promise<void> {
    tryNow();
    const intention = vesselIntention(form.value, moment());
    if (!intention) return;
    const photos = await pictures.settled();
    if (photos === null) return;
    const written = await write({ ...intention, ...givenPhotos(photos) });
    const body = written?.[0]?.body;
    if (body?.kind !== 'container-opened') return;
    form.done();
    const { containerId } = body;
    if (at.instead !== undefined) go(`containers/${at.instead}/move-all`, 'replace');
    else if (at.from !== undefined) {
      const begun = draft.read(takeOutDraft(at.from), TakeOutDraft);
      if (begun) draft.keep(takeOutDraft(at.from), { ...begun, into: containerId });
      go(`containers/${at.from}/out`, 'replace');
    } else go(`containers/${containerId}${at.stream === undefined ? '' : `/in/${at.stream}`}`, 'replace');
  }
  return (
    <Frame
      title={w.newTitle}
      second={belongs(state.value, at)}
      ways={[{ label: words.back, href: '#/containers' }]}
      actions={<KeepButton fault={fault} busy={busy} keep={keep} label={w.keepContainer} />}
    >
      <Part>
        <VesselForm draft={form.value} onChange={form.change} tried={tried} nextCode={nextCode('C', codes)} />
        <PhotoField {...pictures.field} />
      </Part>
    </Frame>
  );
}
