/** The hour on the wall where an entry was written: phones travel, and one hour of autumn comes twice. */
import { calendarDayText } from '../../paperwork/dates';

const minute = 60_000;
/** By so many minutes clocks are put back in autumn: half an hour on Lord Howe Island. Status: memory. */
const putBack = [60, 30] as const;

/** Making one takes far longer than using it, and a history has many lines. */
const formats = new Map<string, Intl.DateTimeFormat>();

function formatIn(timeZone: string): Intl.DateTimeFormat {
  const made =
    formats.get(timeZone) ?? new Intl.DateTimeFormat('en-GB', { timeZone, timeZoneName: 'longOffset' });
  formats.set(timeZone, made);
  return made;
}

const minutesOf = (sign: string, hours: string, minutes: string): number =>
  (sign === '-' ? -1 : 1) * (Number(hours) * 60 + Number(minutes));

/** @param zone an IANA name, or minutes ahead of UTC; @returns undefined where this browser knows no such zone */
function minutesAhead(iso: string, zone: string): number | undefined {
  if (/^[+-]\d+$/.test(zone)) return Number(zone);
  try {
    const parts = formatIn(zone).formatToParts(new Date(iso));
    const name = parts.find(({ type }) => type === 'timeZoneName')?.value ?? '';
    const [, sign = '+', hours = '0', minutes = '0'] = /([+-])(\d\d):(\d\d)/.exec(name) ?? [];
    return minutesOf(sign, hours, minutes);
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

const shifted = (iso: string, minutes: number): string =>
  new Date(Date.parse(iso) + minutes * minute).toISOString();

/** Whether the same hour is read off the wall a second time, before or after. */
const comesTwice = (iso: string, zone: string, ahead: number): boolean =>
  putBack.some((by) =>
    [by, -by].some((between) => {
      const other = minutesAhead(shifted(iso, between), zone);
      return other !== undefined && other - ahead === -between;
    }),
  );

function aheadText(minutes: number): string {
  const size = Math.abs(minutes);
  const two = (n: number): string => String(n).padStart(2, '0');
  return `UTC${minutes < 0 ? '−' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`;
}

/** @example ownHourText('2026-10-25T00:30:00.000Z', 'Europe/Paris') // '25 Oct 2026, 02:30, UTC+02:00, Europe/Paris' */
export function ownHourText(iso: string, zone: string): string {
  const name = zone.replaceAll('_', ' ');
  const ahead = minutesAhead(iso, zone);
  if (ahead === undefined) return name;
  const wall = shifted(iso, ahead);
  return [
    calendarDayText(wall.slice(0, 10)),
    wall.slice(11, 16),
    aheadText(ahead),
    ...(/^[+-]/.test(zone) ? [] : [name]),
  ].join(', ');
}

/** Whether it says more than the hour as it is read here. @param here the zone of this phone */
export function ownHourDiffers(iso: string, zone: string, here: string): boolean {
  const ahead = minutesAhead(iso, zone);
  return ahead === undefined || ahead !== minutesAhead(iso, here) || comesTwice(iso, zone, ahead);
}
