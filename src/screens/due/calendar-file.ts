/** Makes the calendar file of all last days. What writes it is loaded when the first one is made. */
import { type Due, dues } from '../../ledger/due';
import type { DueDay } from '../../paperwork/calendar/due-calendar';
import { calendarDayText } from '../amounts';
import type { Common } from '../papers/making';
import { codesOfDue } from './rows';
import { dueTitle, dueWords as w } from './words';

export type CalendarMade =
  | { readonly ok: true; readonly file: File; readonly days: number }
  | { readonly ok: false; readonly words: string };

/** So many days before its last day the calendar calls: time enough to do it. Our own choice. */
const callsBefore: Readonly<Record<Due['kind'], number>> = {
  leave: 14,
  proof: 7,
  walk: 1,
  look: 0,
  'move-excess': 0,
};

export type Dated = Pick<Common, 'state' | 'now' | 'zone' | 'demo'>;

/** Each last day as a calendar has it; the invented workshop never takes the place of a real one's days. */
export function calendarDays({ state, now, zone, demo }: Dated): readonly DueDay[] {
  return dues(state, now, zone).map((due) => {
    const { id, day, lastDay, from, limit, kind } = due;
    const code = codesOfDue(state, due);
    const text = (one: string): string => calendarDayText(one, now);
    return {
      id: demo ? `invented/${id}` : id,
      day,
      title: w.calendarTitle(dueTitle(due, code), demo),
      description: w.calendarText(
        text(from),
        w.calendarLimit(limit.days, limit.stated),
        day === lastDay ? null : text(lastDay),
      ),
      alarmDaysBefore: callsBefore[kind],
    };
  });
}

/** @param asked with at least one day due */
export async function makeCalendar(asked: Dated): Promise<CalendarMade> {
  let writer: typeof import('../../paperwork/calendar/due-calendar');
  try {
    writer = await import('../../paperwork/calendar/due-calendar');
  } catch (cause) {
    console.warn('calendar files cannot be made yet', cause);
    return { ok: false, words: w.calendarNotHere };
  }
  try {
    const days = calendarDays(asked);
    const name = w.calendarName(asked.state.workshop?.body.name ?? '', asked.demo);
    const text = writer.dueCalendar(days, name, asked.now);
    const file = new File([text], w.calendarFile(asked.now.slice(0, 10)), { type: 'text/calendar' });
    return { ok: true, file, days: days.length };
  } catch (cause) {
    console.warn('the calendar file was not made', cause);
    return { ok: false, words: w.calendarFault };
  }
}
