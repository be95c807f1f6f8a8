/**
 * What a kind of feed usually gives, wide: by its mass, or shared out over what of it dissolved. Source:
 * reference/feed.json. Counts on ceramic that stays behind: barium titanate hardly dissolves, zinc oxide dissolves whole.
 */
import { type Expression, minus, over, plus, times } from '../quantities/expression';
import { between, type Figure, given, workedOut } from '../quantities/figure';
import { feedShares, type Metal, metalSymbols, metals, type Ranged } from '../reference/tables';
import { sourceOf } from './constants';
import { capital, displacedBy, type FeedKnown, type MetalEvidence, weighed } from './evidence';

type Kind = FeedKnown['capacitors'];
type Found = Extract<MetalEvidence, { by: 'typical' | 'feed-minus-residue' }>;

/** A feed that nobody knows may be any. */
const sharesOf = (kind: Kind): Readonly<Partial<Record<Metal, Ranged>>> =>
  feedShares[kind === 'unknown' ? 'mixed' : kind];

/** Silver and palladium that copper put out of the liquor are not told by the feed any more. */
export const typicalMetals = ({ capacitors, liquor }: Pick<FeedKnown, 'capacitors' | 'liquor'>): Metal[] =>
  metalSymbols.filter(
    (metal) => sharesOf(capacitors)[metal] && !(liquor === 'barren' && (metal === 'Ag' || metal === 'Pd')),
  );

/** Another batch may lie elsewhere within the ends, so each batch has an origin of its own. */
function share(kind: Kind, metal: Metal, origin: string): Figure<'%'> | undefined {
  const usual = sharesOf(kind)[metal];
  return (
    usual &&
    given({
      origin: `${origin}/typical/${metal}`,
      sentence: `${capital(metals[metal].name)} in such a feed`,
      value: usual.value,
      unit: '%',
      how: 'typical',
      spread: between(usual.low, usual.value, usual.high),
      decimals: usual.value.split('.')[1]?.length ?? 0,
      sources: [sourceOf(usual)],
    })
  );
}

const note = 'Counts on ceramic that stays behind: zinc oxide dissolves whole.';

/** Everything that dissolved, where the residue was dried: no metal can be more than this. */
const dissolved = (found: Extract<Found, { by: 'feed-minus-residue' }>, feed: Figure<'g'>, origin: string) =>
  workedOut({
    sentence: 'Feed that dissolved, all metals together',
    unit: 'g',
    formula: minus(feed, weighed(found.residue, `${origin}/dry-residue`, 'Residue, dried')),
  });

/** What the shares are shares of: the feed, or what dissolved of it over the sum of all shares. */
function basis(found: Found, origin: string): Figure<'g'> {
  const feed = weighed(found.feed, `${origin}/feed`, 'Feed');
  if (found.by === 'typical') return feed;
  const shares = (Object.keys(sharesOf(found.capacitors)) as Metal[]).flatMap(
    (metal) => share(found.capacitors, metal, origin) ?? [],
  );
  const together = workedOut({
    sentence: 'Metals of such a feed that dissolve',
    unit: '%',
    formula: plus(...shares),
  });
  return workedOut({
    sentence: 'Feed that would give as much',
    unit: 'g',
    formula: over(dissolved(found, feed, origin), together),
  });
}

type Told = { readonly all: Figure<'g'>; readonly atLeast?: true };

/**
 * A metal by what the feed usually gives, g. In the barren liquor copper is what the feed brought and what silver and
 * palladium displaced; what the acid ate of the sheet comes on top, so it is at least that.
 * @param origin of the batch, so that two metals of it share one feed
 * @returns undefined where such a feed does not tell of the metal
 */
export function typicalMetal(found: Found, origin: string): Told | undefined {
  const { capacitors, metal, liquor } = found;
  if (!typicalMetals(found).includes(metal)) return undefined;
  const from = basis(found, origin);
  const part = (of: Metal, sentence: string): Figure<'g'> | undefined => {
    const own = share(capacitors, of, origin);
    return own && workedOut({ sentence, unit: 'g', formula: times(from, own), note });
  };
  const own = part(metal, `${capital(metals[metal].name)} from such a feed`);
  if (!own) return undefined;
  if (liquor === 'leach' || metal !== 'Cu') return { all: own };
  const put = (['Ag', 'Pd'] as const).flatMap((m) => {
    const recovered = part(m, `${capital(metals[m].name)} from such a feed`);
    return recovered ? [displacedBy(m, recovered)] : [];
  });
  const formula: Expression = plus(own, ...put);
  const all = workedOut({ sentence: 'Copper in the liquor after cementation', unit: 'g', formula });
  return { all, atLeast: true };
}
