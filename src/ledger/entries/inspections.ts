/** The walk along the containers: what was seen at each, what has to be done, and that it was done. */
import * as z from 'zod/mini';
import { Hash, Id, Slug } from './identity';
import { Instant } from './moments';
import { Photos } from './photos';
import { Line, Note, text } from './text';

/** Something that is not as it should be: a task until it is closed. `look` is the question of the list it came of. */
export const Found = z.strictObject({
  findingId: Id,
  look: Slug,
  ask: Note,
  /** What was answered, and more words to it. */
  answer: Note,
  note: z.optional(Note),
  /** It must be dealt with at once. */
  stops: z.optional(z.boolean()),
  photos: z.optional(Photos),
});

/** One container on a walk; nothing found means that each look was as it should be. */
export const ContainerInspected = z.strictObject({
  kind: z.literal('container-inspected'),
  v: z.literal(1),
  walkId: Id,
  containerId: Id,
  /** The looks that were asked, in their order. */
  looks: z.array(Slug).check(z.minLength(1), z.maxLength(30)),
  found: z.array(Found).check(z.maxLength(30)),
  startedAt: Instant,
  /** Answered sooner than a person can look. */
  quick: z.optional(z.boolean()),
});

/** The end of a walk. What is asked of the place as a whole is answered once. */
export const WalkFinished = z.strictObject({
  kind: z.literal('walk-finished'),
  v: z.literal(1),
  walkId: Id,
  list: z.strictObject({ id: Slug, version: text(20), hash: Hash, title: Line }),
  startedAt: Instant,
  containerIds: z.array(Id).check(z.maxLength(500)),
  /** Containers that nobody looked at, and why. */
  notSeen: z.array(z.strictObject({ containerId: Id, why: Note })).check(z.maxLength(500)),
  looks: z.array(Slug).check(z.maxLength(30)),
  /** Readings of the place, as they were read. */
  readings: z.array(z.strictObject({ look: Slug, value: text(20), unit: text(20) })).check(z.maxLength(30)),
  found: z.array(Found).check(z.maxLength(30)),
});

export const FindingClosed = z.strictObject({
  kind: z.literal('finding-closed'),
  v: z.literal(1),
  findingId: Id,
  /** What was done. */
  done: Note,
  photos: z.optional(Photos),
});

export type Found = z.infer<typeof Found>;
export type ContainerInspected = z.infer<typeof ContainerInspected>;
export type WalkFinished = z.infer<typeof WalkFinished>;
export type FindingClosed = z.infer<typeof FindingClosed>;
