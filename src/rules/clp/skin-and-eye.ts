/** Skin corrosion and irritation, eye damage and irritation: shares add up as parts of their limits (CLP Annex I, 3.2.3.3 and 3.3.3.3). */
import type { Figure } from '../../quantities/figure';
import { clp } from '../../reference/clp-tables';
import { type Found, limitOf, type Step, whole, worstOf } from './found';
import type { Hazard } from './hazard';
import { fraction, hasClass, isRelevant, ownLimit, type Part, type Term } from './parts';

const generic = {
  corrosive: limitOf('Generic limit for skin corrosion', clp.skin.corrosive, '%'),
  skinIrritant: limitOf('Generic limit for skin irritation', clp.skin.irritant, '%'),
  damaging: limitOf('Generic limit for eye damage', clp.eye.damaging, '%'),
  eyeIrritant: limitOf('Generic limit for eye irritation', clp.eye.irritant, '%'),
};
const weight = limitOf('What is corrosive counts as irritant', clp.irritantWeight, '1');

const step = (hazard: Hazard, figure: Figure | null): Step => ({
  hazard,
  ground: figure && { figure, limit: whole },
});

/** Categories of skin corrosion, the worst first; a mixture of 1A and 1B is 1B where the 1A alone does not reach its limit. */
const corrosion = ['1A', '1B', '1C'] as const;
type Corrosion = (typeof corrosion)[number];

const corrosionOf = ({ substance }: Part): string | undefined =>
  substance.classes.find((c) => c.class === 'Skin Corr.')?.category;

/** Parts whose category is this one or worse. One without a subcategory counts with the mildest. */
function corrosiveTerms(parts: readonly Part[], upTo: Corrosion): Term[] {
  return parts.flatMap((part) => {
    const category = corrosionOf(part);
    if (category === undefined) return [];
    const at = category === '1' ? 2 : corrosion.indexOf(category as Corrosion);
    if (at > corrosion.indexOf(upTo)) return [];
    const own = corrosion
      .slice(at, corrosion.indexOf(upTo) + 1)
      .map((c) => ownLimit(part, 'Skin Corr.', c))
      .findLast((limit) => limit !== undefined);
    return [{ share: part.share, limit: own ?? generic.corrosive }];
  });
}

/** What irritates by its own limit, or as an irritant, or ten times as what is worse. */
function irritantTerm(part: Part, own: Figure<'%'> | undefined, limit: Figure<'%'>, isWorse: boolean): Term {
  if (own) return { share: part.share, limit: own };
  return isWorse ? { share: part.share, limit, weight } : { share: part.share, limit };
}

export type SkinFractions = Readonly<Record<'1A' | '1B' | '1C' | '2', Figure<'1'> | null>>;

export function skin(all: readonly Part[]): { readonly fractions: SkinFractions; readonly found: Found[] } {
  const parts = all.filter(
    (p) => hasClass(p, 'Skin Corr.', 'Skin Irrit.') && isRelevant(p, 'Skin Corr.', 'Skin Irrit.'),
  );
  const corrosive = (category: Corrosion) =>
    fraction(`Skin corrosion ${category}, part of the limit`, corrosiveTerms(parts, category));
  const irritant = parts.map((p) =>
    irritantTerm(p, ownLimit(p, 'Skin Irrit.', '2'), generic.skinIrritant, hasClass(p, 'Skin Corr.')),
  );
  const fractions = {
    '1A': corrosive('1A'),
    '1B': corrosive('1B'),
    '1C': corrosive('1C'),
    '2': fraction('Skin irritation, part of the limit', irritant),
  };
  const mildest = parts.some((p) => corrosionOf(p) === '1') ? '1' : '1C';
  const corr = (category: string): Hazard => ({ class: 'Skin Corr.', category, code: 'H314' });
  const found = worstOf('skin', [
    step(corr('1A'), fractions['1A']),
    step(corr('1B'), fractions['1B']),
    step(corr(mildest), fractions['1C']),
    step({ class: 'Skin Irrit.', category: '2', code: 'H315' }, fractions['2']),
  ]);
  return { fractions, found };
}

export type EyeFractions = Readonly<Record<'1' | '2', Figure<'1'> | null>>;

export function eye(all: readonly Part[]): { readonly fractions: EyeFractions; readonly found: Found[] } {
  const names = ['Skin Corr.', 'Eye Dam.', 'Eye Irrit.'] as const;
  const parts = all.filter((p) => hasClass(p, ...names) && isRelevant(p, ...names));
  const isDamaging = (p: Part) => hasClass(p, 'Skin Corr.', 'Eye Dam.');
  const damaging = parts
    .filter(isDamaging)
    .map((p) => ({ share: p.share, limit: ownLimit(p, 'Eye Dam.', '1') ?? generic.damaging }));
  const irritant = parts.map((p) =>
    irritantTerm(p, ownLimit(p, 'Eye Irrit.', '2'), generic.eyeIrritant, isDamaging(p)),
  );
  const fractions = {
    '1': fraction('Eye damage, part of the limit', damaging),
    '2': fraction('Eye irritation, part of the limit', irritant),
  };
  const found = worstOf('eye', [
    step({ class: 'Eye Dam.', category: '1', code: 'H318' }, fractions['1']),
    step({ class: 'Eye Irrit.', category: '2', code: 'H319' }, fractions['2']),
  ]);
  return { fractions, found };
}
