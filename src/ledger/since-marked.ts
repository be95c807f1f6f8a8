/** What was marked of a container as a whole: since when it holds. */
import type { ContainerMarked, ContentsDetermined } from './entries/containers';
import type { Told } from './state';

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

/** Somebody's doubt ends when it is known again, or when somebody says what it is. */
export const doubtSince = (marks: Marks, determined: Told<ContentsDetermined> | null): string | null =>
  sinceMarked(
    determined ? marks.filter((told) => isAfter(told, determined)) : marks,
    'contents-doubtful',
    'contents-known',
  );
