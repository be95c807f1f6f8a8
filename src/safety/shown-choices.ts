/** The order in which answers stand on the screen, so that the hand does not learn where the right one is. */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import type { Choice, ChoiceItem } from './checklist-item';

/** Lists with an order of their own keep it; others are ordered by `seed`, the same seed giving the same order. */
export function shownChoices(item: ChoiceItem, seed: string): readonly Choice[] {
  if (item.ordered) return item.choices;
  const place = ({ answer }: Choice) => bytesToHex(sha256(utf8ToBytes(`${seed}\n${item.id}\n${answer}`)));
  return item.choices.toSorted((a, b) => (place(a) < place(b) ? -1 : 1));
}
