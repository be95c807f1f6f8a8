/** Danger to the aquatic environment by summation (ADR 2.2.9.1.10.4.6): an entry of class 9, or a mark beside another class. */
import { sourceOf } from '../../chemistry/constants';
import { times } from '../../quantities/expression';
import { exact, type Figure, given } from '../../quantities/figure';
import { type SubstanceId, substances } from '../../reference/substances-tables';
import { transport } from '../../reference/transport-tables';
import { type Ground, standingOf } from '../candidate';
import { type Consignment, type Part, partsOf } from './consignment';
import { citedRule, type Finding, limitOf, sumOf } from './finding';

type Term = 'acute' | 'chronic';
const classOf = { acute: 'Aquatic Acute', chronic: 'Aquatic Chronic' } as const;

const inCategory1 = (id: SubstanceId, term: Term): boolean =>
  substances[id].classes.some((c) => c.class === classOf[term] && c.category === '1');

/** M of a substance; 1 where none is set. */
function factor(id: SubstanceId, term: Term): Figure<'1'> {
  const { name, m } = substances[id];
  return given({
    origin: `constant/M/${term}/${id}`,
    sentence: `M of ${name}, ${term}`,
    value: m?.[term] ?? '1',
    unit: '1',
    how: 'constant',
    spread: exact,
    sources: [sourceOf(m ?? substances[id])],
  });
}

/** Share × M of a constituent in per cent; 0 where it is not in category 1. */
export const aquaticWeight = ({ id, share }: Pick<Part, 'id' | 'share'>): number =>
  Math.max(
    ...(['acute', 'chronic'] as const).map((term) =>
      inCategory1(id, term) ? share.high.times(factor(id, term).value).toNumber() : 0,
    ),
  );

/** What is below the cut-off is left out, except that a high M makes less of it count. */
const counts = ({ id, share }: Part, term: Term): boolean =>
  inCategory1(id, term) &&
  share.high.times(factor(id, term).value).gte(transport.limits.aquaticRelevant.value);

const terms = (parts: readonly Part[], term: Term) =>
  parts.filter((part) => counts(part, term)).map(({ id, share }) => times(share, factor(id, term)));

/** Acute 1 and Chronic 1 or 2: every sum that reaches its limit, else the one that comes near; null where none does. */
export function aquatic({ mixture }: Consignment): Finding | null {
  const parts = partsOf(mixture);
  const limit = limitOf('aquatic', 'Limit of the sums for the aquatic environment', '%');
  const chronic = sumOf('Chronic 1, each share × M', terms(parts, 'chronic'));
  const sums = [
    sumOf('Acute 1, each share × M', terms(parts, 'acute')),
    chronic && sumOf('Ten times Chronic 1, each share × M', [times(chronic, 10)]),
  ];
  const grounds = sums.flatMap((figure): Ground[] => (figure ? [{ figure, limit }] : []));
  const of = (standing: 'fires' | 'close') => grounds.filter((ground) => standingOf(ground) === standing);
  const reached = of('fires');
  const found = { group: 'III', citation: citedRule('aquatic') } as const;
  if (reached.length > 0) return { ...found, standing: 'fires', taken: true, grounds: reached, lacks: [] };
  const open = mixture.open.filter((id) => inCategory1(id, 'acute') || inCategory1(id, 'chronic'));
  if (open.length > 0) return { ...found, standing: 'open', taken: true, grounds: of('close'), lacks: open };
  const near = of('close');
  return near.length === 0 ? null : { ...found, standing: 'close', taken: false, grounds: near, lacks: [] };
}
