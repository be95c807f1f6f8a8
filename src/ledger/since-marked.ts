/** What was marked of a container as a whole: since when it holds. */

import { isNothing } from './amounts';
import type { ContainerMarked, ContentsDetermined } from './entries/containers';
import type { ContainerMovement, Told } from './state';

type Mark = ContainerMarked['mark'];
type Marks = readonly Told<ContainerMarked>[];

/** Of one pair: since when the first holds, however often it was said; null when it was never said or the second undid it. */
export function sinceMarked(marks: Marks, as: Mark, undone: Mark): string | null {
  const ended = marks.findLastIndex(({ body }) => body.mark === undone);
  return marks.slice(ended + 1).find(({ body }) => body.mark === as)?.at ?? null;
}

/** What happened in the same minute is in the order in which it was written. */
const isAfter = (a: Told<unknown>, b: Told<unknown>): boolean =>
  a.at > b.at || (a.at === b.at && a.entryId > b.entryId);

/**
 * Somebody's doubt ends when it is known again, when somebody says what it is, or when the container was emptied: not where
 * the record still held something then.
 */
export function doubtSince(
  marks: Marks,
  determined: Told<ContentsDetermined> | null,
  movements: readonly Pick<ContainerMovement, 'at' | 'after'>[],
): string | null {
  const told = determined ? marks.filter((one) => isAfter(one, determined)) : marks;
  const emptied = told.findLastIndex(({ body, at }) => {
    const last = movements.findLast((movement) => movement.at <= at);
    return body.mark === 'emptied' && (!last || isNothing(last.after));
  });
  return sinceMarked(told.slice(emptied + 1), 'contents-doubtful', 'contents-known');
}
