/**
 * What the USA asks of who makes hazardous waste, and a few limits of the European Union: quantities, days, years, and what
 * is counted. Starting points for a workshop's own rules; none of them rules by itself. Apart from tables.ts, which has what
 * every page needs.
 */
import * as z from 'zod/mini';
import { checked } from './checked';
import generatorJson from './generator.json';
import { Constant, SourceId } from './tables';

const Ruled = z.strictObject({
  /** In our own words. */
  rule: z.string(),
  source: SourceId,
  status: z.enum(['verified', 'memory']),
});

/** `reached`: already at the limit; `passed`: only above it. */
const OnSite = z.strictObject({ limit: Constant, over: z.enum(['reached', 'passed']) });

export type CountingRule = keyof typeof generatorJson.counting;
export const countingRules = Object.keys(generatorJson.counting) as [CountingRule, ...CountingRule[]];

export const generator = checked(
  () =>
    z.strictObject({
      /** Limits of the categories by what arises in a calendar month. */
      month: z.strictObject({ smallest: Constant, large: Constant, acute: Constant, acuteSpill: Constant }),
      /** Most that may stand on site at any time. */
      onSite: z.strictObject({ VSQG: OnSite, SQG: OnSite }),
      storage: z.strictObject({
        SQG: Constant,
        'SQG-far': Constant,
        far: Constant,
        LQG: Constant,
        'EU-disposal': Constant,
        'EU-recovery': Constant,
      }),
      nearTheWork: z.strictObject({ volume: Constant, days: Constant }),
      inspection: Constant,
      proof: z.strictObject({
        'LQG-ask': Constant,
        'LQG-report': Constant,
        'LQG-ask-before': Constant,
        'LQG-report-before': Constant,
        'SQG-report': Constant,
      }),
      retention: z.strictObject({ USA: Constant, EU: Constant }),
      counting: z.record(z.enum(countingRules), Ruled),
    }),
  generatorJson,
);
