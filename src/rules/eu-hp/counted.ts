/**
 * What of a waste counts towards a hazardous property, and with which share. Classes are those of the substance itself:
 * neither its own limits nor its multiplying factors are taken here.
 */
import { constant } from '../../chemistry/constants';
import { over } from '../../quantities/expression';
import { type Figure, workedOut } from '../../quantities/figure';
import type { Term } from '../../reference/eu-hp-tables';
import { type HazardClass, type SubstanceId, substances } from '../../reference/substances-tables';
import type { Mixture } from '../mixture';

export type Counted = {
  readonly id: SubstanceId;
  readonly share: Figure<'%'>;
  readonly term: Term;
};

/** "H350i" is a kind of H350. */
export const withoutLetters = (code: string): string => /^[EU]*H\d{3}/.exec(code)?.[0] ?? code;

const isOf = ({ code, category }: HazardClass, term: Term): boolean =>
  withoutLetters(code) === term.code && (term.category === undefined || term.category === category);

/** Of several statements that a substance has, the one that counts most; a share is never counted twice in one sum. */
function termOf(id: SubstanceId, terms: readonly Term[]): Term | undefined {
  const had = terms.filter((term) => substances[id].classes.some((c) => isOf(c, term)));
  return had.sort((a, b) => Number(b.times) - Number(a.times))[0];
}

/** The share itself, or that of the metal in it where the entry says so (Annex VI, Note 1). */
function countedShare(id: SubstanceId, share: Figure<'%'>): Figure<'%'> {
  const { name, metal, countedAs, source, status } = substances[id];
  if (countedAs !== 'metal' || !metal) return share;
  const factor = constant(
    `substances/${id}/factor`,
    `${name} for 1 g of ${metal.symbol}, g/g`,
    { value: metal.factor, unit: '1', uncertainty: '0', source, status },
    '1',
  );
  return workedOut({
    sentence: `${metal.symbol} of ${name}, as the metal`,
    unit: '%',
    formula: over(share, factor),
    note: 'Note 1 of the entry: limits are put to the metal.',
  });
}

/** What has one of the statements. `all`: also what stays under the share from which it counts. */
export const countedIn = ({ shares }: Mixture, terms: readonly Term[], all?: 'all'): readonly Counted[] =>
  [...shares].flatMap(([id, whole]) => {
    const term = termOf(id, terms);
    if (!term) return [];
    const share = countedShare(id, whole);
    const counts = share.high.gt(0) && (all === 'all' || share.high.gte(term.cutOff ?? 0));
    return counts ? [{ id, share, term }] : [];
  });

/** What nobody determined and would count. */
export const openIn = ({ open }: Mixture, terms: readonly Term[]): readonly SubstanceId[] =>
  open.filter((id) => termOf(id, terms));

/** As the record calls what would have to be determined: the metal, or the substance. */
export const calledInRecord = (id: SubstanceId): string =>
  substances[id].metal?.symbol ?? substances[id].formula;
