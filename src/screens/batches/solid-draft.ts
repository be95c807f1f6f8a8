/** A wet solid as it stands in a form: mass, moisture, the liquor it holds; and what it comes to. */
import * as z from 'zod/mini';
import type { SolidPart } from '../../ledger/entries/streams';
import { readTyped, Typed, typed } from '../form';
import { emptyMoisture, MoistureDraft, readMoisture } from './evidence-draft';

export const SolidDraft = z.object({
  wetMass: Typed,
  moisture: MoistureDraft,
  /** The stream whose liquor it holds, or 'not-determined'. */
  holds: z.string(),
});
export type SolidDraft = z.infer<typeof SolidDraft>;

export const emptySolid = (holds = 'not-determined'): SolidDraft => ({
  wetMass: typed('g'),
  moisture: emptyMoisture(),
  holds,
});

export const readMass = ({ wetMass }: SolidDraft) =>
  readTyped<SolidPart['wetMass']['unit']>(wetMass, { aboveZero: true, most: 1_000_000 });

/** Null without a mass; `wrong`: some line cannot be read. */
export function readSolid(draft: SolidDraft): { readonly solid: SolidPart | null; readonly wrong: boolean } {
  const [mass, moisture] = [readMass(draft), readMoisture(draft.moisture)];
  const wrong = mass.state !== 'written' || moisture.state === 'wrong';
  if (mass.state !== 'written') return { solid: null, wrong };
  return {
    wrong,
    solid: {
      wetMass: mass.written,
      moisture: moisture.state === 'known' ? moisture.value : { by: 'not-determined' },
      holds: { liquor: draft.holds as SolidPart['holds']['liquor'] },
    },
  };
}
