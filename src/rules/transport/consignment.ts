/** What is to be carried: what it is made of, how it stands when the package is closed, and what tests have shown. */
import type { Figure } from '../../quantities/figure';
import type { SubstanceId } from '../../reference/substances-tables';
import { type InCarriage, inCarriage, type PackingGroup, transport } from '../../reference/transport-tables';
import type { Mixture } from '../mixture';

export type Consignment = {
  readonly mixture: Mixture;
  /** Of a solid or sludge: dry, or wet with liquor that nobody sees run. Absent where nobody has told. */
  readonly wetness?: 'dry' | 'wet';
  /** Name of the kind of waste; it tells what is usually in it where nobody determined. */
  readonly kind?: string;
  /** Waste numbers of the USA that are confirmed or fire. */
  readonly rcraCodes: readonly string[];
  /** What a test of this waste has shown. */
  readonly tested?: {
    /** Category of skin corrosion. */
    readonly skinCorrosion?: '1A' | '1B' | '1C' | 'none';
    /** Class 5.1, with its group where the test told it. */
    readonly oxidising?: PackingGroup | 'of no known group' | 'none';
    /** It eats steel or aluminium at the rate that makes it class 8. */
    readonly corrodesMetal?: boolean;
  };
  /** Net mass in the fullest package. */
  readonly packageMass?: Figure<'kg'>;
};

export type Part = { readonly id: SubstanceId; readonly share: Figure<'%'>; readonly as: InCarriage };

/** Constituents that mean something in carriage, the largest share first. */
export const partsOf = ({ shares }: Mixture): readonly Part[] =>
  [...shares]
    .flatMap(([id, share]) => {
      const as = inCarriage(id);
      return as && share.high.gt(0) ? [{ id, share, as }] : [];
    })
    .sort((a, b) => b.share.high.cmp(a.share.high) || (a.id < b.id ? -1 : 1));

/** What is usual in the kind of waste; nothing where it is no kind of this trade. */
export const usualIn = (kind: string | undefined) =>
  kind === undefined || !Object.hasOwn(transport.kinds.of, kind) ? undefined : transport.kinds.of[kind];
