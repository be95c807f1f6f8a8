/** The lists as this workshop asks them: those that came with the app, with the workshop's own changes. */
import type { Checklist } from '../safety/checklist-schema';
import { checklists } from '../safety/checklists';
import { type ChangedList, changedList } from '../safety/own-lists';
import type { State } from './state';

const known = new WeakMap<State['listChanges'], ReadonlyMap<string, ChangedList>>();

/** By id, in the order of the work, with the changes that apply no longer. */
export function changedLists({ listChanges }: Pick<State, 'listChanges'>): ReadonlyMap<string, ChangedList> {
  const before = known.get(listChanges);
  if (before) return before;
  const changes = listChanges.map(({ body }) => body.change);
  const lists = new Map([...checklists].map(([id, list]) => [id, changedList(list, changes)]));
  known.set(listChanges, lists);
  return lists;
}

/** By id, in the order of the work. */
export const workshopLists = (state: Pick<State, 'listChanges'>): ReadonlyMap<string, Checklist> =>
  new Map([...changedLists(state)].map(([id, { list }]) => [id, list]));
