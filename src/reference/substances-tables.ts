/** Substances that a waste of this trade may hold, as the law of classification lists them. */
import substancesJson from './substances.json';

export type SubstanceId = keyof typeof substancesJson;
export const substanceIds = Object.keys(substancesJson) as [SubstanceId, ...SubstanceId[]];
