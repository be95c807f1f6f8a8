/** A container is broken: the one thing to do is to move all of it into a sound, empty one. */
import { emptyPlaces } from '../../ledger/places-that-fit';
import type { ContainerState } from '../../ledger/state';
import { wholeOf } from '../../ledger/whole-of';
import { safetyWords } from '../../safety/words';
import { type BarAction, TaskBar } from '../../ui/bar';
import { Button } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { StopPage } from '../../ui/stop-page';
import { useTapGuard } from '../../ui/tap-guard';
import { amountText } from '../amounts';
import { Fault, useWriting } from '../fault';
import { Frame, useTopLine } from '../frame';
import { useShell } from '../shell';
import { words } from '../words';
import { lifeWords as w } from './life-words';
import { takeOutDraft, takeOutOf } from './take-out';
import { capWords, containerWords, vesselWords } from './words';

/** As many as are chosen from with gloves on. */
const most = 4;

function placeSecond({ body }: ContainerState, sign: Parameters<typeof amountText>[1]): string {
  const vessel = `${amountText(body.capacity, sign)} ${vesselWords[body.vessel]}`;
  return [vessel, capWords[body.cap], body.tray, body.place].filter(Boolean).join(', ');
}

function Doors({ container }: { readonly container: ContainerState }) {
  const { state, go, sign, moment, draft } = useShell();
  const { containerId } = container.body;
  const { write, fault, busy } = useWriting();
  const guard = useTapGuard(containerId, moment);
  const places = emptyPlaces(state.value, container).slice(0, most);
  async function move(toContainerId: string): Promise<void> {
    const written = await write({ do: 'move-all', fromContainerId: containerId, toContainerId });
    if (written) go(`containers/${toContainerId}`, 'replace');
  }
  function already(): void {
    const [amount] = wholeOf(container);
    if (amount) draft.keep(takeOutDraft(containerId), takeOutOf(amount, 'transfer'));
    go(`containers/${containerId}/out`);
  }
  return (
    <>
      {places.map((place, i) => (
        <Button
          key={place.body.containerId}
          look={i === 0 ? 'primary' : 'door'}
          disabled={busy}
          second={placeSecond(place, sign.value)}
          onTap={guard(() => void move(place.body.containerId))}
        >
          {w.moveOne(unbroken(place.body.code))}
        </Button>
      ))}
      {places.length === 0 && <p>{w.moveNone}</p>}
      <Fault words={fault} />
      <Button
        look={places.length === 0 ? 'primary' : 'door'}
        href={`#/containers/new/instead/${containerId}`}
      >
        {w.moveNew}
      </Button>
      <Button href="#/sos/spill">{w.moveSpill}</Button>
      <Button onTap={guard(already)}>{w.moveAlready}</Button>
    </>
  );
}

export function MoveAll({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state, sign, path } = useShell();
  const top = useTopLine();
  const id = at.id ?? '';
  const container = state.value.containers.get(id);
  const ways: readonly BarAction[] = [{ label: words.back, href: `#/containers/${id}` }];
  if (!container) return <Frame title={containerWords.gone} ways={ways} />;
  const whole = wholeOf(container);
  if (whole.length === 0 || container.goneSince !== null)
    return <Frame title={w.moveNothing} second={w.moveGone} ways={ways} />;
  const held = whole.map((amount) => amountText(amount, sign.value)).join(', ');
  return (
    <StopPage
      top={top}
      focusKey={path.value.join('/')}
      word={safetyWords.stop}
      title={w.moveTitle(unbroken(container.body.code))}
      why={w.moveWhy(held)}
      doorsTitle={w.moveInto}
      doors={<Doors container={container} />}
      bar={<TaskBar sos>{ways}</TaskBar>}
    />
  );
}
