/** Why a list cannot be changed so, and what to do. */
import type { OwnFault } from '../safety/own-lists';

/** What is wrong in a question that somebody adds: the field where it can be mended, and what to do. */
const itemFaults = {
  'ask-over-nine-words': { at: 'ask', words: 'The question has more than nine words. Make it shorter.' },
  'look-over-twelve-words': { at: 'look', words: 'That is more than twelve words. Make it shorter.' },
  'same-answer-twice': { at: 'answers', words: 'Two answers are the same. Change one of them.' },
  'every-answer-stops': {
    at: 'answers',
    words: 'Every answer stops the step. Leave one that lets it go on.',
  },
  'max-not-above-min': { at: 'high', words: 'The highest value must lie above the lowest.' },
} as const;

const itemFault = (code: string) => Object.entries(itemFaults).find(([known]) => known === code)?.[1];

export const ownItemPlace = (code: string) => itemFault(code)?.at ?? 'ask';
export const ownItemFault = (code: string): string =>
  itemFault(code)?.words ?? 'The question does not fit this list. Word it otherwise, or ask it elsewhere.';

export function ownFaultWords(fault: OwnFault): string {
  switch (fault.code) {
    case 'another-list':
    case 'no-such-item':
      return 'This question is not in the list any more. Go back and choose again.';
    case 'not-an-own-item':
      return 'This question came with the list and stays. Its range can be made tighter.';
    case 'id-taken':
      return 'This question is in the list already.';
    case 'not-a-reading':
      return 'Only a reading has a range.';
    case 'item-not-in-order':
      return fault.faults.map(ownItemFault).join(' ');
    case 'over-nine':
      return `${fault.asked} questions are asked there already, and more are not read. Ask it in another list, or drop an own question first.`;
    case 'max-not-above-min':
      return 'The highest value must lie above the lowest.';
    case 'note-missing':
      return fault.because === 'loosened'
        ? 'This lets in more than the list as it came. Say why; it stays marked.'
        : 'This question can stop the work. Say why it falls away.';
  }
}
