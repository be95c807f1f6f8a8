/** How far a reading of a pot, or a sample of it, may be off beside its instrument. Apart from tables.ts, which has what every page needs. */
import * as z from 'zod/mini';
import { checked } from './checked';
import potReadingsJson from './pot-readings.json';
import { Constant, Ranged } from './tables';

export const potReadings = checked(
  () =>
    z.strictObject({
      /** How far the pH of the model is off at a dose in acid, where an electrode is far from its buffers. */
      acidPh: Constant,
      /** The same where metals come down, whichever way they do. */
      turnPh: Constant,
      benchSample: Ranged,
    }),
  potReadingsJson,
);
