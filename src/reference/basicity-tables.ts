/** Basicity of the bases, g of calcium oxide that a gram is worth: pure, and as handbooks have it of what is sold. */
import * as z from 'zod/mini';
import basicityJson from './basicity.json';
import { type BaseId, baseIds, Constant } from './tables';

export const basicity = z
  .record(
    z.enum(baseIds as [BaseId, ...BaseId[]]),
    z.strictObject({ pure: Constant, handbook: z.optional(Constant) }),
  )
  .parse(basicityJson);
