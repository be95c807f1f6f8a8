/** What each local rule is called, and what follows while nobody has stated it. */
import type { DischargeRule, RuleName, UsualRule } from '../../ledger/entries/local-rules';

export type RuleWords = {
  readonly name: string;
  readonly ask: string;
  /** What holds while it is not entered. */
  readonly meanwhile: string;
};

export const ruleWords: Readonly<Record<UsualRule, RuleWords>> = {
  'treatment-allowed': {
    name: 'Treatment in the workshop',
    ask: 'May you treat this waste here?',
    meanwhile: 'Treatment is shown for planning only; nothing is called fit for a drain.',
  },
  'storage-days': {
    name: 'Storage time',
    ask: 'How long may waste stay?',
    meanwhile: 'Days are not counted.',
  },
  'fill-limit': {
    name: 'Fill limit',
    ask: 'How full may a container be?',
    meanwhile: '90 % of what it holds is taken.',
  },
  'inspection-days': {
    name: 'Looking at the containers',
    ask: 'How often must you look?',
    meanwhile: 'The checklist for it holds seven days.',
  },
};

/** The same for the rules that only a workshop with an authorised discharge has. */
export const dischargeRuleWords: Readonly<Record<DischargeRule, Omit<RuleWords, 'ask'>>> = {
  'discharge-limits': {
    name: 'Most of each metal, where discharge is authorised',
    meanwhile: 'Figures are held against published values, for reference only.',
  },
  'discharge-ph': {
    name: 'pH, where discharge is authorised',
    meanwhile: 'No pH is shown beside the one you aim at.',
  },
};

/** What the rules are called that only a workshop with an authorised discharge has, within a sentence. */
export const dischargeWords: Readonly<Record<DischargeRule, string>> = {
  'discharge-limits': 'most of each metal where discharge is authorised',
  'discharge-ph': 'pH where discharge is authorised',
};

export const yesNo = { yes: 'allowed', no: 'not allowed' } as const;
export const yesNoAnswers = { yes: 'Yes, it is allowed', no: 'No, it is not' } as const;

/** What the other rules are called. */
const otherRuleNames: Readonly<Record<Exclude<RuleName, UsualRule | DischargeRule>, string>> = {
  laws: 'Laws that apply',
  'generator-category': 'Category of the workshop',
  'month-limit': 'Most waste in a month',
  'on-site-limit': 'Most waste on site',
  'near-work-limit': 'Most of a waste beside the work',
  'near-work-days': 'Days to move what is more',
  'proof-days': 'Days until the proof of disposal',
  'retention-years': 'Years that records are kept',
};

export const ruleNameOf = (rule: RuleName): string =>
  (({ ...ruleWords, ...dischargeRuleWords }) as Partial<Record<RuleName, { readonly name: string }>>)[rule]
    ?.name ??
  (otherRuleNames as Partial<Record<RuleName, string>>)[rule] ??
  rule;
