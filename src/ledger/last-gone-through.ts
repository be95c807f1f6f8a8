/** What is known of a list from going through it. */
import { type Checklist, isWalk } from '../safety/checklist-schema';
import { contentHash } from '../safety/checklists';
import { changesSince, type ListChange } from '../safety/list-changes';
import type { AnswerKept } from '../safety/never-amiss';
import type { ChecklistState, State, WalkState } from './state';

/** The last time that this person completed the list. */
const lastOf = (state: State, list: Checklist, who: string): ChecklistState | undefined =>
  [...state.checklists.values()].findLast(
    (told) => told.who === who && told.body.checklist.id === list.id && told.body.outcome === 'cleared',
  );

/** Every look that was asked on a walk, of containers and of the place. */
const askedOn = ({ inspected, finished }: WalkState): ReadonlySet<string> =>
  new Set([...inspected, ...(finished ? [finished] : [])].flatMap(({ body }) => body.looks));

/** The looks of a walk, each of all containers together: amiss where it was found amiss at one of them. */
function answersOfWalk({ items }: Checklist, walk: WalkState): readonly AnswerKept[] {
  const { inspected, finished } = walk;
  const told = [...inspected, ...(finished ? [finished] : [])].map(({ body }) => body);
  const asked = askedOn(walk);
  const found = new Map(told.flatMap((body) => body.found).map((one) => [one.look, one]));
  return items
    .filter(({ id }) => asked.has(id))
    .map(({ id, ask }) => {
      const amiss = found.get(id);
      return { item: id, ask, answer: amiss?.answer ?? '', ...(amiss ? { reason: amiss.answer } : {}) };
    });
}

/**
 * Answers of each time that a list was completed, or a walk with it finished, by whomever, the newest last; of those since all
 * of them are at hand, so that none in between is missing.
 */
export function answersOfList(state: State, list: Checklist): readonly (readonly AnswerKept[])[] {
  const from = state.earlier?.from ?? '';
  return [
    ...[...state.checklists.values()]
      .filter(({ at, body }) => at >= from && body.checklist.id === list.id && body.outcome === 'cleared')
      .map(({ body }) => body.answers),
    ...[...state.walks.values()]
      .filter(({ finished }) => finished?.body.list.id === list.id && finished.body.startedAt >= from)
      .map((walk) => answersOfWalk(list, walk)),
  ];
}

/** Looks that are new since this person last finished a walk: an entry of a walk keeps which were asked, not in which words. */
function newOnWalk(state: State, list: Checklist, who: string): readonly ListChange[] {
  const last = [...state.walks.values()].findLast(({ finished }) => finished?.who === who);
  if (!last) return [];
  const asked = askedOn(last);
  return list.items
    .filter(({ id }) => !asked.has(id))
    .map(({ id, ask, own = false }) => ({ item: id, ask, own, is: 'new' }));
}

/** What is other in the list since then; nothing for a list that is new to the person. */
export function changedForPerson(state: State, list: Checklist, who: string): readonly ListChange[] {
  if (isWalk(list)) return newOnWalk(state, list, who);
  const last = lastOf(state, list, who);
  return last === undefined || last.body.checklist.hash === contentHash(list)
    ? []
    : changesSince(last.body.answers, list);
}
