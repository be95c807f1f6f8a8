/** On a container's page: the load that it left with last, gone or back again. */
import { cameBackWith } from '../../ledger/flags-of-hand-overs';
import type { ContainerState, State } from '../../ledger/state';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { handOverWords as w } from './words';

type Props = { readonly state: State; readonly container: ContainerState };

export function LoadDoor({ state, container }: Props) {
  const load = state.handOvers.get(container.handOverId ?? '') ?? cameBackWith(state, container)?.handOver;
  if (!load) return null;
  const { handOverId, collector } = load.body;
  return (
    <Part width="edge">
      <Rows>
        <Row
          start="text"
          title={w.withLoad(collector.name)}
          second={w.withLoadSecond}
          href={`#/hand-overs/${handOverId}`}
        />
      </Rows>
    </Part>
  );
}
