/** Writing a stream down and where it went, in one act of the person's. */
import { useState } from 'preact/hooks';
import type { Amount } from '../../ledger/entries/containers';
import type { StreamLogged } from '../../ledger/entries/streams';
import { vesselIntention } from '../containers/vessel-form';
import { useWriting } from '../fault';
import { useShell } from '../shell';
import { refusalWords } from '../words';
import { type IntoDraft, intoFault } from './into-container';

type Stated = Omit<StreamLogged, 'kind' | 'v' | 'streamId'>;

/**
 * @returns `keep` writes the stream; a container that should not take it is said first, and `keep` with `anyway` writes
 * it down as it happened
 * @param opened a new container was opened on the way: the form goes on with it, so that a second try opens no other
 */
export function useKeepStream(done: () => void, opened: (containerId: string) => void) {
  const { state, go, moment } = useShell();
  const writing = useWriting();
  const [against, setAgainst] = useState<string | null>(null);

  async function containerFor(into: IntoDraft): Promise<string | null | 'failed'> {
    if (into.where === 'later') return null;
    if (into.where !== 'new') return into.where;
    const intention = vesselIntention(into.vessel, moment());
    if (!intention) return 'failed';
    const body = (await writing.write(intention))?.[0]?.body;
    if (body?.kind !== 'container-opened') return 'failed';
    opened(body.containerId);
    return body.containerId;
  }

  async function keep(stream: Stated, amount: Amount, into: IntoDraft, anyway: boolean): Promise<void> {
    const fault = anyway ? null : intoFault(state.value, into, amount, stream.stream);
    setAgainst(fault && refusalWords(fault));
    if (fault) return;
    const containerId = await containerFor(into);
    if (containerId === 'failed') return;
    const written = await writing.write({
      do: 'log-stream',
      ...stream,
      ...(containerId === null ? {} : { placements: [{ containerId, amount }] }),
    });
    if (!written) return;
    done();
    go(containerId === null ? `batches/${stream.batchId}` : `containers/${containerId}`, 'replace');
  }
  return { keep, against, fault: writing.fault, busy: writing.busy };
}
