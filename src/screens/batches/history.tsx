/** Every entry about one batch, the newest first. */
import { codeOfBatch } from '../../ledger/put-away';
import { unbroken } from '../../ui/figure-value';
import { ThingHistory } from '../record/thing-history';
import { useShell } from '../shell';
import { batchWords as w } from './words';

export function BatchHistory({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const id = at.batch ?? '';
  const code = codeOfBatch(state.value, id) ?? '';
  return (
    <ThingHistory
      thing={{ is: 'batch', id }}
      title={w.historyTitle(unbroken(code))}
      back={`#/batches/${id}`}
    />
  );
}
