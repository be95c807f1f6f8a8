/**
 * What a list that needs a place makes of a hood as it is described. A speed that is known to be wrong stops it. Where nobody
 * knows the speed as it is now, the ribbon is the look of the day: it goes on, and what is due stays told.
 */

import { type HoodFault, hoodFaults, stationFrom } from './station';
import type { WrittenStation } from './station-schema';
import { reasonWords } from './words';

const stopping: ReadonlySet<HoodFault> = new Set<HoodFault>([
  'opening-missing',
  'face-too-slow',
  'face-too-fast',
]);

export type HoodAmiss = { readonly says: string; readonly stops: boolean };

/** Undefined where nothing is amiss, and of any other place. @param on the day, "2026-11-29" */
export function hoodAmiss(written: WrittenStation, on: string): HoodAmiss | undefined {
  const station = stationFrom(written, on);
  const [first] = station.is === 'ducted-hood' ? hoodFaults(station, on) : [];
  return first && { says: reasonWords[first], stops: stopping.has(first) };
}
