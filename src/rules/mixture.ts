/** What a waste is made of, as rules of classification take it: shares by mass, and what nobody determined. */
import type { Figure } from '../quantities/figure';
import type { SubstanceId } from '../reference/substances-tables';

export type Mixture = {
  readonly state: 'liquid' | 'solid' | 'sludge';
  /** At least a fifth of it is free water. */
  readonly aqueous: boolean;
  /** As read or worked out, with its range; absent where it is not determined. */
  readonly pH?: Figure<'1'>;
  /** Share of the whole by mass, metals as the anhydrous salt that stands for them. Water is left out. */
  readonly shares: ReadonlyMap<SubstanceId, Figure<'%'>>;
  /** What may be in it and nobody determined; a rule that rests on one of them stays open. */
  readonly open: readonly SubstanceId[];
};
