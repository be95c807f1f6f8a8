/** What the workshop's authority or collector has said. A later statement of the same rule replaces the earlier one. */
import * as z from 'zod/mini';
import { WrittenMass, WrittenPercent, WrittenVolume, writtenIn } from '../../quantities/written';
import { Metal } from './findings';
import { Slug } from './identity';
import { Day } from './moments';
import { Photos } from './photos';
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

export const Law = z.enum(['us-federal', 'us-california', 'eu']);

/** One rule and its value. */
export const LocalRule = z.discriminatedUnion('rule', [
  z.strictObject({ rule: z.literal('storage-days'), value: Days }),
  z.strictObject({ rule: z.literal('fill-limit'), value: WrittenPercent }),
  z.strictObject({ rule: z.literal('inspection-days'), value: Days }),
  z.strictObject({ rule: z.literal('treatment-allowed'), value: YesOrNo }),
  /** Laws whose classes, codes and labels are wanted here. */
  z.strictObject({ rule: z.literal('laws'), value: z.array(Law).check(z.minLength(1), z.maxLength(5)) }),
  /** As the authority calls it. */
  z.strictObject({ rule: z.literal('generator-category'), value: Line }),
  z.strictObject({ rule: z.literal('month-limit'), value: WrittenMass }),
  z.strictObject({ rule: z.literal('on-site-limit'), value: WrittenMass }),
  /** Most of one waste that may stand beside the work, and the days to move what is more. */
  z.strictObject({ rule: z.literal('near-work-limit'), value: WrittenVolume }),
  z.strictObject({ rule: z.literal('near-work-days'), value: Days }),
  z.strictObject({ rule: z.literal('proof-days'), value: Days }),
  z.strictObject({ rule: z.literal('retention-years'), value: writtenIn('years') }),
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
  /** Taken over from a starting point of ours, as it stood there. */
  takenFrom: z.optional(z.strictObject({ start: Slug, cite: Line, read: Line })),
  photos: z.optional(Photos),
});

export type LocalRule = z.infer<typeof LocalRule>;
export type RuleName = LocalRule['rule'];
/** Rules that only a workshop with an authorised discharge has. */
export type DischargeRule = 'discharge-limits' | 'discharge-ph';
export type UsualRule = Exclude<RuleName, DischargeRule>;

export const isUsualRule = (stated: LocalRule): stated is Extract<LocalRule, { rule: UsualRule }> =>
  stated.rule !== 'discharge-limits' && stated.rule !== 'discharge-ph';

/** Rules whose value is one written quantity. */
export type AmountRule = Exclude<UsualRule, 'treatment-allowed' | 'laws' | 'generator-category'>;

export const isAmountRule = (stated: LocalRule): stated is Extract<LocalRule, { rule: AmountRule }> =>
  isUsualRule(stated) &&
  stated.rule !== 'treatment-allowed' &&
  stated.rule !== 'laws' &&
  stated.rule !== 'generator-category';
export type LocalRuleStated = z.infer<typeof LocalRuleStated>;
export type Law = z.infer<typeof Law>;
