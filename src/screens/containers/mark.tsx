/** Something said of a container as a whole: what it is, what happened, when, a photo. One page for every mark. */
import * as z from 'zod/mini';
import { isNothing } from '../../ledger/amounts';
import { ContainerMarked } from '../../ledger/entries/containers';
import { Photos } from '../../ledger/entries/photos';
import type { ContainerState } from '../../ledger/state';
import { Button } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { PhotoField } from '../../ui/photo-field';
import { SelectField } from '../../ui/select-field';
import { TextField } from '../../ui/text-field';
import { heldText } from '../amounts';
import { Fault, useWriting } from '../fault';
import { useForm } from '../form';
import { Frame } from '../frame';
import { KeepButton } from '../keep-button';
import { usePhotos } from '../photos/use-photos';
import { PickOrWrite } from '../pick-or-write';
import { useShell } from '../shell';
import { given, givenPhotos, useTried } from '../tried';
import { momentStated, When, WhenDraft } from '../when';
import { words } from '../words';
import { contentsText } from './contents-text';
import { doingHref } from './doing';
import { doingWords, doubtWords, lifeWords as w } from './life-words';
import { useNames } from './use-names';
import { containerWords } from './words';

type Mark = ContainerMarked['mark'];
type Doubt = NonNullable<ContainerMarked['doubt']>;

const Draft = z.object({
  doubt: z.string(),
  saidBy: z.string(),
  to: z.string(),
  document: z.string(),
  note: z.string(),
  photos: Photos,
  when: WhenDraft,
});
type Draft = z.infer<typeof Draft>;

const empty = (): Draft => ({
  doubt: 'label-gone',
  saidBy: '',
  to: '',
  document: '',
  note: '',
  photos: [],
  when: '',
});

/** What each mark asks beside a note, a photo and when it was. */
const asks: Readonly<Partial<Record<Mark, readonly ('doubt' | 'saidBy' | 'to' | 'document')[]>>> = {
  'contents-doubtful': ['doubt'],
  'contents-known': ['saidBy'],
  gone: ['to', 'document'],
  'proof-filed': ['document'],
};

type FieldsProps = {
  readonly mark: Mark;
  readonly draft: Draft;
  readonly change: (part: Partial<Draft>) => void;
};

function Fields({ mark, draft, change }: FieldsProps) {
  const names = useNames();
  const asked = new Set(asks[mark]);
  return (
    <>
      {asked.has('doubt') && (
        <SelectField
          label={w.doubt}
          value={draft.doubt as Doubt}
          options={(Object.entries(doubtWords) as [Doubt, string][]).map(([value, label]) => ({
            value,
            label,
          }))}
          onChoose={(doubt) => change({ doubt })}
        />
      )}
      {asked.has('saidBy') && (
        <PickOrWrite
          label={w.saidBy}
          value={draft.saidBy}
          known={names.all}
          onInput={(saidBy) => change({ saidBy })}
          optional
        />
      )}
      {asked.has('to') && (
        <PickOrWrite
          label={w.to}
          value={draft.to}
          known={names.takers}
          onInput={(to) => change({ to })}
          optional
        />
      )}
      {asked.has('document') && (
        <TextField
          label={w.document}
          value={draft.document}
          maxLength={120}
          hint={w.documentHint}
          onInput={(document) => change({ document })}
        />
      )}
      <TextField
        label={w.note}
        value={draft.note}
        maxLength={500}
        hint={words.optional}
        onInput={(note) => change({ note })}
      />
    </>
  );
}

const toldOf = (mark: Mark, draft: Draft) => {
  const asked = new Set(asks[mark]);
  return {
    ...(asked.has('doubt') ? { doubt: draft.doubt as Doubt } : {}),
    ...(asked.has('saidBy') ? given('saidBy', draft.saidBy) : {}),
    ...(asked.has('to') ? given('to', draft.to) : {}),
    ...(asked.has('document') ? given('document', draft.document) : {}),
    ...given('note', draft.note),
  };
};

type FormProps = { readonly container: ContainerState; readonly mark: Mark };

function MarkForm({ container, mark }: FormProps) {
  const { state, go, moment, sign } = useShell();
  const { containerId, code } = container.body;
  const form = useForm(`mark-${containerId}-${mark}`, Draft, empty);
  const pictures = usePhotos(form);
  const { write, fault, busy } = useWriting(form);
  const { tried, tryNow } = useTried();
  const holds = !isNothing(container.holds);
  const page = `containers/${containerId}`;
  async function keep(): Promise<void> {
    tryNow();
    const at = momentStated(form.value.when, moment());
    if (at === null) return;
    const photos = await pictures.settled();
    if (photos === null) return;
    const told = { ...toldOf(mark, form.latest()), ...givenPhotos(photos) };
    if (!(await write({ do: 'mark-container', containerId, mark, ...told }, at))) return;
    form.done();
    // What leaks cannot wait for somebody to look for the way.
    go(mark === 'damaged' && (holds || container.levels.length > 0) ? `${page}/move-all` : page, 'replace');
  }
  return (
    <Frame
      title={w.marked(unbroken(code), doingWords[mark].short)}
      second={contentsText(state.value, container)}
      ways={[{ label: words.back, href: `#/${page}/more` }]}
      actions={<KeepButton fault={fault} busy={busy} keep={keep} label={w.keep} />}
    >
      {mark === 'emptied' && holds && (
        <>
          <Notice mark="wrong">{w.stillHolds(heldText(container.holds, sign.value))}</Notice>
          <Part>
            <Button href={`#/${page}/out`}>{w.takeOutFirst}</Button>
          </Part>
        </>
      )}
      {mark === 'gone' && (
        <Part>
          <Button href={doingHref(container, 'hand-over')} second={w.withCollectorSecond}>
            {w.withCollector}
          </Button>
        </Part>
      )}
      <Part>
        <Fields mark={mark} draft={form.value} change={form.change} />
        <PhotoField {...pictures.field} />
        <When value={form.value.when} onInput={(when) => form.change({ when })} />
        {tried && momentStated(form.value.when, moment()) === null && <Fault words={words.when.fault} />}
      </Part>
    </Frame>
  );
}

export function MarkScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const container = state.value.containers.get(at.id ?? '');
  const mark = ContainerMarked.shape.mark.safeParse(at.mark);
  if (!container || !mark.success)
    return (
      <Frame place="containers" title={containerWords.title}>
        <Part>
          <p>{containerWords.gone}</p>
        </Part>
      </Frame>
    );
  return <MarkForm key={mark.data} container={container} mark={mark.data} />;
}
