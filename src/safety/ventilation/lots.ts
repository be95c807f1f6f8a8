/**
 * How much goes into one lot. A hood in its window holds the gas, and its duct throws it out near people: what leaves it at
 * the peak, at its high end, is no more than what is immediately dangerous to life. And however good the station is, no more
 * than a ceiling of metal dissolves in one lot. The first is a judgement, the second common practice
 * (reference/nitrous-gas.json, `duct` and `ceiling`).
 */
import { constant } from '../../chemistry/constants';
import { over, times } from '../../quantities/expression';
import { exact, type Figure, given, workedOut } from '../../quantities/figure';
import { nitrousGas } from '../../reference/nitrous-gas-tables';
import { dangerous } from './limit';
import { roundedDown } from './rounded';

/** Highest concentration that may leave the duct. */
export const mostInDuct: Figure<'ppm'> = workedOut({
  sentence: 'The most that may leave the duct',
  unit: 'ppm',
  formula: times(constant('duct', 'Times what is immediately dangerous', nitrousGas.duct, '1'), dangerous),
});

export const ceiling = constant(
  'ceiling',
  'Metal that dissolves in one lot, at the most',
  nitrousGas.ceiling,
  'g',
);

/** What is split up: metal that is weighed out, or liquor that is poured. */
export type Divided = 'g' | 'L';

export type TooMuch = 'peak-in-duct' | 'over-ceiling';

export type Lots<U extends Divided> = {
  readonly tooMuch: readonly TooMuch[];
  /** The largest lot that this station takes. */
  readonly portion: Figure<U>;
  /** Absent where one lot is enough. */
  readonly split?: { readonly count: number; readonly each: Figure<U> };
};

type Asked<U extends Divided> = {
  readonly whole: Figure<U>;
  /** Of the whole that dissolves. */
  readonly metal: Figure<'g'>;
  /** Peak in the duct of the whole, and of as much with acid to spare; absent outdoors. */
  readonly peak?: { readonly asItIs: Figure<'ppm'>; readonly toSpare: Figure<'ppm'> };
};

const worst = (peak: Figure<'ppm'>): Figure<'ppm'> =>
  given({
    origin: 'ventilation/worst-peak',
    sentence: 'Peak in the duct with all of it in one lot and acid to spare, high end',
    value: peak.high,
    unit: 'ppm',
    how: 'worked-out',
    spread: exact,
  });

const sentence = 'Largest lot for this place';

/** Lots of a charge. Gas goes with the metal, so a lot of half the metal has half the peak. */
export function lotsOf<U extends Divided>({ whole, metal, peak }: Asked<U>): Lots<U> {
  const tooMuch: TooMuch[] = [];
  if (peak?.asItIs.high.gt(mostInDuct.value)) tooMuch.push('peak-in-duct');
  if (metal.value.gt(ceiling.value)) tooMuch.push('over-ceiling');
  const of = (formula: ReturnType<typeof times>) => workedOut({ sentence, unit: whole.unit, formula });
  const byCeiling = of(times(whole, over(ceiling, metal)));
  const byDuct = peak && of(times(whole, over(mostInDuct, worst(peak.toSpare))));
  const smaller = byDuct?.value.lt(byCeiling.value) ? byDuct : byCeiling;
  if (tooMuch.length === 0) return { tooMuch, portion: whole.value.gt(smaller.value) ? whole : smaller };
  // By what a person is told to weigh out, which is a little less.
  const count = Math.max(2, whole.value.div(roundedDown(smaller).value).ceil().toNumber());
  const each = workedOut({
    sentence: `Each of ${count} lots`,
    unit: whole.unit,
    formula: over(whole, count),
  });
  return { tooMuch, portion: smaller, split: { count, each } };
}
