/** What a label bears for the hazards that somebody accepted: pictograms, signal word, statements (CLP Articles 19 to 28). */
import type { Hazard } from './hazard';
export const labelElements = (_: readonly Hazard[]) => ({
  pictograms: [] as string[],
  signalWord: null as string | null,
});
