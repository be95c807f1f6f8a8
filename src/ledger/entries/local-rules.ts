/** What the workshop's authority or collector has said. A later statement of the same rule replaces the earlier one. */
import * as z from 'zod/mini';
import { WrittenPercent, writtenIn } from '../../quantities/written';
import { Metal } from './findings';
import { Day } from './moments';
import { Line } from './text';

const Days = writtenIn('days');
const YesOrNo = z.enum(['yes', 'no']);
const Ph = writtenIn('1');

/** Most of each metal in what may be let out; a metal that is not named has no limit there. */
const DischargeLimits = z
  .partialRecord(Metal, writtenIn('mg/L'))
  .check(z.refine((limits) => Object.keys(limits).length > 0, 'no metal is named'));

const DischargePh = z
  .strictObject({ low: Ph, high: Ph })
  .check(
    z.refine(({ low, high }) => Number(low.value) < Number(high.value), 'the ends are the wrong way round'),
  );

/** One rule and its value. */
export const LocalRule = z.discriminatedUnion('rule', [
  z.strictObject({ rule: z.literal('storage-days'), value: Days }),
  z.strictObject({ rule: z.literal('fill-limit'), value: WrittenPercent }),
  z.strictObject({ rule: z.literal('inspection-days'), value: Days }),
  z.strictObject({ rule: z.literal('treatment-allowed'), value: YesOrNo }),
  z.strictObject({ rule: z.literal('discharge-limits'), value: DischargeLimits }),
  z.strictObject({ rule: z.literal('discharge-ph'), value: DischargePh }),
]);

export const LocalRuleStated = z.strictObject({
  kind: z.literal('local-rule-stated'),
  v: z.literal(1),
  stated: LocalRule,
  saidBy: Line,
  saidOn: Day,
  /** Letter, permit or page it stands in. */
  document: z.optional(Line),
});

export type LocalRule = z.infer<typeof LocalRule>;
export type RuleName = LocalRule['rule'];
/** Rules that only a workshop with an authorised discharge has; of the others each needs an answer. */
export type DischargeRule = 'discharge-limits' | 'discharge-ph';
export type UsualRule = Exclude<RuleName, DischargeRule>;

export const isUsualRule = (stated: LocalRule): stated is Extract<LocalRule, { rule: UsualRule }> =>
  stated.rule !== 'discharge-limits' && stated.rule !== 'discharge-ph';
export type LocalRuleStated = z.infer<typeof LocalRuleStated>;
