/** A paper that was made, named by the hash of its content: the one printed on it and in the data inside it. */
import * as z from 'zod/mini';
import { Hash, Id } from './identity';
import { Day } from './moments';
import { Signature } from './signatures';
import { Line } from './text';

export const PaperMade = z.strictObject({
  kind: z.literal('paper-made'),
  v: z.literal(1),
  paperId: Id,
  containerIds: z.array(Id).check(z.maxLength(500)),
  contentHash: Hash,
  fileName: Line,
  format: z.enum(['pdf', 'json']),
  /** Which paper; absent in entries from before there were several. */
  paper: z.optional(z.enum(['disposal', 'labels', 'receipt', 'register', 'year'])),
  /** The label of each container is in it, too. */
  labels: z.optional(z.literal(true)),
  /** First and last day of a paper about a time. */
  period: z.optional(z.strictObject({ first: Day, last: Day })),
  /** Under the generator's statement. */
  signature: z.optional(Signature),
});

export type PaperMade = z.infer<typeof PaperMade>;
