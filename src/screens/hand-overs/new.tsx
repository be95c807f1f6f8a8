/** Handing containers over while the collector stands there: what leaves, how much, to whom, two signatures, their paper. */
import { useMemo } from 'preact/hooks';
import type { State } from '../../ledger/state';
import { Button } from '../../ui/button';
import { TickGroup } from '../../ui/choices';
import { FileField } from '../../ui/file-field';
import { Mark } from '../../ui/marks';
import { Part } from '../../ui/page';
import { PhotoField } from '../../ui/photo-field';
import { Row, Rows } from '../../ui/row';
import { SelectField } from '../../ui/select-field';
import { TextField } from '../../ui/text-field';
import { dayText } from '../amounts';
import { Begun } from '../begun';
import { Fault, useWriting } from '../fault';
import { useFiles } from '../files/use-files';
import { type Form, useForm } from '../form';
import { Frame } from '../frame';
import { KeepButton } from '../keep-button';
import { NoteAndWhen } from '../note-and-when';
import { usePhotos } from '../photos/use-photos';
import { PickOrWrite } from '../pick-or-write';
import { useShell } from '../shell';
import { SignHere, signingFault } from '../signing';
import { missing, useTried } from '../tried';
import { momentStated } from '../when';
import { words } from '../words';
import { beforeItLeaves } from './before';
import { knownCollectors, withCollector } from './collectors';
import {
  emptyHandOver,
  HandOverDraft,
  handOverIntention,
  mayLeave,
  paperChosen,
  papersOf,
  withDriver,
} from './draft';
import styles from './hand-overs.module.css';
import { Leaving } from './leaving';
import { handOverWords as w } from './words';

type PartProps = { readonly form: Form<HandOverDraft>; readonly tried: boolean };

function WhatLeaves({ form, tried }: PartProps) {
  const { state } = useShell();
  const { value, change } = form;
  const { chosen, theirs } = value;
  const all = mayLeave(state.value, chosen);
  const aside = all.flatMap(({ body, leavingSince }) => (leavingSince === null ? [] : [body.containerId]));
  const choose = (id: string, ticked: boolean): void =>
    change({ chosen: ticked ? [...chosen, id] : chosen.filter((one) => one !== id) });
  if (all.length === 0) return <p>{w.noContainers}</p>;
  return (
    <>
      {aside.some((id) => !chosen.includes(id)) && (
        <Button second={w.allSecond} onTap={() => change({ chosen: [...new Set([...aside, ...chosen])] })}>
          {w.allSetAside(aside.length)}
        </Button>
      )}
      <TickGroup legend={w.whatLeaves} error={tried && chosen.length === 0 ? w.chooseOne : undefined}>
        <ul class={styles.choices}>
          {all.map((container) => {
            const id = container.body.containerId;
            return (
              <Leaving
                key={id}
                container={container}
                chosen={chosen.includes(id)}
                onChoose={(ticked) => choose(id, ticked)}
                theirs={theirs[id]}
                onTheirs={(typed) => {
                  const { [id]: _, ...others } = theirs;
                  change({ theirs: typed ? { ...others, [id]: typed } : others });
                }}
                tried={tried}
              />
            );
          })}
        </ul>
      </TickGroup>
    </>
  );
}

/** What is wrong or doubtful of it; nothing of it keeps anything from leaving. */
function BeforeItLeaves({ chosen }: { readonly chosen: readonly string[] }) {
  const { state } = useShell();
  const now = state.value;
  const rows = useMemo(() => beforeItLeaves(now, chosen), [now, chosen]);
  if (rows.length === 0) return null;
  return (
    <Part rule title={w.open} width="edge">
      <Rows label={w.open}>
        {rows.map(({ key, mark, title, second, href }) => (
          <Row
            key={key}
            mark={<Mark kind={mark} />}
            title={title}
            second={second}
            marked={mark === 'wrong'}
            href={href}
          />
        ))}
      </Rows>
      <Part>
        <p>{w.openSecond}</p>
      </Part>
    </Part>
  );
}

/** One line of words that may stay empty. */
function LineField({
  form,
  of,
  label,
  hint,
}: PartProps & {
  readonly of: 'licence' | 'vehicle' | 'document' | 'destination';
  readonly label: string;
  readonly hint?: string;
}) {
  return (
    <TextField
      label={label}
      value={form.value[of]}
      maxLength={120}
      hint={hint ?? words.optional}
      onInput={(text) => form.change({ [of]: text })}
    />
  );
}

function WhoTakes({ form, tried }: PartProps) {
  const { state, now } = useShell();
  const { value, change } = form;
  const known = knownCollectors(state.value);
  const papers = papersOf(state.value, value.chosen);
  return (
    <>
      <PickOrWrite
        label={w.collector}
        value={value.name}
        known={known.map(({ name }) => name)}
        onInput={(name) => change(withCollector(value, name, known))}
        error={tried ? missing(value.name) : undefined}
      />
      <LineField form={form} tried={tried} of="licence" label={w.licence} />
      <TextField
        label={w.contact}
        kind="lines"
        rows={2}
        value={value.contact}
        maxLength={500}
        hint={words.optional}
        onInput={(contact) => change({ contact })}
      />
      <TextField
        label={w.driver}
        value={value.driver}
        maxLength={120}
        hint={words.optional}
        onInput={(driver) => change(withDriver(value, driver))}
      />
      <LineField form={form} tried={tried} of="vehicle" label={w.vehicle} />
      <LineField form={form} tried={tried} of="document" label={w.document} hint={w.documentHint} />
      <LineField form={form} tried={tried} of="destination" label={w.destination} />
      {papers.length > 0 && (
        <SelectField
          label={w.paper}
          value={paperChosen(state.value, value)}
          options={[
            { value: '', label: w.paperNone },
            ...papers.map(({ body, at }) => ({
              value: body.paperId,
              label: `${dayText(at, now.value)}: ${body.fileName}`,
            })),
          ]}
          onChoose={(paperId) => change({ paperId })}
        />
      )}
    </>
  );
}

const Signatures = ({ form }: PartProps) => (
  <>
    {(['generator', 'collector'] as const).map((of) => (
      <SignHere
        key={of}
        label={of === 'generator' ? w.signGenerator : w.signCollector}
        value={form.value[of]}
        onChange={(signing) => form.change({ [of]: signing })}
        latest={() => form.latest()[of]}
        hint={w.signHint}
      />
    ))}
  </>
);

/** Where one comes from: a container's page, a set that was made, or the list. */
function backFrom(state: State, of = ''): string {
  if (state.containers.has(of)) return `#/containers/${of}`;
  return state.papers.has(of) ? '#/papers' : '#/hand-overs';
}

function HandOverForm({ of }: { readonly of: string | undefined }) {
  const { state, go, moment, person } = useShell();
  const holder = state.value.people.get(person.value ?? '')?.body.name;
  const form = useForm(`hand-over-${of ?? 'new'}`, HandOverDraft, () =>
    emptyHandOver(state.value, of, holder),
  );
  const pictures = usePhotos(form, w.photos);
  const files = useFiles(form, w.files);
  const { write, fault, busy } = useWriting(form);
  const { tried, tryNow } = useTried();
  const { value } = form;
  async function keep(): Promise<void> {
    tryNow();
    const at = momentStated(form.value.when, moment());
    const unnamed = signingFault(form.value.generator) ?? signingFault(form.value.collector);
    if (at === null || unnamed !== undefined) return;
    if (!handOverIntention(state.value, form.latest(), { photos: [], files: [] })) return;
    const [photos, papers] = [await pictures.settled(), await files.settled()];
    const intention =
      photos && papers && handOverIntention(state.value, form.latest(), { photos, files: papers });
    const written = intention && (await write(intention, at));
    const body = written?.[0]?.body;
    if (body?.kind !== 'handed-over') return;
    form.done();
    go(`hand-overs/${body.handOverId}`, 'replace');
  }
  const parts = { form, tried };
  return (
    <Frame
      title={w.newTitle}
      second={w.newSecond}
      ways={[{ label: words.back, href: backFrom(state.value, of) }]}
      actions={<KeepButton fault={fault} busy={busy} keep={keep} label={w.keep} />}
    >
      <Begun form={form} />
      <Part rule>
        <WhatLeaves {...parts} />
      </Part>
      <BeforeItLeaves chosen={value.chosen} />
      <Part rule title={w.whoTakes}>
        <WhoTakes {...parts} />
      </Part>
      <Part rule title={w.theirPaper}>
        <PhotoField {...pictures.field} />
        <FileField {...files.field} />
      </Part>
      <Part rule title={w.signatures}>
        <Signatures {...parts} />
      </Part>
      <Part rule>
        <NoteAndWhen form={form} label={w.note} />
        {tried && momentStated(value.when, moment()) === null && <Fault words={words.when.fault} />}
      </Part>
    </Frame>
  );
}

export function NewHandOver({ at }: { readonly at: Readonly<Record<string, string>> }) {
  return <HandOverForm key={at.of ?? ''} of={at.of} />;
}
