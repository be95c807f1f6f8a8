/** A checklist that was gone through, with every question as it was asked. */
import * as z from 'zod/mini';
import { Hash, Id, Slug } from './identity';
import { Instant } from './moments';
import { Line, Note, text } from './text';

export const ChecklistAnswer = z.strictObject({
  item: Slug,
  /** The question, in the words that stood on the screen. */
  ask: Note,
  kind: Slug,
  /** The answer chosen or typed; a reading keeps its digits. */
  answer: Note,
  unit: z.optional(text(20)),
  reason: z.optional(Note),
  /** This answer stopped the checklist. */
  stopped: z.optional(z.boolean()),
  at: Instant,
  /** Answered sooner than a person can look. */
  quick: z.optional(z.boolean()),
});

export const ChecklistFinished = z.strictObject({
  kind: z.literal('checklist-finished'),
  v: z.literal(1),
  runId: Id,
  step: Slug,
  batchId: z.nullable(Id),
  /** `hash` is over the checklist's own content, so that the very text can be found again. */
  checklist: z.strictObject({ id: Slug, version: text(20), hash: Hash, title: Line }),
  outcome: z.enum(['cleared', 'stopped']),
  startedAt: Instant,
  finishedAt: Instant,
  /** End of the clearance; null when there is none. */
  validUntil: z.nullable(Instant),
  place: z.optional(Line),
  second: z.optional(z.strictObject({ name: Line, at: z.optional(Instant) })),
  answers: z.array(ChecklistAnswer).check(z.minLength(1), z.maxLength(60)),
});

export type ChecklistAnswer = z.infer<typeof ChecklistAnswer>;
export type ChecklistFinished = z.infer<typeof ChecklistFinished>;
