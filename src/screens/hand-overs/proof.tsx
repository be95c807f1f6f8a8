/** Filing the proof of disposal: what it proves, what the paper says, and the paper itself as photo or PDF. */
import * as z from 'zod/mini';
import { awaited } from '../../ledger/due';
import { Files } from '../../ledger/entries/files';
import { Photos } from '../../ledger/entries/photos';
import type { HandOverState } from '../../ledger/state';
import { calendarDay } from '../../rules/clocks/calendar-day';
import { FileField } from '../../ui/file-field';
import { Part } from '../../ui/page';
import { PhotoField } from '../../ui/photo-field';
import { TextField } from '../../ui/text-field';
import { calendarDayText } from '../amounts';
import { Begun } from '../begun';
import { Fault, useWriting } from '../fault';
import { useFiles } from '../files/use-files';
import { useForm } from '../form';
import { Frame } from '../frame';
import { KeepButton } from '../keep-button';
import { NoteAndWhen } from '../note-and-when';
import { usePhotos } from '../photos/use-photos';
import { PickOrWrite } from '../pick-or-write';
import { useShell } from '../shell';
import { given, givenFiles, givenPhotos, useTried } from '../tried';
import { momentStated, WhenDraft } from '../when';
import { words } from '../words';
import { knownCollectors } from './collectors';
import { NotKept } from './not-kept';
import { WhichOfLoad } from './which';
import { handOverWords as w } from './words';

const Draft = z.object({
  /** Not proved by it. */
  left: z.array(z.string()),
  saidBy: z.string(),
  document: z.string(),
  treatedHow: z.string(),
  datedOn: z.string(),
  photos: Photos,
  files: Files,
  note: z.string(),
  when: WhenDraft,
});

function ProofForm({ handOver }: { readonly handOver: HandOverState }) {
  const { state, go, moment, now, zone } = useShell();
  const { handOverId, collector } = handOver.body;
  const page = `hand-overs/${handOverId}`;
  const form = useForm(`proof-${handOverId}`, Draft, () => ({
    left: [],
    saidBy: collector.name,
    document: '',
    treatedHow: '',
    datedOn: '',
    photos: [],
    files: [],
    note: '',
    when: '',
  }));
  const pictures = usePhotos(form, w.proofPhotos);
  const papers = useFiles(form, w.proofFiles);
  const { write, fault, busy } = useWriting(form);
  const { tried, tryNow } = useTried();
  const { value, change } = form;
  const ids = awaited(state.value, handOver);
  const today = calendarDay(now.value, zone);
  const datedFault = value.datedOn > today ? w.proofDatedFault : undefined;
  async function keep(): Promise<void> {
    tryNow();
    const { left, saidBy, document, treatedHow, datedOn, note, when } = form.latest();
    const at = momentStated(when, moment());
    const containerIds = ids.filter((id) => !left.includes(id));
    if (at === null || containerIds.length === 0 || datedOn > today) return;
    const [photos, files] = [await pictures.settled(), await papers.settled()];
    if (photos === null || files === null) return;
    const told = {
      ...given('saidBy', saidBy),
      ...given('document', document),
      ...given('treatedHow', treatedHow),
      ...given('datedOn', datedOn),
      ...given('note', note),
      ...givenPhotos(photos),
      ...givenFiles(files),
    };
    if (!(await write({ do: 'file-proof', handOverId, containerIds, ...told }, at))) return;
    form.done();
    go(page, 'replace');
  }
  if (ids.length === 0) return <NotKept says={w.proofNone} back={page} />;
  return (
    <Frame
      title={w.proofTitle}
      second={w.load(collector.name, calendarDayText(calendarDay(handOver.at, zone), now.value))}
      ways={[{ label: words.back, href: `#/${page}` }]}
      actions={<KeepButton fault={fault} busy={busy} keep={keep} label={w.proofKeep} />}
    >
      <Begun form={form} />
      <Part rule>
        <WhichOfLoad
          legend={w.proofWhich}
          ids={ids}
          left={value.left}
          onLeave={(left) => change({ left })}
          tried={tried}
        />
      </Part>
      <Part rule title={w.proofPaper}>
        <PhotoField {...pictures.field} />
        <FileField {...papers.field} />
      </Part>
      <Part rule title={w.proofWhat}>
        <PickOrWrite
          label={w.proofFrom}
          value={value.saidBy}
          known={[collector.name, ...knownCollectors(state.value).map(({ name }) => name)]}
          onInput={(saidBy) => change({ saidBy })}
          optional
        />
        <TextField
          label={w.proofNumber}
          value={value.document}
          maxLength={120}
          hint={words.optional}
          onInput={(document) => change({ document })}
        />
        <TextField
          label={w.proofHow}
          value={value.treatedHow}
          maxLength={120}
          hint={w.proofHowHint}
          onInput={(treatedHow) => change({ treatedHow })}
        />
        <TextField
          label={w.proofDated}
          kind="date"
          value={value.datedOn}
          hint={words.optional}
          error={datedFault}
          onInput={(datedOn) => change({ datedOn })}
        />
        <NoteAndWhen form={form} label={w.note} />
        {tried && momentStated(value.when, moment()) === null && <Fault words={words.when.fault} />}
      </Part>
    </Frame>
  );
}

export function FileProof({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const handOver = state.value.handOvers.get(at.id ?? '');
  return handOver ? <ProofForm key={at.id} handOver={handOver} /> : <NotKept />;
}
