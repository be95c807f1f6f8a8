/** Somebody says what is in a container: the kind of waste, how much, the evidence, who says so and how they know. */
import * as z from 'zod/mini';
import { isVolume } from '../../ledger/amounts';
import { ContentsDetermined } from '../../ledger/entries/containers';
import { Photos } from '../../ledger/entries/photos';
import type { ContainerState } from '../../ledger/state';
import { StreamKind } from '../../safety/stream-kind';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { PhotoField } from '../../ui/photo-field';
import { SelectField } from '../../ui/select-field';
import { TextField } from '../../ui/text-field';
import { liquids } from '../batches/choose-stream';
import { draftLiquor, emptyLiquid, LiquidDraft, readLiquid } from '../batches/liquid-draft';
import { LiquidLines } from '../batches/liquid-lines';
import { emptySolid, readSolid, SolidDraft } from '../batches/solid-draft';
import { SolidLines } from '../batches/solid-lines';
import { logWords } from '../batches/words';
import { Begun } from '../begun';
import { Fault, useWriting } from '../fault';
import { type Form, useForm } from '../form';
import { Frame } from '../frame';
import { KeepButton } from '../keep-button';
import { usePhotos } from '../photos/use-photos';
import { PickOrWrite } from '../pick-or-write';
import { useShell } from '../shell';
import { given, givenPhotos, missing, useTried } from '../tried';
import { momentStated, When, WhenDraft } from '../when';
import { streamName, words } from '../words';
import { howWords, lifeWords as w } from './life-words';
import { useNames } from './use-names';
import { containerWords } from './words';

const Draft = z.object({
  kind: z.union([z.literal(''), StreamKind]),
  liquid: LiquidDraft,
  solid: SolidDraft,
  colour: z.string(),
  how: ContentsDetermined.shape.how,
  saidBy: z.string(),
  document: z.string(),
  note: z.string(),
  photos: Photos,
  when: WhenDraft,
});
type Draft = z.infer<typeof Draft>;

/** The level that was read last stands in the form already. */
function emptyFor({ levels }: ContainerState): Draft {
  const level = levels.at(-1)?.body.level;
  const read = level && { typed: level.value, unit: level.unit };
  const [liquid, solid] = [emptyLiquid(), emptySolid()];
  return {
    kind: '',
    liquid: level && isVolume(level) && read ? { ...liquid, volume: read } : liquid,
    solid: level && !isVolume(level) && read ? { ...solid, wetMass: read } : solid,
    colour: '',
    how: 'tests',
    saidBy: '',
    document: '',
    note: '',
    photos: [],
    when: '',
  };
}

/** What the form comes to; null while a line is missing or wrong. */
function readPart({ kind, liquid, solid }: Draft) {
  if (kind === '') return null;
  if (liquids.includes(kind)) {
    const read = readLiquid(liquid, null);
    return read.liquid && !read.wrong ? { liquid: read.liquid } : null;
  }
  const read = readSolid(solid);
  return read.solid && !read.wrong ? { solid: read.solid } : null;
}

type LinesProps = { readonly form: Form<Draft>; readonly tried: boolean };

/** What it is, and how much of it. */
function WasteLines({ form, tried }: LinesProps) {
  const { state } = useShell();
  const { kind, liquid, solid } = form.value;
  const liquors = [...state.value.streams.values()].filter(({ body }) => body.liquid);
  const kinds = StreamKind.options.map((value) => ({ value, label: streamName[value] }));
  return (
    <>
      <SelectField
        label={w.kind}
        value={kind === '' ? undefined : kind}
        none={words.choose}
        options={kinds}
        onChoose={(chosen) => form.change({ kind: chosen })}
        error={tried && kind === '' ? words.choice.missing : undefined}
      />
      {kind !== '' &&
        (liquids.includes(kind) ? (
          <LiquidLines
            draft={liquid}
            change={(part) => form.change({ liquid: { ...liquid, ...part } })}
            liquor={draftLiquor(readLiquid(liquid, null).liquid)}
            tried={tried}
          />
        ) : (
          <SolidLines
            kind={kind}
            draft={solid}
            change={(part) => form.change({ solid: { ...solid, ...part } })}
            liquors={liquors.map(({ body }) => body.streamId)}
            tried={tried}
          />
        ))}
      <TextField
        label={logWords.colour}
        value={form.value.colour}
        maxLength={120}
        hint={words.optional}
        onInput={(colour) => form.change({ colour })}
      />
    </>
  );
}

/** Who says so, and how they know. */
function WordLines({ form, tried }: LinesProps) {
  const names = useNames();
  const { how, saidBy, document, note } = form.value;
  return (
    <>
      <PickOrWrite
        label={w.saidBy}
        value={saidBy}
        known={names.all}
        onInput={(name) => form.change({ saidBy: name })}
        error={tried ? missing(saidBy) : undefined}
      />
      <SelectField
        label={w.how}
        value={how}
        options={ContentsDetermined.shape.how.options.map((value) => ({ value, label: howWords[value] }))}
        onChoose={(chosen) => form.change({ how: chosen })}
      />
      <TextField
        label={w.document}
        value={document}
        maxLength={120}
        hint={words.optional}
        onInput={(text) => form.change({ document: text })}
      />
      <TextField
        label={containerWords.note}
        value={note}
        maxLength={500}
        hint={words.optional}
        onInput={(text) => form.change({ note: text })}
      />
    </>
  );
}

function WhatItIsForm({ container }: { readonly container: ContainerState }) {
  const { go, moment } = useShell();
  const { containerId, code } = container.body;
  const form = useForm(`what-it-is-${containerId}`, Draft, () => emptyFor(container));
  const pictures = usePhotos(form);
  const { write, fault, busy } = useWriting(form);
  const { tried, tryNow } = useTried();
  const { kind, colour, how, saidBy, document, note, when } = form.value;
  const part = readPart(form.value);
  const complete = part !== null && saidBy.trim() !== '';
  async function keep(): Promise<void> {
    tryNow();
    const at = momentStated(when, moment());
    if (!complete || kind === '' || at === null) return;
    const photos = await pictures.settled();
    if (photos === null) return;
    const intention = {
      do: 'determine-contents',
      containerId,
      stream: { stream: kind, ...part, ...given('colour', colour) },
      how,
      saidBy: saidBy.trim(),
      ...given('document', document),
      ...given('note', note),
      ...givenPhotos(photos),
    } as const;
    if (!(await write(intention, at))) return;
    form.done();
    go(`containers/${containerId}`, 'replace');
  }
  return (
    <Frame
      title={w.determineTitle(unbroken(code))}
      second={w.determineSecond}
      ways={[{ label: words.back, href: `#/containers/${containerId}` }]}
      actions={<KeepButton fault={fault} busy={busy} keep={keep} label={w.keepWhatItIs} />}
    >
      <Begun form={form} />
      <Part>
        <WasteLines form={form} tried={tried} />
        <WordLines form={form} tried={tried} />
        <PhotoField {...pictures.field} />
        <When value={when} onInput={(stated) => form.change({ when: stated })} />
        {tried && !complete && <Fault words={words.number.look} />}
      </Part>
    </Frame>
  );
}

export function WhatItIs({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const container = state.value.containers.get(at.id ?? '');
  return container ? (
    <WhatItIsForm container={container} />
  ) : (
    <Frame place="containers" title={containerWords.gone} />
  );
}
