/** What was read in the pot: pH and with what, temperature, colour, metals in the clear liquid. */

import { howKnownWords } from '../../chemistry/evidence-words';
import { codeOfContainer } from '../../ledger/put-away';
import type { TreatmentState } from '../../ledger/state';
import { metalSymbols, metals } from '../../reference/tables';
import { Choices } from '../../ui/choices';
import { unbroken } from '../../ui/figure-value';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { SelectField } from '../../ui/select-field';
import { TextField } from '../../ui/text-field';
import { metalLines } from '../batches/evidence-asks';
import { fitted, type MetalDraft, readMetal, withLine } from '../batches/evidence-draft';
import { EvidenceLines } from '../batches/evidence-lines';
import { logWords } from '../batches/words';
import { Begun } from '../begun';
import { Nowhere } from '../checklist/nowhere';
import { capital } from '../containers/load-table';
import { useWriting } from '../fault';
import { type Form, useForm } from '../form';
import { Frame } from '../frame';
import { KeepButton } from '../keep-button';
import { NumberField } from '../number-field';
import { useShell } from '../shell';
import { useTried } from '../tried';
import { momentStated, When } from '../when';
import { words } from '../words';
import {
  emptyPotMetal,
  emptyReading,
  instrumentsFor,
  ReadingDraft,
  type ReadingReads,
  readReading,
} from './run-reading-draft';
import { runWords as w } from './run-words';

type Fields = { readonly form: Form<ReadingDraft>; readonly tried: boolean };

/** Ways that measure in the pot itself. */
const ways = (['strip', 'photometer', 'assay'] as const).map((value) => ({
  value: value as MetalDraft['by'],
  label: howKnownWords[value] ?? value,
}));

function Metals({ form, tried }: Fields) {
  const drafts = form.value.metals;
  const told = new Set(drafts.map(({ metal }) => metal));
  const set = (i: number, draft: MetalDraft): void =>
    form.change({ metals: drafts.map((one, j) => (j === i ? draft : one)) });
  return (
    <Part rule>
      <details open={drafts.some(({ a }) => a.typed !== '')}>
        <summary>{w.metalsTitle}</summary>
        <p>{w.metalsHint}</p>
        {drafts.map((draft, i) => {
          const name = capital(metals[draft.metal].name);
          const lines = metalLines(draft.by, name);
          return (
            <EvidenceLines
              key={draft.metal}
              name={name}
              by={draft.by}
              ways={ways}
              knownLabel={words.howKnown}
              onBy={(by) =>
                set(i, fitted({ ...draft, by }, metalLines(by, name), metalLines(draft.by, name)))
              }
              draft={draft}
              lines={lines}
              onLine={(key, field) => set(i, withLine(draft, lines, key, field))}
              read={readMetal(draft)}
              tried={tried}
            />
          );
        })}
        <SelectField
          label={logWords.addMetal}
          value={undefined}
          none={logWords.addMetalNone}
          options={metalSymbols
            .filter((metal) => !told.has(metal))
            .map((metal) => ({ value: metal, label: capital(metals[metal].name) }))}
          onChoose={(metal) => form.change({ metals: [...drafts, emptyPotMetal(metal)] })}
        />
      </details>
    </Part>
  );
}

function Pot({ form, tried, reads, treatment }: Fields & { reads: ReadingReads; treatment: TreatmentState }) {
  const { ph, instrument, temperature, colour, when } = form.value;
  return (
    <Part>
      <NumberField
        label={w.ph}
        field={ph}
        units={['1']}
        onChange={(changed) => form.change({ ph: changed })}
        read={reads.ph}
        optional
        hint={null}
      />
      <Choices
        legend={w.instrument}
        choices={instrumentsFor(treatment).map((value) => ({ value, label: w.instruments[value] }))}
        value={instrument}
        onChoose={(chosen) => form.change({ instrument: chosen })}
        error={tried && reads.instrumentMissing ? w.instrumentMissing : undefined}
      />
      <NumberField
        label={w.temperature}
        field={temperature}
        units={['°C']}
        onChange={(changed) => form.change({ temperature: changed })}
        read={reads.temperature}
        optional
      />
      <SelectField
        label={w.colour}
        value={colour}
        options={[{ value: '', label: w.colourNone }, ...w.colours.map((value) => ({ value, label: value }))]}
        onChoose={(chosen) => form.change({ colour: chosen })}
      />
      <When value={when} onInput={(stated) => form.change({ when: stated })} />
    </Part>
  );
}

function Reading({ treatment }: { readonly treatment: TreatmentState }) {
  const { state, go, moment } = useShell();
  const { treatmentId, containerId } = treatment.body;
  const form = useForm(`reading-${treatmentId}`, ReadingDraft, emptyReading);
  const { write, fault, busy } = useWriting(form);
  const { tried, tryNow } = useTried();
  const reads = readReading(form.value);
  async function keep(): Promise<void> {
    tryNow();
    const at = momentStated(form.value.when, moment());
    if (!reads.written || at === null) return;
    const written = await write({ do: 'log-pot-reading', treatmentId, ...reads.written }, at);
    if (!written) return;
    form.done();
    go(`treatment/${treatmentId}`, 'replace');
  }
  return (
    <Frame
      title={w.readingTitle(unbroken(codeOfContainer(state.value, containerId) ?? ''))}
      second={w.readingSecond}
      ways={[{ label: words.back, href: `#/treatment/${treatmentId}` }]}
      actions={
        <KeepButton fault={fault} busy={busy} keep={keep} label={w.keepReading}>
          {tried && reads.nothing && (
            <Notice mark="wrong" role="alert">
              {w.nothingRead}
            </Notice>
          )}
        </KeepButton>
      }
    >
      <Begun form={form} />
      <Pot form={form} tried={tried} reads={reads} treatment={treatment} />
      <Metals form={form} tried={tried} />
      <Part>
        <TextField
          label={w.noteToo}
          value={form.value.note}
          maxLength={2000}
          hint={words.optional}
          onInput={(note) => form.change({ note })}
        />
      </Part>
    </Frame>
  );
}

export function RunReading({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const treatment = state.value.treatments.get(at.treatment ?? '');
  return treatment ? <Reading treatment={treatment} /> : <Nowhere>{w.gone}</Nowhere>;
}
