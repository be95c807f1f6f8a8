/** Hazardous waste in California, as an example of a State that is stricter: soluble and total thresholds. */
import * as z from 'zod/mini';
import californiaJson from './california.json';
import { checked } from './checked';
import { Constant, Num, told } from './tables';

const Ruled = z.strictObject({ rule: z.string(), ...told });

export const california = checked(
  () =>
    z.strictObject({
      toxic: Ruled,
      corrosive: Ruled,
      screen: Ruled,
      ph: z.strictObject({ acid: Constant, alkaline: Constant }),
      fewSolids: Constant,
      leachant: Constant,
      ...told,
      /** STLC, in the extract. */
      soluble: z.strictObject({ unit: z.literal('mg/L'), values: z.record(z.string(), Num) }),
      /** TTLC, in the waste as it is, wet. */
      total: z.strictObject({ unit: z.literal('mg/kg'), values: z.record(z.string(), Num) }),
    }),
  californiaJson,
);
