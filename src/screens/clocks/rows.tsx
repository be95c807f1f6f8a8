/** Clocks as rows: the share of time left, or since when they are due, and what to do now. */
import { presses, type RunningClock, runningClocks } from '../../ledger/clocks-running';
import { minutesTo } from '../../ledger/treatment-run';
import { Button } from '../../ui/button';
import { FigureValue } from '../../ui/figure-value';
import { Mark } from '../../ui/marks';
import { Row, Rows } from '../../ui/row';
import { minutesShown } from '../amounts';
import { useShell } from '../shell';
import { useLowBattery } from './battery';
import styles from './clocks.module.css';
import { clockSays, clocksWords as w } from './words';

/** The emergency card that says what to do before the clock itself is seen to. */
function cardOf({ clock, overdue }: RunningClock): string | null {
  if (clock.body.of === 'rinse') return 'eye-skin';
  return clock.body.of === 'ammonia-silver' && overdue ? 'ammonia-silver' : null;
}

const pageOf = ({ clock }: RunningClock): string => `#/clocks/${clock.body.clockId}`;

export function ClockRow({ running }: { readonly running: RunningClock }) {
  const { state, now } = useShell();
  const { overdue, shareLeft, clock } = running;
  const { title, when, act } = clockSays(state.value, running, now.value);
  const card = cardOf(running);
  return (
    <Row
      mark={<Mark kind={overdue ? 'overdue' : 'due'} share={shareLeft} />}
      title={title}
      marked={overdue && card !== null}
      second={`${when} ${act}`}
      href={card === null ? pageOf(running) : `#/sos/${card}`}
      figure={overdue ? undefined : <FigureValue {...minutesShown(minutesTo(clock.body.due, now.value))} />}
      below={card === null ? undefined : <Button href={pageOf(running)}>{w.end}</Button>}
    />
  );
}

/** On Today: those that come before everything else, or the others. */
export function ClockRows({ pressing }: { readonly pressing: boolean }) {
  const { state, now } = useShell();
  const battery = useLowBattery();
  const all = runningClocks(state.value, now.value);
  return (
    <>
      {pressing && battery !== null && all.length > 0 && (
        <Row
          mark={<Mark kind="wrong" />}
          title={w.battery(battery)}
          second={w.batterySecond}
          marked
          href="#/clocks"
        />
      )}
      {all
        .filter((running) => presses(running) === pressing)
        .map((running) => (
          <ClockRow key={running.clock.body.clockId} running={running} />
        ))}
    </>
  );
}

/** Pages that show it themselves, and the emergency cards, which nothing may stand before. */
const without: ReadonlySet<string | undefined> = new Set(['today', 'clocks', 'sos']);

/** What is overdue, on every other page. Inside a task it leads nowhere: water on the glass must not leave a list. */
export function OverdueStrip({ leads }: { readonly leads: boolean }) {
  const { state, now, path } = useShell();
  if (without.has(path.value[0])) return null;
  const overdue = runningClocks(state.value, now.value).filter((running) => running.overdue);
  const [first] = overdue;
  if (!first) return null;
  const { title, when, act } = clockSays(state.value, first, now.value);
  const more = overdue.length > 1 ? ` ${w.more(overdue.length - 1)}` : '';
  const card = cardOf(first);
  const one = card === null ? pageOf(first) : `#/sos/${card}`;
  return (
    <aside class={styles.strip} aria-label={w.overdue}>
      <Rows>
        <Row
          mark={<Mark kind="overdue" word={w.overdue} />}
          title={title}
          second={`${when} ${act}${more}`}
          href={leads ? (overdue.length > 1 ? '#/clocks' : one) : undefined}
        />
      </Rows>
    </aside>
  );
}
