import type { PaperMade } from './entries/papers';

/** Whether labels are in it; papers from before there were several are told by the name of their file. */
export const hasLabels = ({ paper, labels, fileName }: PaperMade): boolean =>
  labels === true || paper === 'labels' || (paper === undefined && /(^|-)label-/.test(fileName));
