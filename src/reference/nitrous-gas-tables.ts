/** Nitrous gas: how it comes, what carries it away, and what is refused. Apart from tables.ts, which has what every page needs. */
import * as z from 'zod/mini';
import { checked } from './checked';
import nitrousGasJson from './nitrous-gas.json';
import { Constant, type Metal, metalSymbols, Ranged, told } from './tables';

const Said = z.strictObject({ text: z.string(), ...told });
/** What somebody wrote, and whether one of us read it there. */
export type Said = z.infer<typeof Said>;
const Condition = z.strictObject({ id: z.string(), text: z.string(), ...told });
/** What has to hold beside the figures, and whether one of us read it. */
export type Condition = z.infer<typeof Condition>;

export const nitrousGas = checked(
  () =>
    z.strictObject({
      gasVolume: Constant,
      /** Why all of it is counted as nitrogen dioxide. */
      counted: Said,
      /** What metal may be where nobody knows: the worst of these is taken. */
      unknownMetal: z.strictObject({
        metals: z.array(z.enum(metalSymbols as [Metal, ...Metal[]])),
        ...told,
        note: z.string(),
      }),
      /** Of all the gas of a lot, the share that comes first. */
      peak: z.strictObject({ share: Ranged, within: Constant }),
      /** As it multiplies the airflow: 1 and more. */
      mixing: z.strictObject({ usual: Ranged, least: Constant, most: Constant }),
      /** Mean speed of the air in the opening of a hood. */
      face: z.strictObject({
        slowest: Constant,
        fastest: Constant,
        /** However a certificate reads. */
        certifiedSlowest: Constant,
        certifiedFastest: Constant,
        readingHolds: Constant,
        /** So long before it ends it is told. */
        readingDueBefore: Constant,
        measuredWithin: Constant,
      }),
      /** Highest concentration in the duct, as a multiple of what is immediately dangerous. */
      duct: Constant,
      /** Metal in one lot at the most. */
      ceiling: Constant,
      refused: z.strictObject({ 'room-air': Said, 'ductless-hood': Said }),
      conditions: z.strictObject({
        'ducted-hood': z.array(Condition),
        outdoors: z.array(Condition),
        lots: z.array(Condition),
      }),
    }),
  nitrousGasJson,
);
