/** What every page of a treatment asks first: whether the container is there, and whether a base may go in at all. */
import type { ComponentType } from 'preact';
import { unbroken } from '../../ui/figure-value';
import { Notice } from '../../ui/notice';
import { containerWords } from '../containers/words';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { words } from '../words';
import { BenchNeeded, benchHolds } from './bench-says';
import { whyNot } from './choice';
import { Doors } from './doors';
import { treatmentWords as w } from './words';

export type Pot = { readonly id: string; readonly code: string };

/** Nothing can be worked out: why, and what may still be done. */
function NotPlanned({ id, code }: Pot) {
  const { state } = useShell();
  const why = whyNot(state.value, id);
  const back = [{ label: words.back, href: `#/containers/${id}` }];
  return (
    <Frame title={w.title} second={code} ways={back}>
      <Notice
        mark={why === 'ammonia' ? 'stop' : 'unknown'}
        second={why === 'acid-open' && !benchHolds(state.value, id) ? w.benchNow : undefined}
      >
        {why === null || why === 'empty' ? w.empty : containerWords.noBase[why]}
      </Notice>
      <BenchNeeded state={state.value} containerId={id} />
      <Doors state={state.value} containerId={id} />
    </Frame>
  );
}

const Gone = () => (
  <Frame title={w.title} ways={[{ label: words.back, href: '#/containers' }]}>
    <Notice mark="unknown">{containerWords.gone}</Notice>
  </Frame>
);

type At = { readonly at: Readonly<Record<string, string>> };

/** The page of a container's treatment; `Planned` is drawn where something can be worked out. */
export const withPot = (Planned: ComponentType<Pot>): ComponentType<At> =>
  function OfPot({ at }) {
    const { state } = useShell();
    const id = at.id ?? '';
    const container = state.value.containers.get(id);
    if (!container) return <Gone />;
    const pot = { id, code: unbroken(container.body.code) };
    return whyNot(state.value, id) === null ? <Planned {...pot} /> : <NotPlanned {...pot} />;
  };
