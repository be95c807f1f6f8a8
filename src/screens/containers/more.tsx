/** What else can be said of a container: closed, doubtful, known again; its papers. */
import * as z from 'zod/mini';
import type { ContainerMarked } from '../../ledger/entries/containers';
import { Photos } from '../../ledger/entries/photos';
import type { ContainerState } from '../../ledger/state';
import { Button, Buttons } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { PhotoField } from '../../ui/photo-field';
import { TextField } from '../../ui/text-field';
import { Fault, useWriting } from '../fault';
import { useForm } from '../form';
import { Frame } from '../frame';
import { usePhotos } from '../photos/use-photos';
import { useShell } from '../shell';
import { momentStated, When, WhenDraft } from '../when';
import { words } from '../words';
import { containerWords as w } from './words';

const Draft = z.object({ note: z.string(), when: WhenDraft, photos: z._default(Photos, []) });

/** Only what changes something. */
const marksFor = ({ closedAt, doubtfulSince }: ContainerState): readonly ContainerMarked['mark'][] => [
  closedAt === null ? 'closed' : 'reopened',
  doubtfulSince === null ? 'contents-doubtful' : 'contents-known',
];

export function MoreOfContainer({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state, go, moment } = useShell();
  const id = at.id ?? '';
  const container = state.value.containers.get(id);
  const form = useForm(`mark-${id}`, Draft, () => ({ note: '', when: '', photos: [] }));
  const pictures = usePhotos(form);
  const { write, fault, busy } = useWriting(form);
  async function mark(as: ContainerMarked['mark']): Promise<void> {
    const note = form.value.note.trim();
    const at = momentStated(form.value.when, moment());
    if (at === null) return;
    const photos = await pictures.settled();
    if (photos === null) return;
    const told = { ...(note === '' ? {} : { note }), ...(photos.length === 0 ? {} : { photos }) };
    const written = await write({ do: 'mark-container', containerId: id, mark: as, ...told }, at);
    if (!written) return;
    form.done();
    go(`containers/${id}`, 'replace');
  }
  return (
    <Frame
      title={w.moreTitle(unbroken(container?.body.code ?? ''))}
      ways={[{ label: words.back, href: `#/containers/${id}` }]}
    >
      <Part>
        <Buttons>
          <Button look="primary" href={`#/papers/new/${id}`}>
            {w.makePapers}
          </Button>
        </Buttons>
      </Part>
      <Part rule>
        <TextField
          label={w.markNote}
          value={form.value.note}
          maxLength={500}
          hint={words.optional}
          onInput={(note) => form.change({ note })}
        />
        <PhotoField {...pictures.field} />
        <When value={form.value.when} onInput={(when) => form.change({ when })} />
        <Buttons>
          {container &&
            marksFor(container).map((as) => (
              <Button key={as} disabled={busy} onTap={() => void mark(as)}>
                {w.marks[as]}
              </Button>
            ))}
          {container && <Button href={`#/record/entry/${container.entryId}`}>{w.history}</Button>}
        </Buttons>
        <Fault words={fault} />
      </Part>
    </Frame>
  );
}
