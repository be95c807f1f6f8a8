/**
 * What is known of the extract of a leaching test, of one element. Of a liquid with hardly any solids the filtered liquid is
 * the extract; of all else the test is run, and short of it there are bounds: what the liquid part alone brings, and what
 * would come if all of it went into the extract.
 * Source: SW-846 Method 1311, sections 1.2, 1.3, 2.1, 2.2, and EPA's formula for total analysis in place of the test.
 */
import { minus, over, plus, times } from '../quantities/expression';
import { type Figure, workedOut } from '../quantities/figure';
import type { Element, ElementLevels, Levels } from './element-levels';

type LeachingTest = {
  readonly measured: Levels<'mg/L'>;
  /** Liquid put to a kilogram of the solid part. */
  readonly leachant: Figure<'L/kg'>;
  /** A liquid with less solids than that is its own extract. */
  readonly fewSolids: Figure<'%'>;
  /** Of the liquid part. */
  readonly density: Figure<'kg/L'>;
};

export type Extract = {
  /** In the extract itself. */
  readonly known: readonly Figure<'mg/L'>[];
  /** The liquid part alone brings as much; its low end is what can be relied on. */
  readonly atLeast?: Figure<'mg/L'>;
  /** All of it together would bring no more; its high end is what can be relied on. Absent where only a part is determined. */
  readonly atMost?: Figure<'mg/L'>;
};

/** It passes a filter whole, as far as anybody knows. */
const isFilterable = ({ state, solids }: ElementLevels, fewSolids: Figure<'%'>): boolean =>
  state === 'liquid' && (solids === undefined || solids.high.lt(fewSolids.value));

/** Extract for a kilogram of waste; null where nobody knows how much of it is solid. */
function extractVolume(levels: ElementLevels, { leachant, density }: LeachingTest) {
  const { state, solids, aqueous } = levels;
  if (state !== 'solid' && solids)
    return { liquid: over(minus(1, solids), density), leached: times(leachant, solids) };
  return state === 'solid' || (state === 'sludge' && !aqueous) ? { leached: times(leachant, 1) } : null;
}

export function extractOf(element: Element, levels: ElementLevels, test: LeachingTest): Extract {
  const [measured, filtered, total] = [test.measured, levels.filtered, levels.total].map((of) =>
    of.get(element),
  ) as [Figure<'mg/L'> | undefined, Figure<'mg/L'> | undefined, Figure<'mg/kg'> | undefined];
  const own = isFilterable(levels, test.fewSolids);
  const known = [measured, own ? filtered : undefined].filter((one) => one !== undefined);
  const volume = own ? null : extractVolume(levels, test);
  if (known.length > 0 || !volume) return { known };

  const { liquid, leached } = volume;
  const all = liquid ? plus(liquid, leached) : leached;
  return {
    known,
    ...(filtered && liquid
      ? {
          atLeast: workedOut({
            sentence: `${element} that the liquid part alone brings into the extract`,
            unit: 'mg/L',
            formula: over(times(filtered, liquid), all),
          }),
        }
      : {}),
    ...(total && !levels.open.includes(element)
      ? {
          atMost: workedOut({
            sentence: `${element} in the extract if all of it went in`,
            unit: 'mg/L',
            formula: over(total, all),
          }),
        }
      : {}),
  };
}
