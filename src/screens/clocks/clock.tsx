/** One clock, large: what to do now, and the tap that ends it; ended by mistake, it runs again. */
import { listOfCheckIn, listOfLook, phoneOf } from '../../ledger/clock-links';
import { runningClock } from '../../ledger/clocks-running';
import type { ClockStopped } from '../../ledger/entries/clocks';
import type { ClockState } from '../../ledger/state';
import { Button, Buttons } from '../../ui/button';
import { Part } from '../../ui/page';
import { useTapGuard } from '../../ui/tap-guard';
import { momentText } from '../amounts';
import { Fault, useWriting } from '../fault';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { SilverWayBack } from '../silver-check/batch-checks';
import { telephone } from '../telephone';
import styles from './clocks.module.css';
import { Face } from './face';
import { Honest } from './honest';
import { clockSays, doneWords, notNeededWords, clocksWords as w } from './words';

type Props = { readonly clock: ClockState };

/** Where the thing is done that the clock is about. */
function Doors({ clock }: Props) {
  const { state, now } = useShell();
  const { of, batchId, name, due } = clock.body;
  const phone = clock.body.phone ?? phoneOf(state.value, name);
  const told = listOfCheckIn(state.value, clock);
  const list = of === 'look' ? listOfLook(state.value, batchId) : null;
  const card = of === 'rinse' ? 'eye-skin' : of;
  return (
    <Buttons>
      {of === 'check-in' && phone !== null && (
        <Button look={due <= now.value ? 'primary' : 'door'} href={telephone(phone)} second={phone}>
          {w.ring(name ?? w.them)}
        </Button>
      )}
      {of === 'ammonia-silver' && batchId !== null && <SilverWayBack batchId={batchId} />}
      {told && <Button href={`#/clearance/${told.entryId}/message`}>{w.message}</Button>}
      {list && (
        <Button href={`#/check/${batchId ?? '-'}/${list.id}`} second={list.title}>
          {w.goThrough}
        </Button>
      )}
      {(of === 'rinse' || of === 'ammonia-silver') && <Button href={`#/sos/${card}`}>{w.toCard}</Button>}
    </Buttons>
  );
}

function Runs({ clock }: Props) {
  const { state, now, moment } = useShell();
  const { write, fault, busy } = useWriting();
  const guard = useTapGuard(`clock ${clock.body.clockId}`, moment);
  const running = runningClock(clock, now.value);
  const { title, when, act } = clockSays(state.value, running, now.value);
  const { clockId, of } = clock.body;
  const end = (how: ClockStopped['how']) => guard(() => void write({ do: 'stop-clock', clockId, how }));
  return (
    <Frame
      place="today"
      title={title}
      focusKey={`runs ${clockId}`}
      actions={
        <>
          <Fault words={fault} />
          <Buttons>
            <Button look="primary" voice="serif" disabled={busy} onTap={end('done')}>
              {doneWords[of]}
            </Button>
            <Button disabled={busy} onTap={end('not-needed')}>
              {notNeededWords[of]}
            </Button>
          </Buttons>
        </>
      }
    >
      <Part>
        <Face running={running} />
        <p class={styles.do}>{running.overdue ? act : `${when} ${act}`}</p>
      </Part>
      <Part>
        <Doors clock={clock} />
      </Part>
      <Part rule>
        <Honest />
        <Button look="plain" href="#/clocks">
          {w.toClocks}
        </Button>
      </Part>
    </Frame>
  );
}

function Ended({ clock, stopped }: Props & { readonly stopped: NonNullable<ClockState['stopped']> }) {
  const { state, now, moment } = useShell();
  const { write, fault, busy } = useWriting();
  const { clockId, batchId, of } = clock.body;
  const guard = useTapGuard(`ended ${clockId}`, moment);
  const { title } = clockSays(state.value, runningClock(clock, now.value), now.value);
  const undo = guard(
    () => void write({ do: 'withdraw-entry', withdraws: stopped.entryId, reason: w.undoReason }),
  );
  return (
    <Frame
      place="today"
      title={w.ended(stopped.body.how, momentText(stopped.at, now.value))}
      second={title}
      focusKey={`ended ${clockId}`}
      actions={
        <>
          <Fault words={fault} />
          <Buttons>
            <Button look="primary" href="#/today">
              {w.toToday}
            </Button>
            {of === 'look' && batchId !== null && (
              <Button href={`#/batches/${batchId}/look`}>{w.nextLook}</Button>
            )}
            <Button disabled={busy} onTap={undo}>
              {w.undo}
            </Button>
          </Buttons>
        </>
      }
    />
  );
}

export function ClockScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const clock = useShell().state.value.clocks.get(at.clock ?? '');
  if (clock) return clock.stopped ? <Ended clock={clock} stopped={clock.stopped} /> : <Runs clock={clock} />;
  return (
    <Frame place="today" title={w.title}>
      <Part>
        <p role="alert">{w.lost}</p>
        <Button href="#/clocks">{w.toClocks}</Button>
      </Part>
    </Frame>
  );
}
