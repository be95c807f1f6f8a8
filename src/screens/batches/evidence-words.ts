/** Words of what is known of one waste, in which ways, and where they disagree. */
import { type Metal, metals } from '../../reference/tables';

const name = (of: Metal | 'acid'): string => (of === 'acid' ? 'free nitric acid' : metals[of].name);

/** "copper", "copper and free nitric acid", "copper, nickel and zinc" */
export const substanceNames = (all: readonly (Metal | 'acid')[]): string =>
  all
    .map(name)
    .join(', ')
    .replace(/, ([^,]*)$/, ' and $1');

export const evidenceWords = {
  title: 'What is known of it',
  used: 'used',
  other: 'not used',
  otherPart: 'not used: a part of it',
  atLeast: 'at least',
  disagree: (name: string) =>
    `Two ways of knowing ${name} disagree beyond their uncertainty. One of them is wrong.`,
  between: 'Between the two',
  short: 'The metals took more acid than was charged. The volume, the strength or a metal is wrong.',
  shortBy: 'Taken beyond what was charged',
  usedUp: 'The acid looks used up: the metals took about all that was charged.',
  notTold: 'Not determined',
  inContainer: (code: string) => `Container ${code}`,
  entry: 'The entry',
  entrySecond: 'As it was written, to correct it',
  gone: 'This waste is not in the record.',
  solid: 'A solid: what it holds is known by the liquor it came from.',
  volume: 'Volume',
} as const;
