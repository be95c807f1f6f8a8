/** All containers, each a drawn vessel with its state and what is in it; those that are gone last. */
import { type LifeName, lifeOf } from '../../ledger/container-life';
import { liquidContainers } from '../../ledger/liquid-containers';
import type { ContainerState, State } from '../../ledger/state';
import type { DecimalSign } from '../../quantities/format';
import { Button } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Mark } from '../../ui/marks';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { Vessel } from '../../ui/vessel';
import { amountText, contentsTitle, heldText } from '../amounts';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { twoWaysWords } from '../two-ways/words';
import { vesselDrawing } from '../vessel-drawing';
import { lifeStates, lifeWords } from './life-words';
import styles from './list.module.css';
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
  const { code, containerId, vessel, capacity, tray, place } = container.body;
  const { is } = lifeOf(state, container);
  const { word, mark } = lifeStates[is];
  const contents = is === 'not-determined' ? '' : contentsTitle(state, containerId) || w.empty;
  const stands = [`${amountText(capacity, sign.value)} ${vesselWords[vessel]}`, tray ?? place];
  return (
    <Row
      lead={
        <span class={styles.standing}>
          {mark && <Mark kind={mark} sizePx={24} />}
          <Vessel {...vesselDrawing(state, container)} code={undefined} scale={scale} />
        </span>
      }
      title={mark === undefined ? unbroken(code) : `${unbroken(code)}: ${word.toLowerCase()}`}
      second={[contents, stands.filter(Boolean).join(', ')].filter(Boolean).join('. ')}
      figure={amountOf(container, is, sign.value)}
      href={`#/containers/${containerId}`}
    />
  );
}

/** What it holds; of what nobody knows the level that was read, as far as one was. */
function amountOf({ holds, levels }: ContainerState, is: LifeName, sign: DecimalSign): string | undefined {
  if (is === 'gone') return undefined;
  if (is !== 'not-determined') return heldText(holds, sign);
  const level = levels.at(-1)?.body.level;
  return level ? amountText(level, sign) : undefined;
}

function Containers({ all }: { readonly all: readonly ContainerState[] }) {
  const { state } = useShell();
  return (
    <Rows label={w.title}>
      {all.map((container) => (
        <ContainerRow key={container.body.containerId} state={state.value} container={container} />
      ))}
    </Rows>
  );
}

export function ContainerList() {
  const { state } = useShell();
  const containers = [...state.value.containers.values()];
  const here = containers.filter(({ goneSince }) => goneSince === null);
  const gone = containers.filter(({ goneSince }) => goneSince !== null);
  return (
    <Frame
      place="containers"
      title={w.title}
      actions={
        <>
          <Button look="primary" voice="serif" href="#/containers/new" second={w.openSecond}>
            {w.open}
          </Button>
          <Button href="#/containers/found" second={lifeWords.foundDoorSecond}>
            {lifeWords.foundDoor}
          </Button>
        </>
      }
    >
      {containers.length === 0 ? (
        <Part>
          <p>{w.none}</p>
        </Part>
      ) : (
        <Containers all={here} />
      )}
      {gone.length > 0 && (
        <Part rule width="edge">
          <details class={styles.gone}>
            <summary>{lifeWords.goneTitle(gone.length)}</summary>
            <Containers all={gone} />
          </details>
        </Part>
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
