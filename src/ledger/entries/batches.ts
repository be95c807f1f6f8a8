/** One lot of feed worked together, and the operations on it. */
import * as z from 'zod/mini';
import { WrittenMass } from '../../quantities/written';
import { Code, Id, Slug, TimedId } from './identity';
import { Note } from './text';

export const Feed = z.strictObject({
  capacitors: z.enum(['precious-metal-electrode', 'base-metal-electrode', 'mixed', 'unknown']),
  era: z.enum(['may-hold-lead', 'lead-free', 'unknown']),
  mass: WrittenMass,
});

export const BatchOpened = z.strictObject({
  kind: z.literal('batch-opened'),
  v: z.literal(1),
  batchId: Id,
  code: Code,
  feed: Feed,
  note: z.optional(Note),
});

/** `batchId` is null for a step on the contents of a container, which may come from several batches. */
export const StepStarted = z.strictObject({
  kind: z.literal('step-started'),
  v: z.literal(1),
  stepId: Id,
  batchId: z.nullable(Id),
  step: Slug,
  /** Entry of the cleared checklist; null when it was done without one, which stays visible. */
  clearance: z.nullable(TimedId),
  stationId: z.optional(Id),
  note: z.optional(Note),
});

export const StepEnded = z.strictObject({
  kind: z.literal('step-ended'),
  v: z.literal(1),
  stepId: Id,
  note: z.optional(Note),
});

export type Feed = z.infer<typeof Feed>;
export type BatchOpened = z.infer<typeof BatchOpened>;
export type StepStarted = z.infer<typeof StepStarted>;
export type StepEnded = z.infer<typeof StepEnded>;
