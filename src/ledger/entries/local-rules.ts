/** What the workshop's authority or collector has said. A later statement of the same rule replaces the earlier one. */
import * as z from 'zod/mini';
import { WrittenPercent, writtenIn } from '../../quantities/written';
import { Day } from './moments';
import { Line } from './text';

const Days = writtenIn('days');
const YesOrNo = z.enum(['yes', 'no']);

/** One rule and its value. */
export const LocalRule = z.discriminatedUnion('rule', [
  z.strictObject({ rule: z.literal('storage-days'), value: Days }),
  z.strictObject({ rule: z.literal('fill-limit'), value: WrittenPercent }),
  z.strictObject({ rule: z.literal('inspection-days'), value: Days }),
  z.strictObject({ rule: z.literal('treatment-allowed'), value: YesOrNo }),
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
export type LocalRuleStated = z.infer<typeof LocalRuleStated>;
