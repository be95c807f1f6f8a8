/** Toxicity characteristic (40 CFR 261.24): what the extract of a waste holds of eight metals against the table. */
import { constant } from '../../chemistry/constants';
import type { Figure } from '../../quantities/figure';
import { rcra, type ToxicityCode, toxicityCodes } from '../../reference/rcra-tables';
import { type Candidate, type Ground, standingOf } from '../candidate';
import { cited } from '../cited';
import { type Element, type ElementLevels, isTold } from '../element-levels';
import { type Extract, extractOf } from '../leaching';
import { finer, weighed } from '../none-found';

export const elementOfCode = (code: ToxicityCode): Element => rcra.toxicity[code].element as Element;

const limitOf = (code: ToxicityCode): Figure<'mg/L'> =>
  constant(
    `rcra/${code}`,
    `${code}: ${rcra.toxicity[code].name} in the extract`,
    rcra.toxicity[code].limit,
    'mg/L',
  );

const leachingTest = (levels: ElementLevels) => ({
  measured: levels.tclp,
  leachant: constant('rcra/leachant', 'Liquid put to a kilogram in the leaching test', rcra.leachant, 'L/kg'),
  fewSolids: constant(
    'rcra/few-solids',
    'Solids under which a liquid is its own extract',
    rcra.fewSolids,
    '%',
  ),
  density: constant('rcra/liquor', 'Density of the liquid part', rcra.liquor, 'kg/L'),
});

const extractFor = (code: ToxicityCode, levels: ElementLevels): Extract =>
  extractOf(elementOfCode(code), levels, leachingTest(levels));

function candidateOf(code: ToxicityCode, levels: ElementLevels): Candidate | null {
  const element = elementOfCode(code);
  const limit = limitOf(code);
  const { known, atLeast, atMost } = extractFor(code, levels);
  const made = (
    standing: Candidate['standing'],
    rule: 'toxic' | 'totalScreen',
    grounds: readonly Ground[],
    lacks: readonly string[] = [],
  ): Candidate => ({
    ...{ scheme: 'rcra', code, standing, citation: cited(rcra.rules[rule]), grounds, lacks },
  });

  if (known.length > 0) {
    const grounds = known.map((figure) => ({ figure, limit }));
    const { fires, close, tooCoarse } = weighed(grounds, levels);
    if (fires.length > 0) return made('fires', 'toxic', fires);
    // Known of a part only: there is at least so much.
    if (levels.open.includes(element)) return made('open', 'toxic', close, [element]);
    if (tooCoarse.length === known.length) {
      const asked = levels.tclp.has(element) ? `TCLP of ${element}` : `${element}, filtered`;
      return made('open', 'toxic', tooCoarse, [finer(asked, limit)]);
    }
    return close.length > 0 ? made('close', 'toxic', close) : null;
  }
  if (atLeast?.low.gte(limit.value)) return made('fires', 'toxic', [{ figure: atLeast, limit, end: 'low' }]);
  if (atMost?.high.lt(limit.value))
    return standingOf({ figure: atMost, limit }) === 'close'
      ? made('close', 'totalScreen', [{ figure: atMost, limit }])
      : null;
  if (atMost) return made('open', 'totalScreen', [{ figure: atMost, limit }], [`TCLP of ${element}`]);
  const told = isTold(element, levels);
  if (told && levels.state === 'liquid' && !levels.filtered.has(element))
    return made('open', 'toxic', [], [`${element}, filtered`]);
  if (told) return made('open', 'toxic', [], [`TCLP of ${element}`]);
  return levels.open.includes(element) ? made('open', 'toxic', [], [element]) : null;
}

/** D004 to D011. An element that is neither measured nor open is no part of the question. */
export const toxicity = (levels: ElementLevels): readonly Candidate[] =>
  toxicityCodes.flatMap((code) => candidateOf(code, levels) ?? []);

/** What the total alone says, of what is no liquid: whether the leaching test could be failed at all. */
export function totalScreen(levels: ElementLevels): ReadonlyMap<ToxicityCode, 'cannot fail' | 'TCLP needed'> {
  if (levels.state === 'liquid') return new Map();
  const untested = { ...levels, tclp: new Map() };
  return new Map(
    toxicityCodes
      .filter((code) => levels.total.has(elementOfCode(code)))
      .map((code) => {
        const { atMost } = extractFor(code, untested);
        return [code, atMost?.high.lt(limitOf(code).value) ? 'cannot fail' : 'TCLP needed'];
      }),
  );
}

/** Metals in it that the table does not know: that is no word on any other rule. */
export const outsideToxicity = ({ filtered, total, tclp }: ElementLevels): readonly Element[] =>
  (rcra.notToxicity.elements as Element[]).filter((e) => [filtered, total, tclp].some((of) => of.has(e)));
