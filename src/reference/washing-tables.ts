/** How well a residue is washed, by the way it is done. Apart from tables.ts, which has what every page needs. */
import * as z from 'zod/mini';
import { checked } from './checked';
import { Ranged } from './tables';
import washingJson from './washing.json';

/** `drained`: water poured on and through it on a cloth. `settled`: stirred up, left to settle, poured off. */
export const washWays = ['drained', 'settled'] as const;
export type WashWay = (typeof washWays)[number];

/** Of what perfect mixing would take out with a wash, the share that is taken out. */
export const washing = checked(
  () => z.strictObject({ evenness: z.record(z.enum(washWays), Ranged) }),
  washingJson,
);
