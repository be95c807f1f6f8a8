/** Hoods whose air has to be measured again, on Today and wherever they stand. */
import { hoodsDue } from '../../ledger/hoods-due';
import { dayField } from '../../safety/stated-time';
import { type ReadingDue, shareOfNotice } from '../../safety/ventilation/reading-due';
import { Mark } from '../../ui/marks';
import { Row } from '../../ui/row';
import { calendarDayText } from '../amounts';
import { useShell } from '../shell';
import { dueWords } from './words';

export function DueMark({ due, on }: { readonly due: ReadingDue; readonly on: string }) {
  if (due.why === 'not-measured') return <Mark kind="unknown" />;
  if (due.why === 'soon') return <Mark kind="due" share={shareOfNotice(due.by, on)} />;
  return <Mark kind="overdue" />;
}

export function HoodsDueRows() {
  const { state, now } = useShell();
  const on = dayField(now.value);
  return (
    <>
      {hoodsDue(state.value, on).map(({ station, due }) => (
        <Row
          key={station.body.stationId}
          mark={<DueMark due={due} on={on} />}
          title={station.body.name}
          second={dueWords(due, (day) => calendarDayText(day, now.value))}
          href={`#/record/stations/${station.body.stationId}`}
        />
      ))}
    </>
  );
}
