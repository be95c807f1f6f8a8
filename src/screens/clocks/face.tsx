/** The face of one clock: the ring, and how long still, to be read from the stand. */
import { countdown, type RunningClock } from '../../ledger/clocks-running';
import { minutesTo } from '../../ledger/treatment-run';
import { Mark } from '../../ui/marks';
import { minutesShown, momentText } from '../amounts';
import { useShell } from '../shell';
import styles from './clocks.module.css';
import { clocksWords as w } from './words';

const ringPx = 72;
/** Beside the seconds, in the narrow column of a card. */
const smallRingPx = 56;

/** Minutes; the page moves on by itself every few seconds. */
export function Face({ running }: { readonly running: RunningClock }) {
  const { now } = useShell();
  const { due } = running.clock.body;
  const { value, unit } = minutesShown(minutesTo(due, now.value));
  return (
    <div class={styles.face}>
      <Mark kind={running.overdue ? 'overdue' : 'due'} share={running.shareLeft} sizePx={ringPx} />
      {running.overdue ? (
        <p class={styles.since}>{w.sinceBig(momentText(due, now.value))}</p>
      ) : (
        <p class={styles.big} role="timer">
          {value}
          <span class={styles.unit}>{`\u2009${unit}`}</span>
        </p>
      )}
    </div>
  );
}

const twoDigits = (n: number): string => String(n).padStart(2, '0');

type Seconds = { readonly due: string; readonly now: string; readonly shareLeft: number };

/** "14:32", for somebody who holds another's eyes open. Nothing once it has come. */
export function SecondsFace({ due, now, shareLeft }: Seconds) {
  const left = countdown(due, now);
  return left ? (
    <div class={styles.face}>
      <Mark kind="due" share={shareLeft} sizePx={smallRingPx} />
      <p class={styles.big} role="timer">
        {left.minutes}:{twoDigits(left.seconds)}
      </p>
    </div>
  ) : null;
}
