/** Everything that can be said of a container or done with it now, each with a page of its own; its papers. */
import { mayBeDone } from '../../ledger/container-life';
import { Button, Buttons } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { Frame } from '../frame';
import { labelPageWords } from '../labels/words';
import { useShell } from '../shell';
import { words } from '../words';
import { doingHref } from './doing';
import { doingWords, lifeWords } from './life-words';
import { containerWords as w } from './words';

export function MoreOfContainer({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const id = at.id ?? '';
  const container = state.value.containers.get(id);
  return (
    <Frame
      title={w.moreTitle(unbroken(container?.body.code ?? ''))}
      ways={[{ label: words.back, href: `#/containers/${id}` }]}
    >
      <Part>
        <Buttons>
          {container &&
            mayBeDone(state.value, container).map((doing) => (
              <Button key={doing} href={doingHref(container, doing)} second={doingWords[doing].second}>
                {doingWords[doing].short}
              </Button>
            ))}
        </Buttons>
      </Part>
      <Part rule>
        <Buttons>
          <Button href={`#/containers/${id}/label`} second={labelPageWords.openSecond}>
            {labelPageWords.open}
          </Button>
          <Button href={`#/papers/new/${id}`}>{w.makePapers}</Button>
          <Button href={`#/containers/${id}/history`} second={lifeWords.historySecond}>
            {lifeWords.history}
          </Button>
        </Buttons>
      </Part>
    </Frame>
  );
}
