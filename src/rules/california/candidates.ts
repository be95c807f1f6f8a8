/** Hazardous in California though not by federal law (22 CCR 66261.22, 66261.24): an example of a State that is stricter. */
import { constant } from '../../chemistry/constants';
import type { Figure } from '../../quantities/figure';
import { california } from '../../reference/california-tables';
import { rcra } from '../../reference/rcra-tables';
import type { Candidate, Ground } from '../candidate';
import { cited } from '../cited';
import { type Element, type ElementLevels, isTold, levelElements } from '../element-levels';
import { extractOf } from '../leaching';
import { finer, weighed } from '../none-found';

type Rule = 'toxic' | 'corrosive' | 'screen';
const made = (
  code: string,
  standing: Candidate['standing'],
  rule: Rule,
  grounds: readonly Ground[],
  lacks: readonly string[] = [],
): Candidate => ({ scheme: 'california', code, standing, citation: cited(california[rule]), grounds, lacks });

function threshold<U extends 'mg/L' | 'mg/kg'>(element: Element, unit: U): Figure<U> | null {
  const { values } = unit === 'mg/L' ? california.soluble : california.total;
  const value = values[element];
  if (value === undefined) return null;
  const { source, status } = california;
  const sentence =
    unit === 'mg/L' ? `STLC of ${element}, in the extract` : `TTLC of ${element}, in the wet waste`;
  return constant(
    `california/${unit}/${element}`,
    sentence,
    { value, unit, uncertainty: '0', source, status },
    unit,
  );
}

const leachingTest = (levels: ElementLevels) => ({
  measured: levels.wet,
  leachant: constant(
    'california/leachant',
    'Liquid put to a kilogram in the extraction test',
    california.leachant,
    'L/kg',
  ),
  fewSolids: constant(
    'california/few-solids',
    'Solids under which a liquid is its own extract',
    california.fewSolids,
    '%',
  ),
  density: constant('rcra/liquor', 'Density of the liquid part', rcra.liquor, 'kg/L'),
});

/** `asked`: what would have to be measured more closely, by name as the record calls it. */
type Asked = { readonly code: string; readonly element: Element; readonly asked: string };

function held(
  { code, element, asked }: Asked,
  figures: readonly Figure[],
  limit: Figure,
  levels: ElementLevels,
): Candidate | null {
  const { fires, close, tooCoarse } = weighed(
    figures.map((figure) => ({ figure, limit })),
    levels,
  );
  if (fires.length > 0) return made(code, 'fires', 'toxic', fires);
  // Known of a part only: there is at least so much.
  if (levels.open.includes(element)) return made(code, 'open', 'toxic', close, [element]);
  if (tooCoarse.length === figures.length)
    return made(code, 'open', 'toxic', tooCoarse, [finer(asked, limit)]);
  return close.length > 0 ? made(code, 'close', 'toxic', close) : null;
}

function soluble(element: Element, levels: ElementLevels): Candidate | null {
  const code = `STLC ${element}`;
  const limit = threshold(element, 'mg/L');
  if (!limit) return null;
  const { known, atLeast, atMost } = extractOf(element, levels, leachingTest(levels));
  if (known.length > 0) {
    const asked = levels.wet.has(element) ? `WET of ${element}` : `${element}, filtered`;
    return held({ code, element, asked }, known, limit, levels);
  }
  if (atLeast?.low.gte(limit.value))
    return made(code, 'fires', 'toxic', [{ figure: atLeast, limit, end: 'low' }]);
  if (atMost?.high.lt(limit.value)) return null;
  const lacks =
    levels.state === 'liquid' && !levels.filtered.has(element) ? `${element}, filtered` : `WET of ${element}`;
  if (isTold(element, levels))
    return made(code, 'open', 'screen', atMost ? [{ figure: atMost, limit }] : [], [lacks]);
  return levels.open.includes(element) ? made(code, 'open', 'toxic', [], [element]) : null;
}

function total(element: Element, levels: ElementLevels): Candidate | null {
  const code = `TTLC ${element}`;
  const limit = threshold(element, 'mg/kg');
  if (!limit) return null;
  const figure = levels.total.get(element);
  const asked = `total of ${element}`;
  if (figure) return held({ code, element, asked }, [figure], limit, levels);
  // What an extract holds is no word on all that is in it.
  const leached = [levels.tclp, levels.wet].some((of) => of.has(element));
  return leached ? made(code, 'open', 'toxic', [], [asked]) : null;
}

/** Of what is not aqueous too, in its mixture with as much water. */
function corrosive({ pH }: ElementLevels): Candidate | null {
  if (!pH) return made('Corrosive', 'open', 'corrosive', [], ['pH']);
  const acid = constant('california/acid', 'Corrosive, acid: pH', california.ph.acid, '1');
  const alkaline = constant('california/alkaline', 'Corrosive, alkaline: pH', california.ph.alkaline, '1');
  const grounds: readonly Ground[] = [
    ...(pH.low.lte(acid.value) ? [{ figure: pH, limit: acid, end: 'low' as const }] : []),
    ...(pH.high.gte(alkaline.value) ? [{ figure: pH, limit: alkaline }] : []),
  ];
  return grounds.length > 0 ? made('Corrosive', 'fires', 'corrosive', grounds) : null;
}

export const californiaCandidates = (levels: ElementLevels): readonly Candidate[] =>
  [
    corrosive(levels),
    ...levelElements.map((element) => soluble(element, levels)),
    ...levelElements.map((element) => total(element, levels)),
  ].filter((found) => found !== null);
