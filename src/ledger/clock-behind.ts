/** Whether the clock of the phone stands before the hour at which the record was last written. */
import type { State } from './state';

/** Two phones of one workshop differ by less than this, in ms. Status: reasoned. */
const clocksDifferMs = 5 * 60_000;

/**
 * When the last entry was written, where that is still to come by this clock: it was set back, or another stood ahead.
 * Entries keep their order all the same, but days and limits are counted by the clock.
 * @param now UTC with milliseconds
 */
export function writtenAhead({ log }: Pick<State, 'log'>, now: string): string | null {
  const last = log.at(-1)?.writtenAt;
  return last !== undefined && Date.parse(last) - Date.parse(now) > clocksDifferMs ? last : null;
}
