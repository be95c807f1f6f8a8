/** Every entry about one container, the newest first. */
import { codeOfContainer } from '../../ledger/put-away';
import { unbroken } from '../../ui/figure-value';
import { ThingHistory } from '../record/thing-history';
import { useShell } from '../shell';
import { lifeWords as w } from './life-words';

export function ContainerHistory({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const id = at.id ?? '';
  const code = codeOfContainer(state.value, id) ?? '';
  return (
    <ThingHistory
      thing={{ is: 'container', id }}
      title={w.historyTitle(unbroken(code))}
      back={`#/containers/${id}`}
    />
  );
}
