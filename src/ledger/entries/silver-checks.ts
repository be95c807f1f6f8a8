/** A spot test for silver, look by look: chloride, ammonia, acid. */
import * as z from 'zod/mini';
import { WrittenVolume } from '../../quantities/written';
import { Id, Slug } from './identity';
import { Instant } from './moments';
import { Note } from './text';

export const SilverLook = z.strictObject({
  /** Name of the look, and of what was seen, as in `safety/silver-check`. */
  look: Slug,
  seen: Slug,
  at: Instant,
});

export const SilverChecked = z.strictObject({
  kind: z.literal('silver-checked'),
  v: z.literal(1),
  checkId: Id,
  batchId: z.nullable(Id),
  sample: z.optional(WrittenVolume),
  looks: z.array(SilverLook).check(z.minLength(1), z.maxLength(12)),
  outcome: z.enum(['silver', 'not-silver', 'not-conclusive']),
  /** The waste that the test itself made, as logged. */
  streamIds: z.array(Id).check(z.maxLength(4)),
  note: z.optional(Note),
});

export type SilverLook = z.infer<typeof SilverLook>;
export type SilverChecked = z.infer<typeof SilverChecked>;
