/** A treatment that was begun before anything here allowed it: the record takes the truth, and marks it. */
import type { ContainerState } from '../../ledger/state';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { TextField } from '../../ui/text-field';
import { Nowhere } from '../checklist/nowhere';
import { useWriting } from '../fault';
import { useForm } from '../form';
import { Frame } from '../frame';
import { KeepButton } from '../keep-button';
import { useShell } from '../shell';
import { given, useTried } from '../tried';
import { momentStated, When } from '../when';
import { words } from '../words';
import { StageFields } from './run-stage-fields';
import { BeginDraft, beginDraftName, emptyBegin, stagesRead } from './run-stages';
import { runWords as w } from './run-words';

function Already({ container }: { readonly container: ContainerState }) {
  const shell = useShell();
  const { containerId, code } = container.body;
  const form = useForm(beginDraftName(containerId), BeginDraft, () => emptyBegin(shell, containerId));
  const { write, fault, busy } = useWriting(form);
  const { tried, tryNow } = useTried();
  const { stages, note, when } = form.value;
  async function keep(): Promise<void> {
    tryNow();
    const read = stagesRead(stages);
    const at = momentStated(when, shell.moment());
    if (!read || at === null) return;
    const written = await write(
      { do: 'log-treatment-happened', containerId, ...read, clearance: null, ...given('note', note) },
      at,
    );
    const body = written?.[0]?.body;
    if (body?.kind !== 'treatment-begun') return;
    form.done();
    shell.go(`treatment/${body.treatmentId}`, 'replace');
  }
  return (
    <Frame
      title={w.alreadyTitle(unbroken(code))}
      second={w.alreadySecond}
      ways={[{ label: words.back, href: `#/treatment/begin/${containerId}` }]}
      actions={<KeepButton fault={fault} busy={busy} keep={keep} label={w.alreadyWrite} />}
    >
      <StageFields form={form} tried={tried} />
      <Part rule>
        <When value={when} onInput={(stated) => form.change({ when: stated })} />
        <TextField
          label={w.note}
          value={note}
          kind="lines"
          maxLength={2000}
          hint={words.optional}
          onInput={(typed) => form.change({ note: typed })}
        />
      </Part>
    </Frame>
  );
}

export function TreatmentAlready({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const container = state.value.containers.get(at.container ?? '');
  return container ? <Already container={container} /> : <Nowhere>{w.noContainer}</Nowhere>;
}
