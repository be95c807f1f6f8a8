/** The pH of a liquor from its free acid, and a pH as a figure where one was read. */
import Decimal from 'decimal.js';
import { ln, minus, over, plus } from '../quantities/expression';
import { exact, type Figure, given, read, within, workedOut } from '../quantities/figure';
import { evidence } from '../reference/tables';
import { type PhEvidence, phSpread } from './acid-from-ph';
import { sourceOf } from './constants';

const tenfold = given({
  origin: 'pH/tenfold',
  sentence: 'Logarithm of 10',
  value: Decimal.ln(10).toDecimalPlaces(5),
  unit: '1',
  how: 'constant',
  spread: exact,
  decimals: 5,
});

const one = given({
  origin: 'pH/one',
  sentence: 'One mole a litre',
  value: 1,
  unit: 'mol/L',
  how: 'constant',
  spread: exact,
  decimals: 0,
});

const factor = evidence['ph-to-acid'];

/** What strong salt does to a pH: half of the range is the logarithm of the factor between pH and acid. */
const activity = given({
  origin: 'pH/activity',
  sentence: 'Strong salt moves a pH by',
  value: 0,
  unit: '1',
  how: 'assumed',
  spread: within(new Decimal(factor.value).log(10)),
  decimals: 1,
  sources: [sourceOf(factor)],
});

/**
 * −log of the free acid, with what strong salt makes of it; undefined where there is no acid to take it from.
 * @param end there is at least so much acid, so that the pH is that or lower
 */
export function phFromAcid(acid: Figure<'mol/L'>, end?: 'at most'): Figure<'1'> | undefined {
  if (acid.value.lte(0)) return undefined;
  return workedOut({
    sentence: end
      ? 'pH at most, worked out from the acid that is known'
      : 'pH, worked out from the free acid',
    unit: '1',
    formula: plus(minus(0, over(ln(over(acid, one)), tenfold)), activity),
    signed: true,
    sources: [sourceOf(factor)],
  });
}

/** A pH that was read, with the spread of its instrument. */
export function phRead(found: Omit<PhEvidence, 'by'>, origin: string): Figure<'1'> {
  const { half, sources } = phSpread({ by: 'ph', ...found });
  return read({
    origin,
    sentence: found.instrument === 'paper' ? 'pH, by paper' : 'pH, by meter',
    written: found.ph,
    unit: '1',
    how: 'reading',
    spread: () => within(half),
    sources,
  });
}
