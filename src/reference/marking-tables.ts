/** Words that a law has on a container before it is shipped. Apart from tables.ts, which has what every page needs. */
import * as z from 'zod/mini';
import { checked } from './checked';
import markingJson from './marking.json';
import { Constant, told } from './tables';

/** To the letter, as the law has it. */
const Fixed = z.strictObject({ text: z.string(), ...told });

export const marking = checked(
  () =>
    z.strictObject({
      /** United States, federal. */
      shipment: z.strictObject({
        warning: Fixed,
        generator: Fixed,
        generatorNumber: Fixed,
        manifest: Fixed,
        wasteNumbers: Fixed,
        /** The largest container that is marked so. */
        largest: z.extend(Constant, { unit: z.literal('US gal') }),
      }),
    }),
  markingJson,
);
