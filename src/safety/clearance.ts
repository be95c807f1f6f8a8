/** A completed checklist, for one step of one batch, until it expires or something changes. It is not proof of safety. */
import * as z from 'zod/mini';
import { standing } from './checklist-run';
import { type Checklist, Step } from './checklist-schema';
import { contentHash } from './checklists';
import { Slug } from './cited';
import { type Run, Situation } from './run-schema';

const MINUTE_MS = 60_000;

export const Clearance = z.strictObject({
  list: z.strictObject({ id: Slug, version: z.int(), hash: z.string() }),
  step: Step,
  holdsFor: Situation,
  completedAt: z.string(),
  until: z.string(),
});

export type Clearance = z.infer<typeof Clearance>;

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

/** The clearance that a complete run gives; undefined while it is not complete. */
export function clearanceOf(run: Run, completedAt: string, returnAt?: string): Clearance | undefined {
  if (standing(run).state !== 'complete') return undefined;
  const { bounds: _, ...holdsFor } = run.context;
  return {
    list: { id: run.list.id, version: run.list.version, hash: contentHash(run.list) },
    step: run.list.step,
    holdsFor,
    completedAt,
    until: clearanceUntil(run.list, completedAt, returnAt),
  };
}

export type ClearanceState =
  | { readonly state: 'valid'; readonly until: string }
  | { readonly state: 'expired'; readonly since: string }
  | { readonly state: 'different-batch' }
  | { readonly state: 'different-person' }
  | { readonly state: 'different-place' }
  | { readonly state: 'different-acid' };

/** A clearance without a batch (readiness, inspection) holds for every batch; what was not stated is not compared. */
const differs = (held: string | null | undefined, now: string | null | undefined): boolean =>
  held !== null && held !== undefined && now !== undefined && held !== now;

/** Whether a clearance holds at `now`. At the minute of its end it has ended. */
export function clearanceState(
  { holdsFor, until }: Clearance,
  now: string,
  situation: Situation,
): ClearanceState {
  if (differs(holdsFor.batchId, situation.batchId)) return { state: 'different-batch' };
  if (holdsFor.person !== situation.person) return { state: 'different-person' };
  if (differs(holdsFor.place, situation.place)) return { state: 'different-place' };
  if (differs(holdsFor.acid, situation.acid)) return { state: 'different-acid' };
  return Date.parse(now) < Date.parse(until) ? { state: 'valid', until } : { state: 'expired', since: until };
}

/** The lists that must be complete and in date before this one, and are not. */
export const stillRequired = (
  list: Checklist,
  held: readonly Clearance[],
  now: string,
  situation: Situation,
): readonly string[] =>
  list.requires.filter(
    (id) => !held.some((one) => one.list.id === id && clearanceState(one, now, situation).state === 'valid'),
  );

/** Whole minutes until a clearance ends, never below 0. */
export const minutesLeft = (until: string, now: string): number =>
  Math.max(0, Math.floor((Date.parse(until) - Date.parse(now)) / MINUTE_MS));
