/** Every entry about one batch, the newest first. */
import { unbroken } from '../../ui/figure-value';
import { ThingHistory } from '../record/thing-history';
import { useShell } from '../shell';
import { batchWords as w } from './words';

export function BatchHistory({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const id = at.batch ?? '';
  const code = state.value.batches.get(id)?.body.code ?? '';
  return (
    <ThingHistory
      thing={{ is: 'batch', id }}
      title={w.historyTitle(unbroken(code))}
      back={`#/batches/${id}`}
    />
  );
}
