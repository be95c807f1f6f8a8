/** Words of finding something in the record. */
import type { FoundRow } from '../../ledger/found-rows';

export const findWords = {
  title: 'Find',
  second: 'A code, a batch, a metal, a day, a name, a number of a paper',
  field: 'What do you look for?',
  hint: 'For example: C-04; silver wash; 2026-03; 14 March; a collector, a manifest number.',
  getting: (percent: number) => `Getting ready to find: ${percent} %`,
  found: (count: string) => (count === '1' ? '1 found' : `${count} found`),
  nothing: 'Nothing is found by this',
  nothingSecond:
    'Try fewer words, or the beginning of one. What was written word by word stands in the history.',
  history: 'History',
  historySecond: 'Every entry, from any day back',
  is: {
    container: 'Container',
    batch: 'Batch',
    waste: 'Waste',
    'hand-over': 'Hand-over',
    paper: 'Paper',
  } satisfies Record<FoundRow['is'], string>,
  /** Kinds of papers, as they are found by. */
  papers: {
    disposal: 'disposal papers',
    labels: 'labels',
    receipt: 'receipt',
    register: 'register',
    year: 'account of a year',
  } as Readonly<Record<string, string>>,
  longAgo: (count: string) => (count === '1' ? '1 more from long ago' : `${count} more from long ago`),
  longAgoSecond: 'Find it by a code, a metal, a day',
  before: (day: string) => `Not all from before ${day} is here`,
  beforeSecond: 'Every entry is in the history',
  since: (day: string) => `since ${day}`,
  span: (first: string, last: string) => (first === last ? first : `${first} to ${last}`),
} as const;
