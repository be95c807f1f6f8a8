/** All containers, each a drawn vessel with its state and what is in it; those that are gone last. */
import { isDoubted, lifeOf } from '../../ledger/container-life';
import { liquidContainers } from '../../ledger/liquid-containers';
import type { ContainerState, State } from '../../ledger/state';
import { seenIn } from '../../ledger/whole-of';
import type { DecimalSign } from '../../quantities/format';
import { Button } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Mark } from '../../ui/marks';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { Vessel } from '../../ui/vessel';
import { amountText, heldText } from '../amounts';
import { Frame } from '../frame';
import { scanWords } from '../scan/words';
import { useShell } from '../shell';
import { twoWaysWords } from '../two-ways/words';
import { vesselDrawing } from '../vessel-drawing';
import { contentsText } from './contents-text';
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
  const doubted = isDoubted(state, container);
  const contents = is === 'not-determined' ? '' : contentsText(state, container);
  const stands = [`${amountText(capacity, sign.value)} ${vesselWords[vessel]}`, tray ?? place];
  return (
    <Row
      lead={
        <span class={styles.standing}>
          <Vessel {...vesselDrawing(state, container)} code={undefined} scale={scale} />
          {mark && (
            <span class={styles.mark}>
              <Mark kind={mark} sizePx={26} />
            </span>
          )}
        </span>
      }
      title={mark === undefined ? unbroken(code) : `${unbroken(code)}: ${word.toLowerCase()}`}
      second={[contents, stands.filter(Boolean).join(', ')].filter(Boolean).join('. ')}
      figure={is === 'gone' ? undefined : amountOf(container, doubted, sign.value)}
      href={`#/containers/${containerId}`}
    />
  );
}

/** What it holds; of what nobody knows the level that was read, or what the record had. */
function amountOf(container: ContainerState, doubted: boolean, sign: DecimalSign): string | undefined {
  if (!doubted) return heldText(container.holds, sign);
  const seen = seenIn(container).map((amount) => amountText(amount, sign));
  return seen.length === 0 ? undefined : seen.join(' + ');
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
      aside={
        <Button centred href="#/scan">
          {scanWords.door}
        </Button>
      }
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
