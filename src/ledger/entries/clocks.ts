/** Times that matter to somebody's skin, kept in the record so that they survive whatever befalls the phone. */
import * as z from 'zod/mini';
import { Id } from './identity';
import { Instant } from './moments';
import { Line, Note } from './text';

/**
 * `rinse`: eyes or skin under water; `ammonia-silver`: a test to be destroyed before it ages; `check-in`: somebody rings or
 * comes; `purge`: air being cleared; `look`: the next look at a step that runs.
 */
export const ClockOf = z.enum(['rinse', 'ammonia-silver', 'check-in', 'purge', 'look']);

export const ClockStarted = z.strictObject({
  kind: z.literal('clock-started'),
  v: z.literal(1),
  clockId: Id,
  of: ClockOf,
  due: Instant,
  batchId: z.nullable(Id),
  /** Who rings, for a `check-in`. */
  name: z.optional(Line),
  phone: z.optional(Line),
});

/** `done`: it came to its end as it should; `not-needed`: it was started for nothing, or something else took its place. */
export const ClockStopped = z.strictObject({
  kind: z.literal('clock-stopped'),
  v: z.literal(1),
  clockId: Id,
  how: z.enum(['done', 'not-needed']),
  note: z.optional(Note),
});

export type ClockOf = z.infer<typeof ClockOf>;
export type ClockStarted = z.infer<typeof ClockStarted>;
export type ClockStopped = z.infer<typeof ClockStopped>;
