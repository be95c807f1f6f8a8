/** Handing over, as it is or treated first: what is usual, what is known of counting and storage days, and which difference in a load counts. Apart from tables.ts, which has what every page needs. */
import * as z from 'zod/mini';
import { checked } from './checked';
import handingOverJson from './handing-over.json';
import { Constant, Ranged, told } from './tables';

const Said = z.strictObject({ text: z.string(), ...told });
/** What somebody wrote, and whether one of us read it there. */
export type Said = z.infer<typeof Said>;

export const handingOver = checked(
  () =>
    z.strictObject({
      settling: Ranged,
      filtering: Ranged,
      counting: z.array(Said),
      clock: z.array(Said),
      /** Share of what the papers say by which a load may differ before it has to be explained. */
      difference: z.extend(Constant, { unit: z.literal('%') }),
      /** Days of waste that was refused and came back. */
      returned: z.array(Said),
    }),
  handingOverJson,
);
