/** Handing over as it is, or treated first: what is usual, and what is known of counting and storage days. Apart from tables.ts, which has what every page needs. */
import * as z from 'zod/mini';
import handingOverJson from './handing-over.json';
import { Ranged, told } from './tables';

const Said = z.strictObject({ text: z.string(), ...told });
/** What somebody wrote, and whether one of us read it there. */
export type Said = z.infer<typeof Said>;

export const handingOver = z
  .strictObject({
    settling: Ranged,
    filtering: Ranged,
    counting: z.array(Said),
    clock: z.array(Said),
  })
  .parse(handingOverJson);
