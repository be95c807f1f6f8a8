/** A local rule as a form holds it, what is wrong with it, and what is written of it. */
import * as z from 'zod/mini';
import {
  isUsualRule,
  type LocalRule,
  type LocalRuleStated,
  type UsualRule,
} from '../../ledger/entries/local-rules';
import type { IntentionOf } from '../../ledger/intention';
import { type FieldRead, readTyped, Typed } from '../form';
import { given } from '../tried';
import { words } from '../words';
import { ruleWords } from './rule-words';
import { saidFaults, saidOf, saidShape } from './said-fields';

export const RuleFields = z.object({
  amount: Typed,
  allowed: z.enum(['', 'yes', 'no']),
  ...saidShape,
});
export type RuleFields = z.infer<typeof RuleFields>;

/** In the order in which they are asked. */
export const ruleNames = Object.keys(ruleWords) as readonly UsualRule[];
export const isRule = (name: string): name is UsualRule => (ruleNames as readonly string[]).includes(name);

export const unitOf = (rule: Exclude<UsualRule, 'treatment-allowed'>): '%' | 'days' =>
  rule === 'fill-limit' ? '%' : 'days';

export const readAmount = (rule: UsualRule, fields: RuleFields): FieldRead<string> =>
  readTyped(fields.amount, { aboveZero: true, ...(rule === 'fill-limit' ? { most: 100 } : {}) });

/** As stated before, or empty. */
export function ruleFieldsOf(rule: UsualRule, body: LocalRuleStated | undefined): RuleFields {
  const stated = body?.stated;
  const amount =
    stated && isUsualRule(stated) && stated.rule !== 'treatment-allowed' ? stated.value : undefined;
  const unit = rule === 'treatment-allowed' ? '' : unitOf(rule);
  return {
    amount: { typed: amount?.value ?? '', unit: amount?.unit ?? unit },
    allowed: stated?.rule === 'treatment-allowed' ? stated.value : '',
    ...saidOf(body),
  };
}

/** @param today calendar day at the workshop, since nobody can have said it later than that */
export function ruleFaults(rule: UsualRule, fields: RuleFields, today: string) {
  return {
    amount:
      rule !== 'treatment-allowed' && readAmount(rule, fields).state !== 'written'
        ? words.number.missing
        : undefined,
    allowed: rule === 'treatment-allowed' && fields.allowed === '' ? words.choice.missing : undefined,
    ...saidFaults(fields, today),
  };
}

function statedRule(rule: UsualRule, fields: RuleFields): LocalRule | null {
  if (rule === 'treatment-allowed') return fields.allowed === '' ? null : { rule, value: fields.allowed };
  const read = readAmount(rule, fields);
  if (read.state !== 'written') return null;
  const { value } = read.written;
  return rule === 'fill-limit'
    ? { rule, value: { value, unit: '%' } }
    : { rule, value: { value, unit: 'days' } };
}

/** Null while the value is not there. */
export function ruleIntention(rule: UsualRule, fields: RuleFields): IntentionOf<'state-local-rule'> | null {
  const stated = statedRule(rule, fields);
  return (
    stated && {
      do: 'state-local-rule',
      stated,
      saidBy: fields.saidBy,
      saidOn: fields.saidOn,
      ...given('document', fields.document),
    }
  );
}
