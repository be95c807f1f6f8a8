/** One container of the walk: the vessel as the record has it above, what to look at, and two answers at the thumb. */
import { useState } from 'preact/hooks';
import { isNothing } from '../../ledger/amounts';
import { isDoubted } from '../../ledger/container-life';
import { capacityOf } from '../../ledger/fill';
import type { ContainerState, State } from '../../ledger/state';
import { findingsAt, looksOf } from '../../ledger/walks';
import { safetyWords } from '../../safety/words';
import { Button } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Pegs } from '../../ui/pegs';
import { useTapGuard } from '../../ui/tap-guard';
import { Vessel } from '../../ui/vessel';
import { amountText, dayText, heldText, momentText } from '../amounts';
import { Reason } from '../checklist/further-pages';
import { useReadAloud } from '../checklist/read-aloud';
import { words as listWords } from '../checklist/words';
import { StorageAside } from '../containers/container-clock';
import { contentsText } from '../containers/contents-text';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { vesselDrawing } from '../vessel-drawing';
import { words } from '../words';
import { LooksPage } from './looks-page';
import type { WalkOnScreen } from './use-walk';
import { fittedScale } from './vessel-size';
import styles from './walk.module.css';
import { walkWords as w } from './words';

type Props = { readonly on: WalkOnScreen; readonly container: ContainerState };

/** How far the walk is, over each of its pages. */
export const WalkPegs = ({ on }: { readonly on: WalkOnScreen }) => {
  const last = on.of + on.placeLooks.length;
  const at = on.passed + on.draft.place.length + 1;
  return <Pegs at={at} of={last} words={listWords.position(at, last)} task={on.list.title} />;
};

/** By the record nothing is in it, and yet nobody knows for sure: that is not empty. */
const isOpen = (state: State, container: ContainerState): boolean =>
  isDoubted(state, container) && isNothing(container.holds);

/** What the record says of it, beside the drawing. */
function Facts({ container }: Pick<Props, 'container'>) {
  const { state, sign } = useShell();
  const { place, tray, capacity } = container.body;
  return (
    <dl class={styles.facts}>
      <dt>{w.stands.place}</dt>
      <dd>{place ?? w.stands.unknown}</dd>
      {tray !== undefined && (
        <>
          <dt>{w.stands.tray}</dt>
          <dd>{tray}</dd>
        </>
      )}
      <dt>{w.stands.holds}</dt>
      <dd>
        {isOpen(state.value, container)
          ? words.notDetermined
          : w.stands.of(heldText(container.holds, sign.value), amountText(capacity, sign.value))}
      </dd>
    </dl>
  );
}

/** What is wrong with it already, so that it is not told anew. */
function Known({ container }: Pick<Props, 'container'>) {
  const { state, now } = useShell();
  const { damagedSince, body } = container;
  const open = findingsAt(state.value, body.containerId).filter(({ closed }) => !closed);
  return (
    <>
      {damagedSince !== null && (
        <Notice mark="wrong" size="small">
          {w.damaged(dayText(damagedSince, now.value))}
        </Notice>
      )}
      {open.map(({ found }) => (
        <Notice key={found.findingId} mark="wrong" size="small">
          {w.stillOpen(found.ask, found.answer)}
        </Notice>
      ))}
    </>
  );
}

const CannotSee = ({ on, container, onBack }: Props & { readonly onBack: () => void }) => {
  const { moment } = useShell();
  const guard = useTapGuard('cannot see', moment);
  return (
    <Reason
      title={w.cannotSeeTitle}
      said={unbroken(container.body.code)}
      reasons={w.cannotSeeReasons}
      guard={guard}
      onBack={onBack}
      onReason={(why) => on.cannotSee(container.body.containerId, why)}
    />
  );
};

/** `key` it by container, so that nothing of the one before lingers. */
export function ContainerPage({ on, container }: Props) {
  const { state, moment, now } = useShell();
  const [aside, setAside] = useState<'cannot-see' | 'looks' | null>(null);
  const { containerId, code } = container.body;
  const guard = useTapGuard(`${containerId} ${aside}`, moment);
  const looks = looksOf(on.list, 'container');
  useReadAloud(aside ? null : [code, ...looks.map(({ look }) => look)].join('. '));
  if (aside === 'cannot-see')
    return <CannotSee on={on} container={container} onBack={() => setAside(null)} />;
  if (aside === 'looks') return <LooksPage on={on} looks={looks} onBack={() => setAside(null)} />;
  const contents = contentsText(state.value, container);
  const { madeAt } = on.draft;
  const drawing = vesselDrawing(state.value, container);
  return (
    <Frame
      title={unbroken(code)}
      second={contents}
      voice="question"
      focusKey={`walk ${containerId}`}
      above={<WalkPegs on={on} />}
      aside={<StorageAside state={state.value} container={container} />}
      ways={[
        { label: w.pause, href: '#/today' },
        { label: w.cannotSee, onTap: guard(() => setAside('cannot-see')) },
        on.undo
          ? { label: on.undo.said, onTap: on.undo.take }
          : { label: w.looks, onTap: () => setAside('looks') },
      ]}
      actions={
        <div class={styles.opposites}>
          <Button onTap={guard(() => void on.inOrder(containerId))}>{w.inOrder}</Button>
          <Button onTap={guard(() => on.tellWrong(containerId))}>{w.wrong}</Button>
        </div>
      }
    >
      <Part>
        <div class={styles.seen}>
          <Vessel {...drawing} scale={fittedScale(drawing.family, capacityOf(container).toNumber())} />
          <Facts container={container} />
        </div>
        {on.fault !== null && <p role="alert">{on.fault}</p>}
        {madeAt !== null && <p>{w.late.line(momentText(madeAt, now.value))}</p>}
        {on.tooQuick && (
          <Notice mark="due" size="small" role="status">
            {safetyWords.lookThenTap}
          </Notice>
        )}
        <Known container={container} />
        <ul class={styles.looks} aria-label={w.looks}>
          {looks.map(({ id, look }) => (
            <li key={id}>{look}</li>
          ))}
        </ul>
      </Part>
    </Frame>
  );
}
