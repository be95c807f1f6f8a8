/** What was weighed and has gone in. The record takes it as it was, also against the plan. */

import * as z from 'zod/mini';
import { Agent } from '../../ledger/entries/treatments';
import { cardOf } from '../../ledger/flags-of-meetings';
import { codeOfContainer } from '../../ledger/put-away';
import { mostAtOnce } from '../../ledger/run-outlook';
import type { TreatmentState } from '../../ledger/state';
import { flagsOfAmmonia } from '../../ledger/treatment-flags';
import { type Look, nextLook, stageOf } from '../../ledger/treatment-run';
import { formatWritten } from '../../quantities/format';
import { baseIds, bases } from '../../reference/tables';
import { Button } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { SelectField } from '../../ui/select-field';
import { cardThen } from '../apart/refused';
import { Begun } from '../begun';
import { Nowhere } from '../checklist/nowhere';
import { useWriting } from '../fault';
import { readTyped, Typed, typed, useForm } from '../form';
import { Frame, hour } from '../frame';
import { KeepButton } from '../keep-button';
import { NumberField } from '../number-field';
import { agentName } from '../record/treatment-words';
import { useShell } from '../shell';
import { useTried } from '../tried';
import { momentStated, When, WhenDraft } from '../when';
import { words } from '../words';
import { useOutlook } from './run-outlook';
import { gramsText } from './run-plot';
import { runWords as w } from './run-words';

const DoseDraft = z.object({ agent: Agent, mass: Typed, purity: Typed, when: WhenDraft });
type DoseDraft = z.infer<typeof DoseDraft>;

const units = ['g', 'kg', 'lb'] as const;
const agents: readonly Agent[] = [...baseIds, 'iron'];

const readDose = ({ mass, purity }: DoseDraft) => ({
  mass: readTyped<'g' | 'kg' | 'lb'>(mass, { aboveZero: true }),
  purity: readTyped<'%'>(purity, { aboveZero: true, most: 100 }),
});

/** What is minded before it is written down; nothing of it keeps it from being written. */
function Minded({ look, over }: { readonly look: Look | null; readonly over: string | null }) {
  const { now } = useShell();
  return (
    <>
      {look && look.due > now.value && (
        <Notice mark="wrong" second={w.waitFirstSecond(hour(look.due))}>
          {w.waitFirst}
        </Notice>
      )}
      {over !== null && (
        <Notice mark="wrong" role="status" second={w.overPlanSecond}>
          {w.overPlan(over)}
        </Notice>
      )}
    </>
  );
}

function useDose(treatment: TreatmentState) {
  const { go, moment, state } = useShell();
  const { treatmentId, containerId } = treatment.body;
  const form = useForm(`dose-${treatmentId}`, DoseDraft, () => ({
    agent: stageOf(treatment).agent,
    mass: typed('g'),
    purity: typed('%'),
    when: '',
  }));
  const { write, fault, busy } = useWriting(form);
  const { tried, tryNow } = useTried();
  const reads = readDose(form.value);
  async function keep(): Promise<void> {
    tryNow();
    const { agent, when } = form.value;
    const { mass, purity } = reads;
    const at = momentStated(when, moment());
    if (mass.state !== 'written' || purity.state === 'wrong' || at === null) return;
    const stated = purity.state === 'written' ? { purity: purity.written } : {};
    const written = await write({ do: 'log-dose', treatmentId, agent, mass: mass.written, ...stated }, at);
    if (!written) return;
    form.done();
    const container = state.value.containers.get(containerId);
    const [card] = container ? flagsOfAmmonia(state.value, container).map(cardOf) : [];
    go(card ? cardThen(card, containerId) : `treatment/${treatmentId}`, 'replace');
  }
  return { form, reads, tried, fault, busy, keep };
}

function Dose({ treatment }: { readonly treatment: TreatmentState }) {
  const { state, sign } = useShell();
  const { treatmentId, containerId } = treatment.body;
  const { form, reads, tried, fault, busy, keep } = useDose(treatment);
  const { agent, mass, purity, when } = form.value;
  const found = useOutlook(treatment);
  const outlook = found?.ok && found.value.stage.agent === agent ? found.value : null;
  const next = outlook?.next;
  const over = outlook && reads.mass.state === 'written' ? mostAtOnce(outlook, reads.mass.written) : null;
  const stated = agent === 'iron' ? undefined : state.value.bases.get(agent)?.body.purity;
  const code = unbroken(codeOfContainer(state.value, containerId) ?? '');
  return (
    <Frame
      title={w.doseTitle(code)}
      second={w.doseSecond}
      ways={[{ label: words.back, href: `#/treatment/${treatmentId}` }]}
      actions={<KeepButton fault={fault} busy={busy} keep={keep} label={w.keepDose} />}
    >
      <Begun form={form} />
      <Part>
        {next && mass.typed === '' && (
          <Button
            onTap={() =>
              form.change({ mass: { typed: next.grams.toFixed().replace('.', sign.value), unit: 'g' } })
            }
          >
            {w.offered(gramsText(next.grams, sign.value))}
          </Button>
        )}
        <NumberField
          label={w.mass}
          field={mass}
          units={units}
          onChange={(changed) => form.change({ mass: changed })}
          read={reads.mass}
          tried={tried}
        />
      </Part>
      <Minded look={nextLook(treatment)} over={over && gramsText(over, sign.value)} />
      <Part>
        <SelectField
          label={w.agent}
          value={agent}
          options={agents.map((value) => ({ value, label: agentName(value) }))}
          onChoose={(chosen) => form.change({ agent: chosen })}
        />
        {agent !== 'iron' && (
          <NumberField
            label={w.purity}
            field={purity}
            units={['%']}
            onChange={(changed) => form.change({ purity: changed })}
            read={reads.purity}
            optional
            hint={w.purityEmpty(stated ? formatWritten(stated, sign.value) : bases[agent].purity.value)}
          />
        )}
        <When value={when} onInput={(typedWhen) => form.change({ when: typedWhen })} />
      </Part>
    </Frame>
  );
}

export function RunDose({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const treatment = state.value.treatments.get(at.treatment ?? '');
  return treatment ? <Dose treatment={treatment} /> : <Nowhere>{w.gone}</Nowhere>;
}
