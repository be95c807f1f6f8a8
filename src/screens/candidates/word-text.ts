/** Somebody's word on a candidate, as text and as a mark. */
import type { Word } from '../../ledger/candidate-words';
import type { MarkKind } from '../../ui/marks';
import { calendarDayText } from '../amounts';
import { candidateWords as w } from './words';

export const wordMark: Readonly<Record<Word['is'], MarkKind>> = {
  waiting: 'candidate',
  accepted: 'confirmed',
  refused: 'refused',
  stale: 'candidate',
};

/** Undefined while nobody has said anything. */
export function wordText(word: Word, now: string): string | undefined {
  if (word.is === 'waiting') return undefined;
  const { saidBy, saidOn, answer } = word.answer.body;
  const on = calendarDayText(saidOn, now);
  if (word.is === 'stale') return answer === 'accepted' ? w.stale(saidBy, on) : w.staleRefused(saidBy, on);
  return w[word.is](saidBy, on);
}
