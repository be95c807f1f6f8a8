/** All containers, each a drawn vessel with what is in it. */
import { liquidContainers } from '../../ledger/liquid-containers';
import type { ContainerState, State } from '../../ledger/state';
import { Button } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { Vessel } from '../../ui/vessel';
import { amountText, contentsTitle, heldText } from '../amounts';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { twoWaysWords } from '../two-ways/words';
import { vesselDrawing } from '../vessel-drawing';
import { vesselWords, containerWords as w } from './words';

/** Drawn beside its row: one scale, small. */
const scale = 0.2;

export function ContainerRow({
  state,
  container,
}: {
  readonly state: State;
  readonly container: ContainerState;
}) {
  const { sign } = useShell();
  const { code, containerId, vessel, capacity } = container.body;
  const contents = contentsTitle(state, containerId);
  return (
    <Row
      lead={<Vessel {...vesselDrawing(state, container)} code={undefined} scale={scale} />}
      title={unbroken(code)}
      second={`${contents || w.empty}. ${amountText(capacity, sign.value)} ${vesselWords[vessel]}`}
      figure={heldText(container.holds, sign.value)}
      href={`#/containers/${containerId}`}
    />
  );
}

export function ContainerList() {
  const { state } = useShell();
  const containers = [...state.value.containers.values()];
  return (
    <Frame
      place="containers"
      title={w.title}
      actions={
        <Button look="primary" voice="serif" href="#/containers/new" second={w.openSecond}>
          {w.open}
        </Button>
      }
    >
      {containers.length === 0 ? (
        <Part>
          <p>{w.none}</p>
        </Part>
      ) : (
        <Rows label={w.title}>
          {containers.map((container) => (
            <ContainerRow key={container.body.containerId} state={state.value} container={container} />
          ))}
        </Rows>
      )}
      {liquidContainers(state.value).length > 0 && (
        <Part rule width="edge">
          <Rows>
            <Row
              title={twoWaysWords.open}
              second={twoWaysWords.openAll}
              href="#/containers/as-it-is-or-treated"
            />
          </Rows>
        </Part>
      )}
    </Frame>
  );
}
