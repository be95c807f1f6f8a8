/** Why a list cannot be changed so, and what to do. */
import type { OwnFault } from '../safety/own-lists';

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
      return `The question does not fit yet (${fault.faults.join(', ').replaceAll('-', ' ')}). Change it and keep again.`;
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
