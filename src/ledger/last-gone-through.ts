/** What somebody knows of a list from going through it. */
import type { Checklist } from '../safety/checklist-schema';
import { contentHash } from '../safety/checklists';
import { changesSince, type ListChange } from '../safety/list-changes';
import type { ChecklistState, State } from './state';

/** The last time that this person completed the list. */
const lastOf = (state: State, list: Checklist, who: string): ChecklistState | undefined =>
  [...state.checklists.values()].findLast(
    (told) => told.who === who && told.body.checklist.id === list.id && told.body.outcome === 'cleared',
  );

/** What is other in the list since then; nothing for a list that is new to the person. */
export function changedForPerson(state: State, list: Checklist, who: string): readonly ListChange[] {
  const last = lastOf(state, list, who);
  return last === undefined || last.body.checklist.hash === contentHash(list)
    ? []
    : changesSince(last.body.answers, list);
}
