/** Hazardous in California though not by federal law (22 CCR 66261.22, 66261.24): an example of a State that is stricter. */
import { constant } from '../../chemistry/constants';
import type { Figure } from '../../quantities/figure';
import { california } from '../../reference/california-tables';
import { rcra } from '../../reference/rcra-tables';
import { type Candidate, type Ground, standingOf } from '../candidate';
import { cited } from '../cited';
import { type Element, type ElementLevels, levelElements } from '../element-levels';
import { extractOf } from '../leaching';

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

/** @param lacks what is known of a part only: there is at least so much */
function held(
  code: string,
  figures: readonly Figure[],
  limit: Figure,
  lacks: readonly string[],
): Candidate | null {
  const grounds = figures.map((figure) => ({ figure, limit }));
  const reached = (standing: 'fires' | 'close') => grounds.filter((g) => standingOf(g) === standing);
  if (reached('fires').length > 0) return made(code, 'fires', 'toxic', reached('fires'));
  if (lacks.length > 0) return made(code, 'open', 'toxic', reached('close'), lacks);
  return reached('close').length > 0 ? made(code, 'close', 'toxic', reached('close')) : null;
}

function soluble(element: Element, levels: ElementLevels): Candidate | null {
  const code = `STLC ${element}`;
  const limit = threshold(element, 'mg/L');
  if (!limit) return null;
  const { known, atLeast, atMost } = extractOf(element, levels, leachingTest(levels));
  const open = levels.open.filter((one) => one === element);
  if (known.length > 0) return held(code, known, limit, open);
  if (atLeast?.low.gte(limit.value))
    return made(code, 'fires', 'toxic', [{ figure: atLeast, limit, end: 'low' }]);
  if (atMost?.high.lt(limit.value)) return null;
  const seen = levels.filtered.has(element) || levels.total.has(element);
  const lacks =
    levels.state === 'liquid' && !levels.filtered.has(element) ? `${element}, filtered` : `WET of ${element}`;
  if (seen) return made(code, 'open', 'screen', atMost ? [{ figure: atMost, limit }] : [], [lacks]);
  return levels.open.includes(element) ? made(code, 'open', 'toxic', [], [element]) : null;
}

function total(element: Element, levels: ElementLevels): Candidate | null {
  const limit = threshold(element, 'mg/kg');
  const figure = levels.total.get(element);
  const open = levels.open.filter((one) => one === element);
  return limit && figure ? held(`TTLC ${element}`, [figure], limit, open) : null;
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
