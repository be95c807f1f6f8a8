/** How far a reading of a pot, or a sample of it, may be off beside its instrument. Apart from tables.ts, which has what every page needs. */
import * as z from 'zod/mini';
import potReadingsJson from './pot-readings.json';
import { Constant, Ranged } from './tables';

export const potReadings = z
  .strictObject({
    /** pH of the model at a dose, where the curve is not steep. */
    modelPh: Constant,
    /** The same in acid, where an electrode is far from its buffers; also what any pH below 1 may be off. */
    acidPh: Constant,
    benchSample: Ranged,
  })
  .parse(potReadingsJson);
