/**
 * Days on which something is due, as an iCalendar file (RFC 5545) that any calendar reads: each an event of a whole day, in
 * no zone. A day keeps its UID, and a file made later has a higher SEQUENCE, so that reading it in again brings up to date
 * what is there and doubles nothing. Bring it in with import(): the writer is needed only when a calendar is made.
 */
import { createEvents, type EventAttributes } from 'ics';

export type DueDay = {
  /** Stays the same for as long as it is the same thing that is due. */
  readonly id: string;
  /** Calendar day, "2026-05-23". */
  readonly day: string;
  readonly title: string;
  readonly description: string;
  /** Days before at which the calendar calls; absent where it should not. */
  readonly alarmDaysBefore?: number;
};

/** The hour at which a calendar calls, so that a working day is left. Our own choice. */
const callsAt = 8;

const utf8 = new TextEncoder();

/** RFC 5545, 3.3.11. The writer does this itself for a title and a description, and for no other text. */
const escaped = (text: string): string => text.replace(/[\\;,]/g, '\\$&').replace(/\r?\n/g, '\\n');

/** What no line may hold (RFC 5545, 3.1), but for the break between lines. */
const plain = (text: string): string => text.replace(/\r\n?/g, '\n').replace(/(?!\n)\p{Cc}/gu, ' ');

/** RFC 5545, 3.1: no line longer than 75 octets. The writer counts letters, so that its lines are too long beyond ASCII. */
function folded(line: string): string {
  const lines = [''];
  let octets = 0;
  for (const letter of line) {
    const size = utf8.encode(letter).length;
    if (octets + size > 75) {
      lines.push(' ');
      octets = 1;
    }
    lines[lines.length - 1] += letter;
    octets += size;
  }
  return lines.join('\r\n');
}

/** A time before a whole day begins, such as -P6DT16H: seven days before, at eight in the morning. */
function trigger(daysBefore: number) {
  if (daysBefore <= 0) return { hours: callsAt };
  return { ...(daysBefore > 1 ? { days: daysBefore - 1 } : {}), hours: 24 - callsAt, before: true };
}

/** The writer takes a timestamp, and its types do not say so. */
type Event = EventAttributes & { readonly timestamp: number };

function event({ id, day, title, description, alarmDaysBefore }: DueDay, madeAt: number): Event {
  const [year = 0, month = 0, date = 0] = day.split('-').map(Number);
  const summary = plain(title);
  return {
    uid: `${id}@leesbook`,
    timestamp: madeAt,
    sequence: Math.floor(madeAt / 60_000),
    start: [year, month, date],
    end: [year, month, date],
    title: summary,
    description: plain(description),
    // Nobody is busy all day because something is due.
    transp: 'TRANSPARENT',
    ...(alarmDaysBefore === undefined
      ? {}
      : {
          alarms: [
            { action: 'display', description: escaped(summary), trigger: trigger(alarmDaysBefore) } as const,
          ],
        }),
  };
}

/**
 * @param name what the calendar is called where it is read in
 * @param madeAt when the file is made, UTC
 * @throws where there is no day, or two of one id: a caller that has nothing to say makes no calendar
 */
export function dueCalendar(days: readonly DueDay[], name: string, madeAt: string): string {
  if (days.length === 0) throw new Error('a calendar without a day');
  if (new Set(days.map(({ id }) => id)).size < days.length) throw new Error('two days of one id');
  const made = Date.parse(madeAt);
  const header = { productId: '-//Leesbook//Due days//EN', method: 'PUBLISH', calName: escaped(plain(name)) };
  const { error, value } = createEvents(
    days.map((one) => event(one, made)),
    header,
  );
  if (error || value === null) throw new Error('the calendar cannot be written', { cause: error });
  return value.replaceAll('\r\n\t', '').split('\r\n').map(folded).join('\r\n');
}
