/** Somebody's word on a candidate, as text and as a mark. */
import type { Word } from '../../ledger/candidate-words';
import type { Scheme } from '../../ledger/entries/candidates';
import type { State } from '../../ledger/state';
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

/** Codes of a State or a federal law its office confirms; what goes on papers and labels the collector does. */
const confirms: Readonly<Record<Scheme, 'authority' | 'collector'>> = {
  clp: 'collector',
  rcra: 'authority',
  'rcra-ldr': 'authority',
  california: 'authority',
  'eu-hp': 'collector',
  'waste-list': 'authority',
  transport: 'collector',
};

/** Whose word a code waits for, by name where the workshop's description tells it. */
export function waitsForText({ workshop }: State, scheme: Scheme): string {
  const who = confirms[scheme];
  const name = workshop?.body[who]?.name;
  return w.waitsFor(name === undefined ? w.whoConfirms[who] : `${w.whoConfirms[who]} (${name})`);
}
