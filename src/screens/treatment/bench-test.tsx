/** A trial on the bench: what a sample took, scaled up, beside the model; earlier trials, and whether they still hold. */
import type { BenchTestState, ContainerState } from '../../ledger/state';
import { formatWritten } from '../../quantities/format';
import { baseIds, bases } from '../../reference/tables';
import { Choices } from '../../ui/choices';
import { unbroken } from '../../ui/figure-value';
import { Mark } from '../../ui/marks';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { SelectField } from '../../ui/select-field';
import { amountText, contentsTitle, momentText } from '../amounts';
import { Begun } from '../begun';
import { Nowhere } from '../checklist/nowhere';
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
  BenchDraft,
  type BenchReads,
  benchDraftName,
  emptyBench,
  massUnits,
  readBench,
  sampleUnits,
} from './bench-draft';
import { BenchEstimatePart } from './bench-estimate-part';
import { runWords as w } from './run-words';

type Fields = { readonly form: Form<BenchDraft>; readonly reads: BenchReads; readonly tried: boolean };

function Trial({ form, reads, tried }: Fields) {
  const { state, sign } = useShell();
  const { value: draft, change } = form;
  const stated = state.value.bases.get(draft.agent)?.body.purity;
  return (
    <Part>
      <NumberField
        label={w.benchVolume}
        field={draft.sample}
        units={sampleUnits}
        onChange={(sample) => change({ sample })}
        read={reads.sample}
        tried={tried}
      />
      <SelectField
        label={w.agent}
        value={draft.agent}
        options={baseIds.map((value) => ({ value, label: bases[value].name }))}
        onChoose={(agent) => change({ agent })}
      />
      <NumberField
        label={w.benchMass}
        field={draft.mass}
        units={massUnits}
        onChange={(mass) => change({ mass })}
        read={reads.mass}
        tried={tried}
      />
      <NumberField
        label={w.purity}
        field={draft.purity}
        units={['%']}
        onChange={(purity) => change({ purity })}
        read={reads.purity}
        optional
        hint={w.purityEmpty(stated ? formatWritten(stated, sign.value) : bases[draft.agent].purity.value)}
      />
      <NumberField
        label={w.benchEnd}
        field={draft.endPh}
        units={['1']}
        onChange={(endPh) => change({ endPh })}
        read={reads.endPh}
        tried={tried}
      />
      <Choices
        legend={w.instrument}
        choices={(['paper', 'meter'] as const).map((value) => ({ value, label: w.instruments[value] }))}
        value={draft.instrument}
        onChoose={(instrument) => change({ instrument })}
        error={tried && draft.instrument === undefined ? w.instrumentMissing : undefined}
      />
      <When value={draft.when} onInput={(when) => change({ when })} />
    </Part>
  );
}

function EarlierRow({ test }: { readonly test: BenchTestState }) {
  const { sign, now } = useShell();
  const { body, at, staleSince, entryId } = test;
  const stale = staleSince === null ? '' : `; ${w.benchStale(momentText(staleSince, now.value))}`;
  return (
    <Row
      mark={staleSince === null ? undefined : <Mark kind="unknown" />}
      start={staleSince === null ? 'text' : undefined}
      title={w.benchSaid(
        amountText(body.mass, sign.value),
        bases[body.agent].name.toLowerCase(),
        amountText(body.sampleVolume, sign.value),
        formatWritten(body.endPh, sign.value),
      )}
      second={`${momentText(at, now.value)}${stale}`}
      href={`#/record/entry/${entryId}`}
    />
  );
}

function Bench({ container }: { readonly container: ContainerState }) {
  const { state, go, moment } = useShell();
  const { containerId, code } = container.body;
  const form = useForm(benchDraftName(containerId), BenchDraft, emptyBench);
  const { write, fault, busy } = useWriting(form);
  const { tried, tryNow } = useTried();
  const reads = readBench(form.value);
  const tests = container.benchTests.toReversed();
  async function keep(): Promise<void> {
    tryNow();
    const at = momentStated(form.value.when, moment());
    if (!reads.trial || at === null) return;
    const written = await write({ do: 'log-bench-test', containerId, ...reads.trial }, at);
    if (!written) return;
    form.done();
    go(`containers/${containerId}`, 'replace');
  }
  return (
    <Frame
      title={w.benchTitle(unbroken(code))}
      second={contentsTitle(state.value, containerId) || w.benchSecond}
      ways={[{ label: words.back, href: `#/containers/${containerId}` }]}
      actions={<KeepButton fault={fault} busy={busy} keep={keep} label={w.keepBench} />}
    >
      <Begun form={form} />
      <Part>
        <p>{w.benchSecond}</p>
      </Part>
      <Trial form={form} reads={reads} tried={tried} />
      <BenchEstimatePart containerId={containerId} trial={reads.trial} />
      {tests.length > 0 && (
        <Part rule title={w.benchEarlier} width="edge">
          <Rows>
            {tests.map((test) => (
              <EarlierRow key={test.entryId} test={test} />
            ))}
          </Rows>
        </Part>
      )}
      <Part rule>
        <p>{words.caution}</p>
      </Part>
    </Frame>
  );
}

export function BenchTest({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const container = state.value.containers.get(at.id ?? '');
  return container ? <Bench container={container} /> : <Nowhere>{w.noContainer}</Nowhere>;
}
