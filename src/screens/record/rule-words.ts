/** How each local rule is asked for, and what follows while nobody has stated it; its name is in paperwork/rule-words.ts. */
import type { DischargeRule, RuleName, UsualRule } from '../../ledger/entries/local-rules';

export type RuleWords = {
  readonly ask: string;
  /** What holds while it is not entered: the careful answer. */
  readonly meanwhile: string;
};

export const ruleWords: Readonly<Record<UsualRule, RuleWords>> = {
  laws: {
    ask: 'Whose laws apply here?',
    meanwhile: 'Federal law of the USA and law of the EU are both looked at.',
  },
  'generator-category': {
    ask: 'What does your authority call it?',
    meanwhile: 'No category is taken for granted; the smallest limits are shown beside.',
  },
  'treatment-allowed': {
    ask: 'May you treat this waste here?',
    meanwhile: 'Treatment is shown for planning only; nothing is called fit for a drain.',
  },
  'storage-days': {
    ask: 'How long may waste stay?',
    meanwhile: 'Days are counted up, and none is called in time.',
  },
  'near-work-limit': {
    ask: 'How much may stand beside the work?',
    meanwhile: 'Storage time counts from the first drop, wherever it stands.',
  },
  'near-work-days': {
    ask: 'In how many days must more be moved?',
    meanwhile: 'What is more is due at once.',
  },
  'fill-limit': {
    ask: 'How full may a container be?',
    meanwhile: '90 % of what it holds is taken.',
  },
  'inspection-days': {
    ask: 'How often must you look?',
    meanwhile: 'Every seven days is taken.',
  },
  'month-limit': {
    ask: 'How much may a month make?',
    meanwhile: 'The month is added up, and nothing says that it is few.',
  },
  'on-site-limit': {
    ask: 'How much may stand here at once?',
    meanwhile: 'What stands here is added up, and nothing says that it is few.',
  },
  'proof-days': {
    ask: 'In how many days must the proof be here?',
    meanwhile: 'It is missing from the day the container is gone.',
  },
  'retention-years': {
    ask: 'How many years are records kept?',
    meanwhile: 'Nothing may be thrown away.',
  },
};

/** The same for the rules that only a workshop with an authorised discharge has. */
export const dischargeRuleWords: Readonly<Record<DischargeRule, Omit<RuleWords, 'ask'>>> = {
  'discharge-limits': {
    meanwhile: 'Figures are held against published values, for reference only.',
  },
  'discharge-ph': {
    meanwhile: 'No pH is shown beside the one you aim at.',
  },
};

/** Rules as they stand together. */
export const ruleGroups: readonly { readonly title: string; readonly rules: readonly RuleName[] }[] = [
  { title: 'Whose rules', rules: ['laws', 'generator-category'] },
  { title: 'Treatment and discharge', rules: ['treatment-allowed', 'discharge-limits', 'discharge-ph'] },
  {
    title: 'Containers',
    rules: ['storage-days', 'fill-limit', 'inspection-days', 'near-work-limit', 'near-work-days'],
  },
  { title: 'How much', rules: ['month-limit', 'on-site-limit'] },
  { title: 'Papers', rules: ['proof-days', 'retention-years'] },
];

export const yesNo = { yes: 'allowed', no: 'not allowed' } as const;
export const yesNoAnswers = { yes: 'Yes, it is allowed', no: 'No, it is not' } as const;
