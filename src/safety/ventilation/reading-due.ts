/** When the air in the opening of a hood has to be measured again: nobody counts on a reading that is old, or older than a change. */
import { addDays, addMonths, differenceInCalendarDays, format, parseISO } from 'date-fns';
import { nitrousGas } from '../../reference/nitrous-gas-tables';
import type { WrittenStation } from './station-schema';

const { readingHolds, readingDueBefore } = nitrousGas.face;

const day = (date: Date): string => format(date, 'yyyy-MM-dd');

/** The last day on which a reading holds. */
export const readingEnds = (measuredOn: string): string =>
  day(addMonths(parseISO(measuredOn), Number(readingHolds.value)));

export type ReadingDue =
  | { readonly why: 'not-measured' }
  /** `since`: the day of the change. */
  | { readonly why: 'changed-since'; readonly since: string }
  /** `since`: the last day on which it held. */
  | { readonly why: 'too-old'; readonly since: string }
  /** It holds, and will not for long. */
  | { readonly why: 'soon'; readonly by: string };

/** What is due of a station; null where nothing is, or nothing is measured there. @param on "2026-11-29" */
export function readingDue(station: WrittenStation, on: string): ReadingDue | null {
  if (station.is !== 'ducted-hood') return null;
  const { face, changedOn } = station;
  if (!face) return { why: 'not-measured' };
  if (changedOn !== undefined && face.measuredOn < changedOn)
    return { why: 'changed-since', since: changedOn };
  const ends = readingEnds(face.measuredOn);
  if (ends < on) return { why: 'too-old', since: ends };
  return ends <= day(addDays(parseISO(on), Number(readingDueBefore.value)))
    ? { why: 'soon', by: ends }
    : null;
}

/** Of the time of notice what is left, 1 to 0. @param by the last day on which the reading holds */
export const shareOfNotice = (by: string, on: string): number =>
  Math.min(
    1,
    Math.max(0, differenceInCalendarDays(parseISO(by), parseISO(on)) / Number(readingDueBefore.value)),
  );
