/** Amounts and names as screens print them. */

import { format, isSameDay } from 'date-fns';
import Decimal from 'decimal.js';
import type { BaseDescribed } from '../ledger/entries/bases';
import type { Amount } from '../ledger/entries/containers';
import { codeOfBatch } from '../ledger/put-away';
import type { Held, State } from '../ledger/state';
import { namedKind } from '../ledger/waste-kinds';
import type { Figure } from '../quantities/figure';
import { type DecimalSign, formatNumber, formatWritten, printed } from '../quantities/format';
import type { FigureValueProps } from '../ui/figure-value';
import { unbroken } from '../ui/figure-value';
import { streamName, words } from './words';

/** Narrow and never broken: a unit stays with its figure. */
const thin = '\u202f';

/** So many: "12 345" with narrow gaps. */
export const countText = (count: number): string => formatNumber(new Decimal(count), 0);

/** "2.50 L", as written. */
export const amountText = (amount: Amount, sign: DecimalSign): string =>
  `${formatWritten(amount, sign)}${thin}${amount.unit}`;

/** Below this, in L, two decimals of a litre would read as nothing. */
const leastInLitres = 0.1;

function volumeText(volume: Held['volume'], sign: DecimalSign): string {
  if (volume.isZero() || volume.abs().gte(leastInLitres)) return `${formatNumber(volume, 2, sign)}${thin}L`;
  return `${formatNumber(volume.times(1000), 1, sign)}${thin}mL`;
}

/** What is held by the ledger: "6.70 L", "6.70 L and 820 g", "2.0 mL". */
export function heldText(held: Held, sign: DecimalSign): string {
  const volume = volumeText(held.volume, sign);
  const mass = `${formatNumber(held.mass, 0, sign)}${thin}g`;
  if (held.mass.isZero()) return volume;
  return held.volume.isZero() ? mass : `${volume}, ${mass}`;
}

/** Whole minutes for `<FigureValue>`; above an hour and a half in hours and minutes: "11 h 4 min". */
export function minutesShown(minutes: number): Pick<FigureValueProps, 'value'> & { unit: string } {
  if (minutes <= 90) return { value: String(minutes), unit: 'min' };
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  return rest === 0
    ? { value: String(hours), unit: 'h' }
    : { value: `${hours}${thin}h\u00a0${rest}`, unit: 'min' };
}

/** A figure for `<FigureValue>`, with its range as "36 to 44". */
export function shown(
  figure: Figure,
  sign: DecimalSign,
): Pick<FigureValueProps, 'value' | 'unit'> & { range?: string } {
  const p = printed(figure, sign);
  return {
    value: p.value,
    unit: p.unit,
    ...(p.low === undefined ? {} : { range: `${p.low} ${words.to} ${p.high}` }),
  };
}

/** So many codes are read at a glance. */
const fewCodes = 3;

/** "C-04, C-05"; of many the first few, and how many there are besides: all of them stand in a list of their own. */
export function codesText(codes: readonly string[]): string {
  const unbrokenCodes = codes.map(unbroken);
  if (codes.length <= fewCodes + 1) return unbrokenCodes.join(', ');
  return words.andMore(unbrokenCodes.slice(0, fewCodes).join(', '), codes.length - fewCodes);
}

/** A stream by what it is and its batch: "Leach liquor, B-18"; what has been through a treatment as slurry. */
export function streamTitle(state: State, streamId: string): string {
  const stream = state.streams.get(streamId)?.body;
  if (!stream) return state.treatments.has(streamId) ? streamName['treated-slurry'] : words.notDetermined;
  const batch = codeOfBatch(state, stream.batchId);
  return batch === undefined ? streamName[stream.stream] : `${streamName[stream.stream]}, ${unbroken(batch)}`;
}

/** "Barren liquor, B-16 and B-17" of a container's contents. */
export function contentsTitle(state: State, containerId: string): string {
  const contents = state.containers.get(containerId)?.contents ?? [];
  const byKind = new Map<string, string[]>();
  for (const part of contents) {
    const stream = part.streamId === null ? undefined : state.streams.get(part.streamId)?.body;
    const kind = stream ? streamName[namedKind(stream.stream, part)] : words.notDetermined;
    const batch = codeOfBatch(state, stream?.batchId);
    const codes = byKind.get(kind) ?? [];
    if (batch !== undefined && !codes.includes(unbroken(batch))) codes.push(unbroken(batch));
    byKind.set(kind, codes);
  }
  return [...byKind]
    .map(
      ([kind, codes], i) =>
        `${i === 0 ? kind : kind.toLowerCase()}${codes.length ? ` ${codes.join(', ')}` : ''}`,
    )
    .join('; ');
}

/** "14 May" in this year, "14 May 2025" in another. */
export const dayText = (iso: string, now: string): string =>
  format(new Date(iso), iso.slice(0, 4) === now.slice(0, 4) ? 'd\u00a0MMM' : 'd\u00a0MMM\u00a0yyyy');

/** The same before a row, where a year goes under its day. */
export const leadDayText = (iso: string, now: string): string =>
  dayText(iso, now).replace(/\u00a0(?=\d{4}$)/, ' ');

/** "11:05" today, "26 Nov 11:05" on another day. */
export const momentText = (iso: string, now: string): string => {
  const time = format(new Date(iso), 'HH:mm');
  return isSameDay(new Date(iso), new Date(now)) ? time : `${dayText(iso, now)} ${time}`;
};

/** A calendar day "2026-09-26" as "26 Sep". */
export function calendarDayText(day: string, now: string): string {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number);
  // A day of the calendar has no zone: the same day stands everywhere.
  return dayText(new Date(year, month - 1, date, 12).toISOString(), now);
}

/** How good a base is, as the person stated it: by purity, or by its basicity factor. */
export const baseStated = (
  { purity, basicity }: Pick<BaseDescribed, 'purity' | 'basicity'>,
  sign: DecimalSign,
): { readonly value: string; readonly unit: string } | undefined => {
  if (purity) return { value: formatWritten(purity, sign), unit: purity.unit };
  return basicity && { value: formatWritten(basicity, sign), unit: words.asLime };
};
