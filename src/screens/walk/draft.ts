/** A walk as it waits for the person: what of it is in no entry yet. */
import * as z from 'zod/mini';
import { Found } from '../../ledger/entries/inspections';
import { Photos } from '../../ledger/entries/photos';
import { Answered } from '../../safety/run-schema';

/** What is wrong at the container in hand, or in the place with null: the look that is asked, what was answered to it. */
const Wrong = z.object({
  of: z.nullable(z.string()),
  look: z.nullable(z.string()),
  answered: z.nullable(Answered),
  /** Found at this container before, and to be written with it. */
  found: z.array(Found),
});

/** What must be dealt with at once; `written` is false while it is in no entry. */
const Stop = z.object({
  of: z.nullable(z.string()),
  findingId: z.string(),
  answered: Answered,
  written: z.boolean(),
});

/** What was done about a finding that is in no entry yet. */
const Done = z.object({ findingId: z.string(), done: z.string(), photos: Photos });

export const WalkDraft = z.object({
  walkId: z.string(),
  startedAt: z.string(),
  /** When it was made, of a walk that is written down later; null for one that is made now. */
  madeAt: z.nullable(z.string()),
  /** When what stands on the screen came up. */
  openedAt: z.string(),
  notSeen: z.array(z.object({ containerId: z.string(), why: z.string() })),
  /** Looks of the place, and what was found there. */
  place: z.array(Answered),
  found: z.array(Found),
  done: z.array(Done),
  wrong: z.nullable(Wrong),
  stop: z.nullable(Stop),
});
export type WalkDraft = z.infer<typeof WalkDraft>;
export type Wrong = z.infer<typeof Wrong>;
export type Stop = z.infer<typeof Stop>;

/** @param only the one container that it is for; undefined for a whole walk */
export const walkDraft = (only: string | undefined): string => (only === undefined ? 'walk' : `walk/${only}`);

export const freshWalk = (walkId: string, at: string): WalkDraft => ({
  walkId,
  startedAt: at,
  madeAt: null,
  openedAt: at,
  notSeen: [],
  place: [],
  found: [],
  done: [],
  wrong: null,
  stop: null,
});

/** Words and photos to a finding, before it is written. */
export const AddedDraft = z.object({ note: z.string(), photos: Photos });
export const emptyAdded = (): z.infer<typeof AddedDraft> => ({ note: '', photos: [] });
