/** The end of a treatment: reached or stopped, and why. */

import * as z from 'zod/mini';
import { codeOfContainer } from '../../ledger/put-away';
import type { TreatmentState } from '../../ledger/state';
import { lastPh } from '../../ledger/treatment';
import { isAtEnd, stageOf } from '../../ledger/treatment-run';
import { formatWritten } from '../../quantities/format';
import { Choices } from '../../ui/choices';
import { unbroken } from '../../ui/figure-value';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { TextField } from '../../ui/text-field';
import { useNotAsked } from '../checklist/asked-rows';
import { Nowhere } from '../checklist/nowhere';
import { useWriting } from '../fault';
import { useForm } from '../form';
import { Frame } from '../frame';
import { KeepButton } from '../keep-button';
import { useShell } from '../shell';
import { given, useTried } from '../tried';
import { momentStated, When, WhenDraft } from '../when';
import { words } from '../words';
import { runWords as w } from './run-words';

const EndDraft = z.object({
  outcome: z.optional(z.enum(['reached', 'stopped'])),
  reason: z.string(),
  when: WhenDraft,
});

type Props = { readonly treatment: TreatmentState };

function useEnd({ treatment }: Props) {
  const { go, moment } = useShell();
  const { treatmentId } = treatment.body;
  const form = useForm(`end-${treatmentId}`, EndDraft, () => ({ outcome: undefined, reason: '', when: '' }));
  const { write, fault, busy } = useWriting(form);
  const { tried, tryNow } = useTried();
  const { outcome, reason, when } = form.value;
  const missing = outcome === 'stopped' && reason.trim() === '';
  async function keep(): Promise<void> {
    tryNow();
    const at = momentStated(when, moment());
    if (!outcome || missing || at === null) return;
    const written = await write(
      { do: 'end-treatment', treatmentId, outcome, ...given('reason', reason) },
      at,
    );
    if (!written) return;
    form.done();
    go(`treatment/${treatmentId}`, 'replace');
  }
  return { form, fault, busy, tried, missing, keep };
}

function NotReached({ treatment }: Props) {
  const { sign } = useShell();
  const last = lastPh(treatment)?.body.ph.value;
  const aim = treatment.body.targetPh;
  if (!aim || isAtEnd(treatment)) return null;
  return (
    <Notice mark="wrong" role="status" second={w.notReachedSecond}>
      {last && stageOf(treatment).points.at(-1)
        ? w.notReached(formatWritten(last, sign.value), formatWritten(aim, sign.value))
        : w.reachedUnread}
    </Notice>
  );
}

function End({ treatment }: Props) {
  const { state, sign } = useShell();
  const { treatmentId, containerId } = treatment.body;
  const { form, fault, busy, tried, missing, keep } = useEnd({ treatment });
  const { outcome, reason, when } = form.value;
  const last = lastPh(treatment)?.body.ph.value;
  const notAsked = useNotAsked(treatment.body.clearance);
  return (
    <Frame
      title={w.endTitle(unbroken(codeOfContainer(state.value, containerId) ?? ''))}
      second={w.endSecond}
      ways={[{ label: words.back, href: `#/treatment/${treatmentId}` }]}
      actions={<KeepButton fault={fault} busy={busy} keep={keep} label={w.keepEnd} />}
    >
      <Part>
        <Choices
          legend={w.outcome}
          choices={[
            {
              value: 'reached' as const,
              label: w.outcomes.reached,
              second: last ? w.reachedSecond(formatWritten(last, sign.value)) : undefined,
            },
            { value: 'stopped' as const, label: w.outcomes.stopped },
          ]}
          value={outcome}
          onChoose={(chosen) => form.change({ outcome: chosen })}
          error={tried && !outcome ? words.choice.missing : undefined}
        />
      </Part>
      {outcome === 'reached' && <NotReached treatment={treatment} />}
      {notAsked !== null && (
        <Part>
          <p>{notAsked}</p>
        </Part>
      )}
      <Part>
        <TextField
          label={w.reason}
          value={reason}
          kind="lines"
          maxLength={2000}
          hint={outcome === 'stopped' ? undefined : words.optional}
          error={tried && missing ? w.reasonMissing : undefined}
          onInput={(typed) => form.change({ reason: typed })}
        />
        <When value={when} onInput={(stated) => form.change({ when: stated })} />
      </Part>
    </Frame>
  );
}

export function RunEnd({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const treatment = state.value.treatments.get(at.treatment ?? '');
  return treatment ? <End treatment={treatment} /> : <Nowhere>{w.gone}</Nowhere>;
}
