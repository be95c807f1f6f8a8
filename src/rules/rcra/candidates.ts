/** Hazardous waste codes of a waste in the United States: candidates, in the order of the codes. */
import type { Candidate } from '../candidate';
import type { ElementLevels } from '../element-levels';
import { characteristics } from './characteristics';
import { toxicity } from './toxicity';

export const rcraCandidates = (levels: ElementLevels): readonly Candidate[] => [
  ...characteristics(levels),
  ...toxicity(levels),
];
