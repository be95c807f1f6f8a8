/** A checklist that was gone through, with every question as it was asked. */
import * as z from 'zod/mini';
import { OwnChange } from '../../safety/own-lists';
import { Hash, Id, Slug, TimedId } from './identity';
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
  /** The range that was wanted then, and what it was worked out from, if it was. */
  min: z.optional(text(20)),
  max: z.optional(text(20)),
  from: z.optional(Note),
  /** Who was named in it, and when they ring or come. */
  who: z.optional(z.strictObject({ name: Line, at: z.optional(Instant) })),
  /** The app gave the answer, from this; nobody tapped it. */
  byApp: z.optional(Note),
  /** The workshop's own item, or a shipped one whose range the workshop has changed. */
  own: z.optional(z.boolean()),
  range: z.optional(z.enum(['tightened', 'loosened'])),
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
  /** The container that it was gone through for, where the step is on one. */
  containerId: z.optional(Id),
  /** The step that had begun already when the list was gone through: it clears nothing. */
  late: z.optional(z.strictObject({ stepId: Id })),
  /** `hash` is over the checklist's own content, so that the very text can be found again. */
  checklist: z.strictObject({ id: Slug, version: text(20), hash: Hash, title: Line }),
  outcome: z.enum(['cleared', 'stopped']),
  startedAt: Instant,
  finishedAt: Instant,
  /** End of the clearance; null when there is none. */
  validUntil: z.nullable(Instant),
  /** The station that it was gone through at, and its name then. */
  stationId: z.optional(Id),
  place: z.optional(Line),
  second: z.optional(z.strictObject({ name: Line, at: z.optional(Instant) })),
  /** Of a list that asks which base stands open: those that were in order then. */
  bases: z.optional(z.array(Slug).check(z.maxLength(10))),
  answers: z.array(ChecklistAnswer).check(z.minLength(1), z.maxLength(60)),
});

/** What is asked while a step runs and after it, answered one at a time. */
export const ChecklistAnsweredLater = z.strictObject({
  kind: z.literal('checklist-answered-later'),
  v: z.literal(1),
  /** Entry of the list that asked. */
  checklist: TimedId,
  answer: ChecklistAnswer,
});

/** The workshop's own question, or another range in one of ours. */
export const ListChanged = z.strictObject({
  kind: z.literal('list-changed'),
  v: z.literal(1),
  change: OwnChange,
});

export type ListChanged = z.infer<typeof ListChanged>;
export type ChecklistAnswer = z.infer<typeof ChecklistAnswer>;
export type ChecklistAnsweredLater = z.infer<typeof ChecklistAnsweredLater>;
export type ChecklistFinished = z.infer<typeof ChecklistFinished>;
