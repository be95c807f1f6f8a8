/** A rule in our own words, with the text that it stands in and whether one of us read it there. */
import type { Citation } from '../../rules/candidate';
import { containerWords } from '../containers/words';

export const citedText = ({ rule, cite, status }: Citation): string =>
  `${rule} ${cite}: ${containerWords.working.status[status]}.`;
