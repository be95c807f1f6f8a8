/** What each local rule and each law is called, on screens as on papers; a paper lists the rules in this order. */
import type { Law, RuleName } from '../ledger/entries/local-rules';

export const ruleNames: Readonly<Record<RuleName, string>> = {
  'storage-days': 'Storage time',
  'fill-limit': 'Fill limit',
  'inspection-days': 'Looking at the containers',
  'treatment-allowed': 'Treatment in the workshop',
  laws: 'Laws that apply here',
  'generator-category': 'Category of the workshop',
  'month-limit': 'Most waste in a month',
  'on-site-limit': 'Most waste on site',
  'near-work-limit': 'Most of a waste beside the work',
  'near-work-days': 'Days to move what is more',
  'proof-days': 'Proof of disposal',
  'retention-years': 'Keeping records',
  'discharge-limits': 'Most of each metal, where discharge is authorised',
  'discharge-ph': 'pH, where discharge is authorised',
};

export const lawNames: Readonly<Record<Law, string>> = {
  'us-federal': 'United States, federal',
  'us-california': 'California, besides federal',
  eu: 'European Union and its country',
};
