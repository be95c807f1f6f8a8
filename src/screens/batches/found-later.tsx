/** What was found out of a logged liquid later: a strip, a titration, a laboratory's number. It stands beside the rest. */
import * as z from 'zod/mini';
import { liquorOf } from '../../ledger/container-load';
import { Part } from '../../ui/page';
import { streamTitle } from '../amounts';
import { Begun } from '../begun';
import { lifeWords as w } from '../containers/life-words';
import { containerWords } from '../containers/words';
import { Fault, useWriting } from '../fault';
import { useForm } from '../form';
import { Frame } from '../frame';
import { KeepButton } from '../keep-button';
import { NoteAndWhen } from '../note-and-when';
import { useShell } from '../shell';
import { given, useTried } from '../tried';
import { momentStated, WhenDraft } from '../when';
import { words } from '../words';
import { feedTold } from './evidence-from-batch';
import { evidenceWords } from './evidence-words';
import { EvidenceDraft, emptyEvidence, readEvidence } from './liquid-draft';
import { EvidenceFields } from './liquid-lines';

const Draft = z.extend(EvidenceDraft, { note: z.string(), when: WhenDraft });

export function FoundLater({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state, go, moment } = useShell();
  const streamId = at.stream ?? '';
  const stream = state.value.streams.get(streamId);
  const form = useForm(`found-later-${streamId}`, Draft, () => ({ ...emptyEvidence(), note: '', when: '' }));
  const { write, fault, setFault, busy } = useWriting(form);
  const { tried, tryNow } = useTried();
  const { note, when } = form.value;
  const batch = state.value.batches.get(stream?.body.batchId ?? '');
  const feed = stream ? feedTold(batch, stream.body.stream) : null;
  const { wrong, ...found } = readEvidence(form.value, feed);
  const page = `streams/${streamId}`;
  const ways = [{ label: words.back, href: `#/${page}` }];
  if (!stream?.body.liquid) return <Frame title={evidenceWords.gone} ways={ways} />;
  const nothing = found.findings.length + found.freeAcid.length === 0 && found.density === undefined;
  async function keep(): Promise<void> {
    tryNow();
    const at = momentStated(when, moment());
    if (wrong || at === null) return;
    if (nothing) return setFault(w.laterNothing);
    const tested = {
      streamId,
      ...(found.density ? { density: found.density } : {}),
      findings: [...found.findings],
      freeAcid: [...found.freeAcid],
      ...given('note', note),
    };
    if (!(await write({ do: 'log-stream-test', ...tested }, at))) return;
    form.done();
    go(page, 'replace');
  }
  return (
    <Frame
      title={w.laterTitle}
      second={w.laterSecond(streamTitle(state.value, streamId))}
      ways={ways}
      actions={<KeepButton fault={fault} busy={busy} keep={keep} label={w.laterKeep} />}
    >
      <Begun form={form} />
      <Part>
        <EvidenceFields
          draft={form.value}
          change={form.change}
          batch={batch}
          feed={feed}
          liquor={liquorOf(state.value, streamId) ?? null}
          tried={tried}
        />
        <NoteAndWhen form={form} label={containerWords.note} />
        {tried && wrong && <Fault words={words.number.look} />}
      </Part>
    </Frame>
  );
}
