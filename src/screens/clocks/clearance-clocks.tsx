/** On a clearance: who rings and how long still, the message to send, and the next look at what begins. */

import { checkInOf } from '../../ledger/clock-links';
import { runningClock } from '../../ledger/clocks-running';
import { codeOfBatch } from '../../ledger/put-away';
import type { ChecklistState, ClockState } from '../../ledger/state';
import { minutesTo } from '../../ledger/treatment-run';
import { Button } from '../../ui/button';
import { FigureValue, unbroken } from '../../ui/figure-value';
import { Mark } from '../../ui/marks';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { minutesShown, momentText } from '../amounts';
import { Fault, useWriting } from '../fault';
import { useShell } from '../shell';
import { clearanceClockWords as w } from './words';

type Props = { readonly told: ChecklistState };

/** Counted down while nobody has said that they rang. */
function CheckIn({ clock, name }: { readonly clock: ClockState; readonly name: string }) {
  const { now } = useShell();
  const { write, fault, busy } = useWriting();
  const { clockId, due } = clock.body;
  const when = momentText(due, now.value);
  const title = w.checks(name, when);
  if (clock.stopped) {
    const at = momentText(clock.stopped.at, now.value);
    const how = clock.stopped.body.how === 'done' ? w.rangAt(at) : w.notNeededAt(at);
    return <Row title={title} second={how} start="text" href={`#/clocks/${clockId}`} />;
  }
  const { overdue, shareLeft } = runningClock(clock, now.value);
  return (
    <Row
      mark={<Mark kind={overdue ? 'overdue' : 'due'} share={shareLeft} />}
      title={title}
      second={overdue ? w.sinceWhen(when) : w.inTime}
      href={`#/clocks/${clockId}`}
      figure={overdue ? undefined : <FigureValue {...minutesShown(minutesTo(due, now.value))} />}
      below={
        <>
          <Fault words={fault} />
          <Button disabled={busy} onTap={() => void write({ do: 'stop-clock', clockId, how: 'done' })}>
            {w.rang}
          </Button>
        </>
      }
    />
  );
}

export function ClearanceClocks({ told }: Props) {
  const { state } = useShell();
  const { second, batchId } = told.body;
  const clock = checkInOf(state.value, told);
  const code = codeOfBatch(state.value, batchId);
  return (
    <Part rule width="edge" title={w.part}>
      <Rows>
        {second && clock && <CheckIn clock={clock} name={second.name} />}
        {second && !clock && <Row title={w.knows(second.name)} start="text" />}
        <Row
          title={w.message}
          second={w.messageSecond}
          start="text"
          href={`#/clearance/${told.entryId}/message`}
        />
        {code !== undefined && (
          <Row
            title={w.look}
            second={w.lookSecond(unbroken(code))}
            start="text"
            href={`#/batches/${batchId}/look`}
          />
        )}
      </Rows>
    </Part>
  );
}
