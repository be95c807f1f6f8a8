/** How a base is put in by hand. Apart from tables.ts, which has what every page needs. */
import * as z from 'zod/mini';
import { checked } from './checked';
import dosingJson from './dosing.json';
import { type BaseId, baseIds, Constant, Ranged } from './tables';

export const dosing = checked(
  () =>
    z.strictObject({
      warmest: Constant,
      /** Base in the slurry or solution that it goes in as, by mass. */
      slurry: z.record(z.enum(baseIds as [BaseId, ...BaseId[]]), Ranged),
      /** Between a portion and the pH reading after it. */
      wait: z.record(z.enum(baseIds as [BaseId, ...BaseId[]]), Ranged),
    }),
  dosingJson,
);
