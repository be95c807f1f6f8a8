/** How long the ammonia may still stand, on every page from the moment it is in until it is destroyed. */
import { minutesLeft, shareLeft } from '../../safety/time-left';
import { Button } from '../../ui/button';
import { Notice } from '../../ui/notice';
import { hour } from '../frame';
import { useShell } from '../shell';
import type { TestOnScreen } from './use-test';
import { silverWords as w } from './words';

export function Countdown({ on }: { readonly on: TestOnScreen }) {
  const { now } = useShell();
  const { ammoniaAt, dueAt } = on.test;
  if (!on.stands || ammoniaAt === null || dueAt === null) return null;
  // What is overdue in the record is told by every page already.
  if (on.age !== 'in-time')
    return on.clock !== null ? null : (
      <>
        <Notice mark="overdue" role="note" second={w.overSecond}>
          {w.over(hour(dueAt))}
        </Notice>
        <Button href="#/sos/ammonia-silver">{w.card}</Button>
      </>
    );
  const left = minutesLeft(dueAt, now.value);
  return (
    <Notice
      mark="due"
      role="note"
      share={shareLeft(ammoniaAt, dueAt, now.value)}
      second={on.writing.fault === null ? w.leftSecond(hour(dueAt)) : w.noClock(hour(dueAt))}
    >
      {left === 0 ? w.lessThanOne : w.left(left)}
    </Notice>
  );
}
