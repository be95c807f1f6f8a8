/** Basicity of the bases, g of calcium oxide that a gram is worth: pure, and as handbooks have it of what is sold. */
import * as z from 'zod/mini';
import basicityJson from './basicity.json';
import { checked } from './checked';
import { type BaseId, baseIds, Constant, told } from './tables';

export const basicity = checked(
  () =>
    z.strictObject({
      /** How the standard states it. */
      basis: z.strictObject({ unit: z.literal('g/kg'), ...told }),
      bases: z.record(
        z.enum(baseIds as [BaseId, ...BaseId[]]),
        z.strictObject({ pure: Constant, handbook: z.optional(Constant) }),
      ),
    }),
  basicityJson,
);
