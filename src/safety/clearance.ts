/** How long a completed checklist clears its step. It is not proof of safety. What else ends it: `ledger/clearance.ts`. */
import type { Checklist } from './checklist-schema';

const MINUTE_MS = 60_000;

/**
 * End of a clearance, on the whole minute a person reads. When someone leaves, it ends at the stated time of return, at
 * most `longestHours` after it was given.
 * @example clearanceUntil(filtration, '2026-05-12T10:26:37.000Z') // '2026-05-12T12:26:00.000Z'
 */
export function clearanceUntil(list: Checklist, completedAt: string, returnAt?: string): string {
  const from = Date.parse(completedAt);
  const hours = returnAt === undefined ? list.validHours : (list.longestHours ?? list.validHours);
  const latest = from + hours * 60 * MINUTE_MS;
  const end = returnAt === undefined ? latest : Math.min(latest, Date.parse(returnAt));
  return new Date(Math.floor(end / MINUTE_MS) * MINUTE_MS).toISOString();
}
