/** All containers, each a drawn vessel with its state and what is in it; those that are gone last. */
import { useMemo, useState } from 'preact/hooks';
import { isDoubted, lifeOf } from '../../ledger/container-life';
import { hasLiquid } from '../../ledger/liquid-containers';
import type { ContainerState, State } from '../../ledger/state';
import { seenIn } from '../../ledger/whole-of';
import type { DecimalSign } from '../../quantities/format';
import { Button } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Mark, type MarkKind } from '../../ui/marks';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { Vessel } from '../../ui/vessel';
import { amountText, heldText } from '../amounts';
import { FindDoor, LongAgo } from '../find/door';
import { Frame } from '../frame';
import { LongRows } from '../long-rows';
import { scanWords } from '../scan/words';
import { useShell } from '../shell';
import { twoWaysWords } from '../two-ways/words';
import { contentsText } from './contents-text';
import { lifeStates, lifeWords } from './life-words';
import styles from './list.module.css';
import { useTinted } from './use-tinted';
import { useWrong } from './use-wrong';
import { vesselWords, containerWords as w } from './words';

/** Drawn beside its row: one scale, small. */
const scale = 0.2;

type Props = { readonly state: State; readonly container: ContainerState };

const Standing = ({ state, container, mark }: Props & { readonly mark: MarkKind | undefined }) => (
  <span class={styles.standing}>
    <Vessel {...useTinted(state, container)} code={undefined} scale={scale} />
    {mark && (
      <span class={styles.mark}>
        <Mark kind={mark} sizePx={26} />
      </span>
    )}
  </span>
);

export function ContainerRow({ state, container }: Props) {
  const { sign } = useShell();
  const { code, containerId, vessel, capacity, tray, place } = container.body;
  const { is } = lifeOf(state, container);
  const { word, mark } = lifeStates[is];
  const doubted = isDoubted(state, container);
  const contents = is === 'not-determined' ? '' : contentsText(state, container);
  const gone = is === 'gone';
  const wrong = useWrong(state, container, sign.value);
  const lived = mark === undefined ? unbroken(code) : `${unbroken(code)}: ${word.toLowerCase()}`;
  const stands = [`${amountText(capacity, sign.value)} ${vesselWords[vessel]}`, tray ?? place];
  return (
    <Row
      // Of one that is gone there is nothing to be seen.
      {...(gone
        ? { start: 'text' as const }
        : { lead: <Standing state={state} container={container} mark={wrong ? 'wrong' : mark} /> })}
      marked={wrong !== undefined}
      title={wrong ?? lived}
      second={[contents, stands.filter(Boolean).join(', ')].filter(Boolean).join('. ')}
      figure={gone ? undefined : amountOf(container, doubted, sign.value)}
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

/** A row that follows the state by itself, so that the list need not. */
function Listed({ container }: Pick<Props, 'container'>) {
  const { state } = useShell();
  return <ContainerRow state={state.value} container={container} />;
}

const listed = (container: ContainerState) => (
  <Listed key={container.body.containerId} container={container} />
);

/** Opened once they are asked for: there may be thousands. */
function Gone({ gone }: { readonly gone: readonly ContainerState[] }) {
  const { here } = useShell();
  const [kept] = useState(here);
  const [open, setOpen] = useState(kept.read('gone') === true);
  return (
    <Part rule width="edge">
      <details
        class={styles.gone}
        open={open}
        onToggle={({ currentTarget }) => {
          kept.keep('gone', currentTarget.open);
          setOpen(currentTarget.open);
        }}
      >
        <summary>{lifeWords.goneTitle(gone.length)}</summary>
        {open && <LongRows of={gone} row={listed} label={lifeWords.goneTitle(gone.length)} />}
      </details>
    </Part>
  );
}

export function ContainerList() {
  const { state } = useShell();
  const { containers } = state.value;
  const here = useMemo(
    () => [...containers.values()].filter(({ goneSince }) => goneSince === null),
    [containers],
  );
  const gone = useMemo(
    () => [...containers.values()].filter(({ goneSince }) => goneSince !== null).toReversed(),
    [containers],
  );
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
      {containers.size > 0 && <FindDoor />}
      {containers.size === 0 ? (
        <Part>
          <p>{w.none}</p>
        </Part>
      ) : (
        <LongRows of={here} row={listed} label={w.title} />
      )}
      {gone.length > 0 && <Gone gone={gone} />}
      <LongAgo is="container" />
      {hasLiquid(state.value) && (
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
