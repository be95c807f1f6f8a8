/** What a mixture is made of, as the rules count it: metals by their own mass where Note 1 of Annex VI says so. */
import Decimal from 'decimal.js';
import { sourceOf } from '../../chemistry/constants';
import { type Expression, over, plus, times } from '../../quantities/expression';
import { exact, type Figure, given, workedOut } from '../../quantities/figure';
import { clp } from '../../reference/clp-tables';
import {
  type HazardClassName,
  type Substance,
  type SubstanceId,
  substances,
} from '../../reference/substances-tables';
import { countedShare } from '../counted-share';
import type { Mixture } from '../mixture';

export type Part = {
  /** How a flag names it: the formula of a substance of the table. */
  readonly id: string;
  readonly substance: Substance;
  /** Mass percent that is put to limits. */
  readonly share: Figure<'%'>;
};

/** From here on the entry for stronger acid counts. */
const strongest = 70;

export function partOf(id: SubstanceId, share: Figure<'%'>): Part {
  const entry: SubstanceId = id === 'HNO3' && share.high.gt(strongest) ? 'HNO3-conc' : id;
  const substance = substances[entry];
  return { id, substance, share: countedShare(substance, share) };
}

/** The most of it that a waste may be: all, or acid as strong as its entry goes. */
export const mostOf = (id: SubstanceId): Part =>
  partOf(
    id,
    given({
      origin: `clp/most/${id}`,
      sentence: `As if all of it were ${substances[id].name}`,
      value: id === 'HNO3' ? strongest : 100,
      unit: '%',
      how: 'assumed',
      spread: exact,
    }),
  );

export const partsOf = ({ shares }: Mixture): Part[] =>
  [...shares].filter(([, share]) => share.high.gt(0)).map(([id, share]) => partOf(id, share));

/** The same parts with the classes that suppliers notify besides those of the entry. */
export const withNotified = (parts: readonly Part[]): Part[] =>
  parts.map((part) => {
    const { classes, notified = [] } = part.substance;
    return { ...part, substance: { ...part.substance, classes: [...classes, ...notified] } };
  });

export const hasClass = ({ substance }: Part, ...names: HazardClassName[]): boolean =>
  substance.classes.some((c) => names.includes(c.class));

/** The entry's own limit for a class, %; absent where the generic one counts. */
export function ownLimit(
  { substance }: Part,
  name: HazardClassName,
  category: string,
): Figure<'%'> | undefined {
  const own = substance.limits?.find((l) => l.class === name && l.category === category);
  if (!own) return undefined;
  const what = `${name} ${category}`;
  return given({
    origin: `constant/clp/${substance.formula}/${what}`,
    sentence: `Own limit of ${substance.name} for ${what}`,
    value: own.from,
    unit: '%',
    how: 'constant',
    spread: exact,
    sources: [sourceOf(substance)],
  });
}

/** Relevant from 1 % on, or from the least of its own limits for these classes. */
export function isRelevant(part: Part, ...names: HazardClassName[]): boolean {
  const own = (part.substance.limits ?? []).filter((l) => names.includes(l.class)).map((l) => l.from);
  return part.share.high.gte(Decimal.min(clp.cutOff.value, ...own));
}

/** A share, the limit that it is a part of, and how often it counts. */
export type Term = {
  readonly share: Figure<'%'>;
  readonly limit: Figure;
  readonly weight?: Figure<'1'>;
};

/** Shares as parts of their limits, added up; null where there is none. */
export function partsOfLimits(terms: readonly Term[]): Expression | null {
  const [only, ...more] = terms.map(({ share, limit, weight }) =>
    over(weight ? times(weight, share) : share, limit),
  );
  if (!only) return null;
  return more.length === 0 ? only : plus(only, ...more);
}

export function fraction(sentence: string, terms: readonly Term[]): Figure<'1'> | null {
  const formula = partsOfLimits(terms);
  return formula && workedOut({ sentence, unit: '1', formula });
}
