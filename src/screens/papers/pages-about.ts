/** About how many pages a set will have, told before it is made. */
import type { DisposalWanted } from './disposal-job';

/**
 * Counted on sets of one, two and five containers of the invented workshop, on A4: a straight line through their pages. Common
 * practice of ours, nothing rests on it.
 */
const pages = { front: 12, container: 5, workingFront: 3, workingContainer: 2.2 } as const;

/** Letter is a little lower. */
const letterLonger = 1.05;

const labelsOnSheet = { A4: 4, Letter: 2 } as const;

/** From here on by tens: nobody counts them. */
const byTens = 30;

export function pagesAbout({ containerIds, sheet, working, labels }: DisposalWanted): number {
  const n = containerIds.length;
  const text =
    pages.front + pages.container * n + (working ? pages.workingFront + pages.workingContainer * n : 0);
  const printed = text * (sheet === 'Letter' ? letterLonger : 1) + (labels ? n / labelsOnSheet[sheet] : 0);
  return printed < byTens ? Math.ceil(printed) : 10 * Math.ceil(printed / 10);
}
