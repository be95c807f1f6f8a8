/** The time, as a signal that moves on while the page is in view. */
import { signal } from '@preact/signals';

export const moment = (): string => new Date().toISOString();

/** Moved on every few seconds: minutes left are shown, never seconds. */
const everyMs = 5_000;

export const now = signal(moment());

export function startClock(): void {
  const tick = (): void => {
    now.value = moment();
  };
  setInterval(tick, everyMs);
  document.addEventListener('visibilitychange', tick);
}

/** IANA name of the zone this device is in: asked anew each time, since a phone that travels changes it under an open page. */
export const zoneNow = (): string => Intl.DateTimeFormat().resolvedOptions().timeZone || '+0';
