/** Every entry about one container, the newest first. */
import { linesAbout } from '../../ledger/entries-about';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { Rows } from '../../ui/row';
import { Frame } from '../frame';
import { Line } from '../record/history';
import { useShell } from '../shell';
import { words } from '../words';
import { lifeWords as w } from './life-words';

export function ContainerHistory({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const id = at.id ?? '';
  const code = state.value.containers.get(id)?.body.code ?? '';
  return (
    <Frame title={w.historyTitle(unbroken(code))} ways={[{ label: words.back, href: `#/containers/${id}` }]}>
      <Part width="edge">
        <Rows>
          {linesAbout(state.value, { is: 'container', id })
            .toReversed()
            .map((line) => (
              <Line key={line.entry.id} line={line} />
            ))}
        </Rows>
      </Part>
    </Frame>
  );
}
