/** A clearance told to somebody who is not there: read it, then hand it to whatever sends it. */
import { useState } from 'preact/hooks';
import { phoneOf } from '../../ledger/clock-links';
import type { ChecklistState } from '../../ledger/state';
import { Button, Buttons } from '../../ui/button';
import { Part } from '../../ui/page';
import { momentText } from '../amounts';
import { stepWords } from '../batches/words';
import { codeOf } from '../checklist/list-for';
import { words } from '../checklist/words';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { textMessage } from '../telephone';
import styles from './clocks.module.css';
import { type MessageParts, messageText } from './message-text';
import { tellWords as w } from './words';

/** A call that was missed is asked for at once. */
function ringing(at: string | undefined, now: string): MessageParts['ring'] {
  if (at === undefined) return null;
  return at > now ? { at: momentText(at, now) } : 'now';
}

/** The message of a finished list, from what the record knows. */
function useMessage({ body, who }: ChecklistState): string {
  const { state, now, record } = useShell();
  const { people, workshop } = state.value;
  const from = people.get(who ?? '')?.body;
  const code = codeOf(state.value, body);
  const { validUntil, second } = body;
  return messageText({
    from: from?.name ?? words.clearance.someone,
    // Whoever reads it knows no list: what is being done, and to what.
    step:
      code === undefined ? body.checklist.title : `${stepWords[body.step] ?? body.checklist.title}, ${code}`,
    place: body.place,
    workshop: workshop?.body,
    until: validUntil !== null && validUntil > now.value ? momentText(validUntil, now.value) : null,
    ring: ringing(second?.at, now.value),
    to: second?.name,
    phone: from?.phone ?? null,
    invented: record === 'demo',
  });
}

const mayShare = (text: string): boolean =>
  'share' in navigator && (navigator.canShare === undefined || navigator.canShare({ text }));

/** What came of handing it over: null while nothing did, or while the person thought better of it. */
async function shared(text: string): Promise<string | null> {
  try {
    await navigator.share({ text });
    return null;
  } catch (error) {
    if (!(error instanceof DOMException)) throw error;
    return error.name === 'AbortError' ? null : w.notSent;
  }
}

async function copied(text: string): Promise<string> {
  try {
    await navigator.clipboard.writeText(text);
    return w.copied;
  } catch {
    // No clipboard outside a secure page, or the browser said no.
    return w.notCopied;
  }
}

function Ways({
  text,
  to,
  phone,
}: {
  readonly text: string;
  readonly to?: string | undefined;
  readonly phone: string | null;
}) {
  const [came, setCame] = useState<string | null>(null);
  const share = mayShare(text);
  const copy = (): void => void copied(text).then(setCame);
  return (
    <>
      {came !== null && <p role="alert">{came}</p>}
      <Buttons>
        {share && (
          <Button look="primary" onTap={() => void shared(text).then(setCame)}>
            {w.send}
          </Button>
        )}
        {(phone !== null || !share) && (
          <Button look={share ? 'door' : 'primary'} href={textMessage(phone, text)}>
            {to === undefined || phone === null ? w.smsOpen : w.sms(to)}
          </Button>
        )}
        <Button onTap={copy}>{w.copy}</Button>
      </Buttons>
    </>
  );
}

function Message({ told }: { readonly told: ChecklistState }) {
  const { state } = useShell();
  const text = useMessage(told);
  const to = told.body.second?.name;
  return (
    <Frame
      title={w.title}
      second={w.second}
      ways={[{ label: w.back, href: `#/clearance/${told.entryId}` }]}
      actions={<Ways text={text} to={to} phone={phoneOf(state.value, to)} />}
    >
      <Part>
        {state.value.workshop === null && <p role="alert">{w.noPlace}</p>}
        <p class={styles.message}>{text}</p>
      </Part>
    </Frame>
  );
}

export function MessageScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const told = useShell().state.value.checklists.get(at.entry ?? '');
  if (told) return <Message told={told} />;
  return (
    <Frame title={w.title}>
      <Part>
        <p role="alert">{words.clearance.lost}</p>
      </Part>
    </Frame>
  );
}
