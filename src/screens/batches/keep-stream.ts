/** Writing a stream down and where it went, in one act of the person's. */
import { useState } from 'preact/hooks';
import type { Amount } from '../../ledger/entries/containers';
import type { StreamLogged } from '../../ledger/entries/streams';
import type { Refusal } from '../../ledger/refusal';
import { cardThen } from '../apart/refused';
import { vesselIntention } from '../containers/vessel-form';
import { useWriting } from '../fault';
import type { Form } from '../form';
import { useShell } from '../shell';
import { momentStated } from '../when';
import { refusalWords } from '../words';
import { type IntoDraft, intoFault } from './into-container';

type Stated = Omit<StreamLogged, 'kind' | 'v' | 'streamId'>;

export type Kept = {
  readonly stream: Stated;
  readonly amount: Amount;
  readonly into: IntoDraft;
  readonly when: string;
};

/** A fault that was said, and what stood in the form then: it goes as soon as that is changed. */
type Said = { readonly refusal: Refusal; readonly of: unknown };

/**
 * @returns `keep` writes the stream; a container that should not take it is said first, and a `keep` that has seen
 * those words writes it down as it happened
 * @param opened a new container was opened on the way: the form goes on with it, so that a second try opens no other
 */
export function useKeepStream(
  form: Pick<Form<object>, 'done' | 'latest'>,
  opened: (containerId: string) => void,
) {
  const { state, go, moment } = useShell();
  const writing = useWriting(form);
  const [said, setSaid] = useState<Said | null>(null);
  const refusal = said && said.of === form.latest() ? said.refusal : null;

  async function containerFor(into: IntoDraft, at: string | undefined): Promise<string | null | 'failed'> {
    if (into.where === 'later') return null;
    if (into.where !== 'new') return into.where;
    const intention = vesselIntention(into.vessel, at ?? moment());
    if (!intention) return 'failed';
    const body = (await writing.write(intention, at))?.[0]?.body;
    if (body?.kind !== 'container-opened') return 'failed';
    opened(body.containerId);
    return body.containerId;
  }

  /**
   * @param seen what it was refused for, when the person says that it is in already; null on the first try
   * @param card emergency card to open once it is written down
   */
  async function keep(
    { stream, amount, into, when }: Kept,
    seen: Refusal | null,
    card: string | null = null,
  ): Promise<void> {
    const at = momentStated(when, moment());
    if (at === null) return;
    const fault = intoFault(state.value, into, { amount, waste: stream, at: at ?? moment() });
    setSaid(fault && { refusal: fault, of: form.latest() });
    if (fault && (seen === null || refusalWords(fault) !== refusalWords(seen))) return;
    const containerId = await containerFor(into, at);
    if (containerId === 'failed') return;
    const placed = containerId === null ? {} : { placements: [{ containerId, amount }] };
    if (!(await writing.write({ do: 'log-stream', ...stream, ...placed }, at))) return;
    form.done();
    if (containerId === null) go(`batches/${stream.batchId}`, 'replace');
    else go(card === null ? `containers/${containerId}` : cardThen(card, containerId), 'replace');
  }
  const forget = (): void => setSaid(null);
  return { keep, refusal, forget, fault: writing.fault, busy: writing.busy };
}
