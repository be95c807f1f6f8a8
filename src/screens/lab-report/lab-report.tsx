/** What a laboratory reported of a sample of all that a container holds. */
import type { ContainerState } from '../../ledger/state';
import { calendarDay } from '../../rules/clocks/calendar-day';
import { unbroken } from '../../ui/figure-value';
import { FileField } from '../../ui/file-field';
import { Part } from '../../ui/page';
import { PhotoField } from '../../ui/photo-field';
import { TextField } from '../../ui/text-field';
import { Begun } from '../begun';
import { containerWords } from '../containers/words';
import { Fault, useWriting } from '../fault';
import { useFiles } from '../files/use-files';
import { type Form, useForm } from '../form';
import { Frame } from '../frame';
import { KeepButton } from '../keep-button';
import { NoteAndWhen } from '../note-and-when';
import { NumberField } from '../number-field';
import { usePhotos } from '../photos/use-photos';
import { PickOrWrite } from '../pick-or-write';
import { useShell } from '../shell';
import { given, givenFiles, givenPhotos, missing, useTried } from '../tried';
import { momentStated } from '../when';
import { words } from '../words';
import { emptyReport, knownLaboratories, LabDraft, readPh, resultsIn, wrongLines } from './draft';
import { ResultLines } from './lines';
import { labWords as w } from './words';

/** What is wrong with the day of the sample. */
const dayFault = (day: string, today: string): string | undefined =>
  day > today ? w.notYet : missing(day, words.choice.missing);

type HeadProps = { readonly form: Form<LabDraft>; readonly tried: boolean; readonly today: string };

/** Whose report it is, and of which sample. */
function HeadLines({ form: { value, change }, tried, today }: HeadProps) {
  const { state } = useShell();
  const fault = dayFault(value.sampledOn, today);
  return (
    <Part>
      <PickOrWrite
        label={w.laboratory}
        value={value.laboratory}
        known={knownLaboratories(state.value)}
        onInput={(laboratory) => change({ laboratory })}
        error={tried ? missing(value.laboratory) : undefined}
      />
      <TextField
        label={w.document}
        value={value.document}
        maxLength={120}
        hint={words.optional}
        onInput={(document) => change({ document })}
      />
      <TextField
        label={w.sampledOn}
        kind="date"
        value={value.sampledOn}
        hint={w.sampledHint}
        error={tried || value.sampledOn !== '' ? fault : undefined}
        onInput={(sampledOn) => change({ sampledOn })}
        required
      />
      <NumberField
        label={w.ph}
        field={value.ph}
        units={['1']}
        onChange={(ph) => change({ ph })}
        read={readPh(value.ph)}
        tried={tried}
        optional
      />
    </Part>
  );
}

function LabReportForm({ container }: { readonly container: ContainerState }) {
  const { go, moment, now, zone } = useShell();
  const { containerId, code } = container.body;
  const page = `containers/${containerId}`;
  const form = useForm(`lab-report-${containerId}`, LabDraft, () => emptyReport(container));
  const pictures = usePhotos(form, w.photos);
  const papers = useFiles(form, w.files);
  const { write, fault, setFault, busy } = useWriting(form);
  const { tried, tryNow } = useTried();
  const today = calendarDay(now.value, zone);
  const { laboratory, sampledOn, lines, ph } = form.value;
  const wrong = [
    missing(laboratory) !== undefined,
    dayFault(sampledOn, today) !== undefined,
    readPh(ph).state === 'wrong',
    wrongLines(lines).length > 0,
  ].includes(true);
  async function keep(): Promise<void> {
    setFault(null);
    const [first] = wrongLines(lines);
    if (first !== undefined) form.change({ open: first });
    tryNow();
    const at = momentStated(form.value.when, moment());
    if (wrong || at === null) return;
    const [read, results] = [readPh(ph), resultsIn(lines)];
    if (read.state !== 'written' && results.length === 0) return setFault(w.nothing);
    const [photos, files] = [await pictures.settled(), await papers.settled()];
    if (photos === null || files === null) return;
    const report = {
      laboratory: laboratory.trim(),
      sampledOn,
      ...(read.state === 'written' ? { ph: read.written } : {}),
      results,
      ...given('document', form.value.document),
      ...given('note', form.value.note),
      ...givenPhotos(photos),
      ...givenFiles(files),
    };
    if (!(await write({ do: 'log-lab-report', containerId, ...report }, at))) return;
    form.done();
    go(page, 'replace');
  }
  return (
    <Frame
      title={w.title(unbroken(code))}
      second={w.second}
      ways={[{ label: words.back, href: `#/${page}` }]}
      actions={<KeepButton fault={fault} busy={busy} keep={keep} label={w.keep} />}
    >
      <Begun form={form} />
      <HeadLines form={form} tried={tried} today={today} />
      <ResultLines form={form} tried={tried} />
      <Part rule>
        <PhotoField {...pictures.field} />
        <FileField {...papers.field} />
        <NoteAndWhen form={form} label={containerWords.note} />
        {tried && wrong && <Fault words={words.number.look} />}
      </Part>
    </Frame>
  );
}

export function LabReport({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const container = state.value.containers.get(at.id ?? '');
  return container ? (
    <LabReportForm key={at.id} container={container} />
  ) : (
    <Frame place="containers" title={containerWords.gone} />
  );
}
