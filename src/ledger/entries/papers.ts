/** A paper that was made, named by the hash of its content: the one printed on it and in the data inside it. */
import * as z from 'zod/mini';
import { Hash, Id } from './identity';
import { Line } from './text';

export const PaperMade = z.strictObject({
  kind: z.literal('paper-made'),
  v: z.literal(1),
  paperId: Id,
  containerIds: z.array(Id).check(z.maxLength(500)),
  contentHash: Hash,
  fileName: Line,
  format: z.enum(['pdf', 'json']),
});

export type PaperMade = z.infer<typeof PaperMade>;
