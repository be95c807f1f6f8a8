/** Somebody's word on a candidate, or a code that they gave instead: who, when, in which document, with photos of it. */
import { Scheme } from '../../ledger/entries/candidates';
import type { ContainerState } from '../../ledger/state';
import { codeText } from '../../paperwork/candidate-words';
import { calendarDay } from '../../rules/clocks/calendar-day';
import { Choices } from '../../ui/choices';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { PhotoField } from '../../ui/photo-field';
import { Begun } from '../begun';
import { useWriting } from '../fault';
import { useForm } from '../form';
import { Frame } from '../frame';
import { KeepButton } from '../keep-button';
import { usePhotos } from '../photos/use-photos';
import { useShell } from '../shell';
import { faultless, given, givenPhotos, useTried } from '../tried';
import { words } from '../words';
import { candidatePath, candidatesPath } from './addresses';
import { CodeFields, faultsOf, SaidDraft, WhoFields } from './said-fields';
import { candidateWords as w } from './words';

type About = { readonly scheme: Scheme; readonly code: string };

/** @param about the candidate it is about; absent where they gave another code */
function SaidForm({ container, about }: { readonly container: ContainerState; readonly about?: About }) {
  const { go, now, zone } = useShell();
  const { containerId, code: container_ } = container.body;
  const form = useForm(
    about ? `candidate-${containerId}-${about.scheme}-${about.code}` : `candidate-${containerId}`,
    SaidDraft,
    (): SaidDraft => ({
      ...(about ? { scheme: about.scheme } : { answer: 'accepted' as const }),
      code: about?.code ?? '',
      saidBy: '',
      saidOn: '',
      document: '',
      note: '',
      photos: [],
    }),
  );
  const { value: draft, change } = form;
  const pictures = usePhotos(form);
  const { write, fault, busy } = useWriting(form);
  const { tried, tryNow } = useTried();
  const faults = faultsOf(draft, calendarDay(now.value, zone));
  const back = about ? candidatePath(containerId, about) : candidatesPath(containerId);
  async function keep(): Promise<void> {
    tryNow();
    const { scheme, answer } = draft;
    if (!faultless(faults) || scheme === undefined || answer === undefined) return;
    const photos = await pictures.settled();
    if (photos === null) return;
    const { code, saidBy, saidOn, document, note } = form.latest();
    const said = { scheme, code: code.trim(), answer, saidBy: saidBy.trim(), saidOn };
    const more = {
      ...given('document', document),
      ...given('note', note),
      ...givenPhotos(photos),
    };
    if (!(await write({ do: 'answer-candidate', containerId, ...said, ...more }))) return;
    form.done();
    go(candidatePath(containerId, said), 'replace');
  }
  const fields = { draft, change, faults, tried };
  return (
    <Frame
      title={about ? w.sayTitle(codeText(about.code)) : w.anotherTitle(unbroken(container_))}
      second={about ? w.saySecond : w.anotherSecond}
      ways={[{ label: words.back, href: `#/${back}` }]}
      actions={<KeepButton fault={fault} busy={busy} keep={keep} label={w.keep} />}
    >
      <Begun form={form} />
      <Part>
        {about ? (
          <Choices
            legend={w.answer}
            value={draft.answer}
            choices={(['accepted', 'refused'] as const).map((value) => ({
              value,
              label: w.answers[value],
              second: w.answersSecond[value],
            }))}
            onChoose={(answer) => change({ answer })}
            error={tried ? faults.answer : undefined}
          />
        ) : (
          <CodeFields {...fields} />
        )}
        <WhoFields {...fields} />
        <PhotoField {...pictures.field} />
        <p>{words.caution}</p>
      </Part>
    </Frame>
  );
}

type At = { readonly at: Readonly<Record<string, string>> };

export function SaidScreen({ at }: At) {
  const { state } = useShell();
  const container = state.value.containers.get(at.id ?? '');
  const scheme = Scheme.safeParse(at.scheme);
  if (!container || !scheme.success) return <Frame place="containers" title={w.unknownAddress} />;
  const about = { scheme: scheme.data, code: at.code ?? '' };
  return <SaidForm key={`${about.scheme} ${about.code}`} container={container} about={about} />;
}

export function AnotherScreen({ at }: At) {
  const { state } = useShell();
  const container = state.value.containers.get(at.id ?? '');
  return container ? (
    <SaidForm container={container} />
  ) : (
    <Frame place="containers" title={w.unknownAddress} />
  );
}
