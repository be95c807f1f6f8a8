/** A load that was refused, all of it or some, and stands here again. */
import * as z from 'zod/mini';
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
import { given, givenFiles, givenPhotos, missing, useTried } from '../tried';
import { momentStated, WhenDraft } from '../when';
import { words } from '../words';
import { knownCollectors } from './collectors';
import { away } from './load';
import { NotKept } from './not-kept';
import { DaysRunOn } from './returned';
import { WhichOfLoad } from './which';
import { handOverWords as w } from './words';

const Draft = z.object({
  /** Did not come back. */
  left: z.array(z.string()),
  why: z.string(),
  saidBy: z.string(),
  document: z.string(),
  photos: Photos,
  files: Files,
  note: z.string(),
  when: WhenDraft,
});

function BackForm({ handOver }: { readonly handOver: HandOverState }) {
  const { state, go, moment, now, zone } = useShell();
  const { handOverId, collector } = handOver.body;
  const page = `hand-overs/${handOverId}`;
  const form = useForm(`back-${handOverId}`, Draft, () => ({
    left: [],
    why: '',
    saidBy: '',
    document: '',
    photos: [],
    files: [],
    note: '',
    when: '',
  }));
  const pictures = usePhotos(form, w.photos);
  const papers = useFiles(form, w.files);
  const { write, fault, busy } = useWriting(form);
  const { tried, tryNow } = useTried();
  const { value, change } = form;
  const ids = away(state.value, handOver);
  async function keep(): Promise<void> {
    tryNow();
    const { left, why, saidBy, document, note, when } = form.latest();
    const at = momentStated(when, moment());
    const containerIds = ids.filter((id) => !left.includes(id));
    if (at === null || containerIds.length === 0 || missing(why)) return;
    const [photos, files] = [await pictures.settled(), await papers.settled()];
    if (photos === null || files === null) return;
    const told = {
      ...given('saidBy', saidBy),
      ...given('document', document),
      ...given('note', note),
      ...givenPhotos(photos),
      ...givenFiles(files),
    };
    if (!(await write({ do: 'log-rejected-load', handOverId, containerIds, why: why.trim(), ...told }, at)))
      return;
    form.done();
    go(page, 'replace');
  }
  if (ids.length === 0) return <NotKept says={w.backNone} back={page} />;
  return (
    <Frame
      title={w.backTitle}
      second={w.load(collector.name, calendarDayText(calendarDay(handOver.at, zone), now.value))}
      ways={[{ label: words.back, href: `#/${page}` }]}
      actions={<KeepButton fault={fault} busy={busy} keep={keep} label={w.backKeep} />}
    >
      <Begun form={form} />
      <Part rule>
        <WhichOfLoad
          legend={w.backWhich}
          ids={ids}
          left={value.left}
          onLeave={(left) => change({ left })}
          tried={tried}
        />
        <p>{w.backThen}</p>
        <DaysRunOn />
      </Part>
      <Part rule>
        <TextField
          label={w.backWhy}
          kind="lines"
          value={value.why}
          maxLength={2000}
          error={tried ? missing(value.why) : undefined}
          onInput={(why) => change({ why })}
          required
        />
        <PickOrWrite
          label={w.backBy}
          value={value.saidBy}
          known={[collector.name, ...knownCollectors(state.value).map(({ name }) => name)]}
          onInput={(saidBy) => change({ saidBy })}
          optional
        />
        <TextField
          label={w.backNumber}
          value={value.document}
          maxLength={120}
          hint={words.optional}
          onInput={(document) => change({ document })}
        />
        <PhotoField {...pictures.field} />
        <FileField {...papers.field} />
        <NoteAndWhen form={form} label={w.note} />
        {tried && momentStated(value.when, moment()) === null && <Fault words={words.when.fault} />}
      </Part>
    </Frame>
  );
}

export function LoadBack({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const handOver = state.value.handOvers.get(at.id ?? '');
  return handOver ? <BackForm key={at.id} handOver={handOver} /> : <NotKept />;
}
