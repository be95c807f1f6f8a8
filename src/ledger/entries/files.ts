/** Papers of others that came as a file. Like a photo each lies beside the entries, by the hash of its bytes. */
import * as z from 'zod/mini';
import { Hash } from './identity';
import { Line } from './text';

/** `name` is what the file was called; `bytes` how many they are. */
export const FiledPaper = z.strictObject({
  hash: Hash,
  type: z.literal('application/pdf'),
  bytes: z.int().check(z.positive()),
  name: Line,
});
export type FiledPaper = z.infer<typeof FiledPaper>;

/** The most files of one entry. */
export const mostFiles = 6;

export const Files = z.array(FiledPaper).check(z.maxLength(mostFiles));
