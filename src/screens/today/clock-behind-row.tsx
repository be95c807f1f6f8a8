/** The clock of the phone stands before what was written: told while it does, since only a person knows which is right. */
import { writtenAhead } from '../../ledger/clock-behind';
import { Mark } from '../../ui/marks';
import { Row } from '../../ui/row';
import { useShell } from '../shell';
import { todayWords as w } from './words';

export function ClockBehindRow() {
  const { state, now } = useShell();
  const last = writtenAhead(state.value, now.value);
  if (last === null) return null;
  return (
    <Row
      start="text"
      mark={<Mark kind="unknown" />}
      title={w.clockBehind}
      second={w.clockBehindSecond(now.value, last)}
    />
  );
}
