/** What each local rule is called, and what follows while nobody has stated it. */
import type { DischargeRule, Law, RuleName, UsualRule } from '../../ledger/entries/local-rules';

export type RuleWords = {
  readonly name: string;
  readonly ask: string;
  /** What holds while it is not entered: the careful answer. */
  readonly meanwhile: string;
};

export const ruleWords: Readonly<Record<UsualRule, RuleWords>> = {
  laws: {
    name: 'Laws that apply here',
    ask: 'Whose laws apply here?',
    meanwhile: 'Federal law of the USA and law of the EU are both looked at.',
  },
  'generator-category': {
    name: 'Category of the workshop',
    ask: 'What does your authority call it?',
    meanwhile: 'No category is taken for granted; the smallest limits are shown beside.',
  },
  'treatment-allowed': {
    name: 'Treatment in the workshop',
    ask: 'May you treat this waste here?',
    meanwhile: 'Treatment is shown for planning only; nothing is called fit for a drain.',
  },
  'storage-days': {
    name: 'Storage time',
    ask: 'How long may waste stay?',
    meanwhile: 'Days are counted up, and none is called in time.',
  },
  'near-work-limit': {
    name: 'Most of a waste beside the work',
    ask: 'How much may stand beside the work?',
    meanwhile: 'Storage time counts from the first drop, wherever it stands.',
  },
  'near-work-days': {
    name: 'Days to move what is more',
    ask: 'In how many days must more be moved?',
    meanwhile: 'What is more is due at once.',
  },
  'fill-limit': {
    name: 'Fill limit',
    ask: 'How full may a container be?',
    meanwhile: '90 % of what it holds is taken.',
  },
  'inspection-days': {
    name: 'Looking at the containers',
    ask: 'How often must you look?',
    meanwhile: 'Every seven days is taken.',
  },
  'month-limit': {
    name: 'Most waste in a month',
    ask: 'How much may a month make?',
    meanwhile: 'The month is added up, and nothing says that it is few.',
  },
  'on-site-limit': {
    name: 'Most waste on site',
    ask: 'How much may stand here at once?',
    meanwhile: 'What stands here is added up, and nothing says that it is few.',
  },
  'proof-days': {
    name: 'Proof of disposal',
    ask: 'In how many days must the proof be here?',
    meanwhile: 'It is missing from the day the container is gone.',
  },
  'retention-years': {
    name: 'Keeping records',
    ask: 'How many years are records kept?',
    meanwhile: 'Nothing may be thrown away.',
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

export const ruleNameOf = (rule: RuleName): string => ({ ...ruleWords, ...dischargeRuleWords })[rule].name;

export const lawWords: Readonly<Record<Law, string>> = {
  'us-federal': 'United States, federal',
  'us-california': 'California, besides federal',
  eu: 'European Union and its country',
};

export const yesNo = { yes: 'allowed', no: 'not allowed' } as const;
export const yesNoAnswers = { yes: 'Yes, it is allowed', no: 'No, it is not' } as const;
