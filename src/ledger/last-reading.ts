/** What a meter showed the last time. */
import type { ChecklistAnswer } from './entries/checklists';
import type { State } from './state';

/** The newest reading of an item in a finished checklist; null when there is none. */
export function lastReading(state: State, list: string, item: string): ChecklistAnswer | null {
  const answers = [...state.checklists.values()]
    .filter(({ body }) => body.checklist.id === list)
    .flatMap(({ body }) => body.answers)
    .filter(
      (answer) => answer.item === item && answer.kind === 'reading' && answer.answer !== 'not-applicable',
    );
  return answers.reduce<ChecklistAnswer | null>((last, one) => (last && last.at > one.at ? last : one), null);
}
