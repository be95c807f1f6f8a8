/** How a substance's share counts, and what the record calls it: the same for every law that classifies by substances. */
import { sourceOf } from '../chemistry/constants';
import { over } from '../quantities/expression';
import { exact, type Figure, given, workedOut } from '../quantities/figure';
import { type Substance, type SubstanceId, substances } from '../reference/substances-tables';

/** The share itself, or that of the metal in it where the entry says so (CLP Annex VI, Note 1). */
export function countedShare(substance: Substance, share: Figure<'%'>): Figure<'%'> {
  const { name, formula, metal, countedAs } = substance;
  if (countedAs !== 'metal' || !metal) return share;
  const factor = given({
    origin: `constant/metal/${formula}`,
    sentence: `${name} for 1 g of ${metal.symbol}, g/g`,
    value: metal.factor,
    unit: '1',
    how: 'constant',
    spread: exact,
    sources: [sourceOf(substance)],
  });
  return workedOut({
    sentence: `${metal.symbol} of ${name}, as the metal`,
    unit: '%',
    formula: over(share, factor),
    note: 'Note 1 of the entry: limits are put to the metal.',
  });
}

/** As the record calls what would have to be determined: the metal, or the substance. */
export const calledInRecord = (id: SubstanceId): string =>
  substances[id].metal?.symbol ?? substances[id].formula;
