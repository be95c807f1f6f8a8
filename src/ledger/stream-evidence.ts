/** Everything that is known of what is dissolved in a waste, in each way, and where two ways disagree. */
import type { Disagreement } from '../chemistry/disagreement';
import type { Known } from '../chemistry/evidence';
import type { Evidenced, Liquor } from '../chemistry/liquor';
import type { Figure } from '../quantities/figure';
import type { Metal } from '../reference/tables';
import { type Contradictions, contradictionsIn } from './disagreements';

type Amount = Known<'g', 'g/L'> | Known<'mol', 'mol/L'>;

export type SubstanceEvidence = {
  readonly of: Metal | 'acid';
  /** The one used first, the others by their width. */
  readonly pieces: readonly (Amount & { readonly by: string; readonly index: number })[];
  readonly disputes: readonly (Disagreement<'g'> | Disagreement<'mol'>)[];
};

const piecesOf = <K extends Amount>({ best, others }: Evidenced<K>) => [best, ...others];

/** Metals in the order in which they were written down, the acid last. */
export function evidenceIn(liquor: Liquor, found: Contradictions): readonly SubstanceEvidence[] {
  const { metals, freeAcid } = liquor;
  return [
    ...[...metals].map(
      ([of, known]): SubstanceEvidence => ({
        of,
        pieces: piecesOf(known),
        disputes: found.metals.get(of) ?? [],
      }),
    ),
    ...(freeAcid ? [{ of: 'acid' as const, pieces: piecesOf(freeAcid), disputes: found.acid }] : []),
  ];
}

/**
 * Every figure of it by name: "volume", a piece by what it is of and its place in the list ("Cu-0", "acid-1", with
 * "-a-litre" after it), what lies between two that disagree ("Cu-between-0"), and "short".
 */
export function evidenceFigures(liquor: Liquor): ReadonlyMap<string, Figure> {
  const found = contradictionsIn(liquor);
  const named = evidenceIn(liquor, found).flatMap(({ of, pieces, disputes }): [string, Figure][] => [
    ...pieces.flatMap(({ index, all, perLitre }): [string, Figure][] => [
      [`${of}-${index}`, all],
      [`${of}-${index}-a-litre`, perLitre],
    ]),
    ...disputes.map(({ difference }, i): [string, Figure] => [`${of}-between-${i}`, difference]),
  ]);
  const short: [string, Figure][] = found.short ? [['short', found.short]] : [];
  return new Map([['volume', liquor.volume], ...short, ...named]);
}
