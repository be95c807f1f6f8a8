/** What is known of a list from going through it. */
import type { Checklist } from '../safety/checklist-schema';
import { contentHash } from '../safety/checklists';
import { changesSince, type ListChange } from '../safety/list-changes';
import type { AnswerKept } from '../safety/never-amiss';
import type { ChecklistState, State, WalkState } from './state';

/** The last time that this person completed the list. */
const lastOf = (state: State, list: Checklist, who: string): ChecklistState | undefined =>
  [...state.checklists.values()].findLast(
    (told) => told.who === who && told.body.checklist.id === list.id && told.body.outcome === 'cleared',
  );

/** The looks of a walk, each of all containers together: amiss where it was found amiss at one of them. */
function answersOfWalk({ items }: Checklist, { inspected, finished }: WalkState): readonly AnswerKept[] {
  const told = [...inspected, ...(finished ? [finished] : [])].map(({ body }) => body);
  const asked = new Set(told.flatMap(({ looks }) => looks));
  const found = new Map(told.flatMap((body) => body.found).map((one) => [one.look, one]));
  return items
    .filter(({ id }) => asked.has(id))
    .map(({ id, ask }) => {
      const amiss = found.get(id);
      return { item: id, ask, answer: amiss?.answer ?? '', ...(amiss ? { reason: amiss.answer } : {}) };
    });
}

/** Answers of each time that a list was completed, or a walk with it finished, by whomever, the newest last. */
export const answersOfList = (state: State, list: Checklist): readonly (readonly AnswerKept[])[] => [
  ...[...state.checklists.values()]
    .filter(({ body }) => body.checklist.id === list.id && body.outcome === 'cleared')
    .map(({ body }) => body.answers),
  ...[...state.walks.values()]
    .filter(({ finished }) => finished?.body.list.id === list.id)
    .map((walk) => answersOfWalk(list, walk)),
];

/** What is other in the list since then; nothing for a list that is new to the person. */
export function changedForPerson(state: State, list: Checklist, who: string): readonly ListChange[] {
  const last = lastOf(state, list, who);
  return last === undefined || last.body.checklist.hash === contentHash(list)
    ? []
    : changesSince(last.body.answers, list);
}
