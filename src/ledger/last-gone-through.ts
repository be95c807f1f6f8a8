/** What is known of a list from going through it. */
import type { Checklist } from '../safety/checklist-schema';
import { contentHash } from '../safety/checklists';
import { changesSince, type ListChange } from '../safety/list-changes';
import type { ChecklistAnswer } from './entries/checklists';
import type { ChecklistState, State } from './state';

/** The last time that this person completed the list. */
const lastOf = (state: State, list: Checklist, who: string): ChecklistState | undefined =>
  [...state.checklists.values()].findLast(
    (told) => told.who === who && told.body.checklist.id === list.id && told.body.outcome === 'cleared',
  );

/** Answers of each time that a list was completed, by whomever, the newest last. */
export const answersOfList = (state: State, list: string): readonly (readonly ChecklistAnswer[])[] =>
  [...state.checklists.values()]
    .filter(({ body }) => body.checklist.id === list && body.outcome === 'cleared')
    .map(({ body }) => body.answers);

/** What is other in the list since then; nothing for a list that is new to the person. */
export function changedForPerson(state: State, list: Checklist, who: string): readonly ListChange[] {
  const last = lastOf(state, list, who);
  return last === undefined || last.body.checklist.hash === contentHash(list)
    ? []
    : changesSince(last.body.answers, list);
}
