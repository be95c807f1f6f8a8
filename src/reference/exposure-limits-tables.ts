/** Limits of nitrous gas in the air that people breathe. Apart from tables.ts, which has what every page needs. */
import * as z from 'zod/mini';
import { checked } from './checked';
import exposureLimitsJson from './exposure-limits.json';
import { Constant } from './tables';

export type LimitId = keyof typeof exposureLimitsJson.limits;
export const limitIds = Object.keys(exposureLimitsJson.limits) as [LimitId, ...LimitId[]];

/** `ceiling`: at no time above it. The others are means over so long. */
const Over = z.enum(['ceiling', '15-min', '8-h']);

const Limit = z.strictObject({
  name: z.string(),
  over: Over,
  nitrogenDioxide: Constant,
});

export const exposureLimits = checked(
  () =>
    z.strictObject({
      limits: z.record(z.enum(limitIds), Limit),
      /** Immediately dangerous to life or health: no limit to work under, shown for comparison. */
      dangerous: z.strictObject({ name: z.string(), nitrogenDioxide: Constant }),
    }),
  exposureLimitsJson,
);
