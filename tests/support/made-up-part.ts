/** Ingredients of no name, as worked examples have them. */
import { between, exact, given } from '../../src/quantities/figure';
import type { Substance } from '../../src/reference/substances-tables';
import type { Part } from '../../src/rules/clp/parts';

const bare: Substance = {
  name: 'an ingredient',
  formula: 'X',
  cas: '00-00-0',
  index: null,
  classes: [],
  source: 'clp-notified',
  status: 'memory',
};

type Percent = string | readonly [low: string, value: string, high: string];

/** @param percent one value, or a range with what is likely */
export function madeUp(id: string, percent: Percent, told: Partial<Substance>): Part {
  const value = typeof percent === 'string' ? percent : percent[1];
  return {
    id,
    substance: { ...bare, name: id, formula: id, ...told },
    share: given({
      origin: id,
      sentence: `${id} by mass`,
      value,
      unit: '%',
      how: 'stated',
      spread: typeof percent === 'string' ? exact : between(...percent),
    }),
  };
}
