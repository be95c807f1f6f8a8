/** Hazardous waste in the United States: characteristics, land disposal, reportable quantities. */
import * as z from 'zod/mini';
import { checked } from './checked';
import rcraJson from './rcra.json';
import { Constant, Num, Ranged, told } from './tables';

const ruled = { rule: z.string(), ...told };
const rules = Object.keys(rcraJson.rules) as (keyof typeof rcraJson.rules)[];
type RcraRule = (typeof rules)[number];

export type ToxicityCode = keyof typeof rcraJson.toxicity;
export const toxicityCodes = Object.keys(rcraJson.toxicity) as ToxicityCode[];

const Standard = z.strictObject({
  wasteWater: Num,
  /** In the extract of the leaching test, of all that is no waste water. */
  other: Num,
  status: told.status,
  /** It counts only for the code that is its own. */
  underlying: z.optional(z.literal(false)),
});

export const rcra = checked(
  () =>
    z.strictObject({
      rules: z.record(z.enum(rules as [RcraRule, ...RcraRule[]]), z.strictObject(ruled)),
      corrosive: z.strictObject({ acid: Constant, alkaline: Constant }),
      fewSolids: Constant,
      leachant: Constant,
      liquor: Ranged,
      toxicity: z.record(
        z.enum(toxicityCodes as [ToxicityCode, ...ToxicityCode[]]),
        z.strictObject({ element: z.string(), name: z.string(), limit: Constant }),
      ),
      notToxicity: z.strictObject({ elements: z.array(z.string()), ...ruled }),
      landDisposal: z.strictObject({
        unit: z.literal('mg/L'),
        source: told.source,
        note: z.string(),
        values: z.record(z.string(), Standard),
        /** Codes by listing, and the elements that have a standard in their row; `besides`: what else has, and is no element. */
        listed: z.record(
          z.string(),
          z.strictObject({ elements: z.array(z.string()), besides: z.string(), ...told }),
        ),
      }),
      reportable: z.strictObject({ unit: z.literal('lb'), ...told, values: z.record(z.string(), Num) }),
    }),
  rcraJson,
);
