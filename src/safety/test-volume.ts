/** What a test on a plate makes of waste: the sample, and the drops that went onto it. */
import { ranged } from '../chemistry/constants';
import { plus, times } from '../quantities/expression';
import { type Figure, read, within, workedOut } from '../quantities/figure';
import type { Written } from '../quantities/written';
import { silverCheck } from '../reference/silver-check-tables';

/** No drop counts for less than one, and nobody counts more than this on a plate. */
export const mostDrops = 1_000;

/** @param drops whole drops of everything that went in @returns mL */
export function testVolume(sample: Written<'mL' | 'L' | 'US gal'>, drops: number): Figure<'mL'> {
  const taken = read({
    origin: 'test/sample',
    sentence: 'Sample',
    written: sample,
    unit: 'mL',
    how: 'reading',
    spread: () => within(0),
  });
  return workedOut({
    sentence: 'Waste of the test',
    unit: 'mL',
    formula: plus(taken, times(drops, ranged('test/drop', 'One drop', silverCheck.drop, 'mL'))),
  });
}
