/** Hazard to water: the summation method with M-factors (CLP Annex I, 4.1.3.5.5). */
import { sourceOf } from '../../chemistry/constants';
import { type Expression, expression, plus, times } from '../../quantities/expression';
import { exact, type Figure, given, workedOut } from '../../quantities/figure';
import { clp } from '../../reference/clp-tables';
import { type Found, limitOf, worstOf } from './found';
import type { Part } from './parts';

const limit = limitOf('Limit for the sum of what harms water', clp.aquatic.limit, '%');
const factors = {
  ten: limitOf('Chronic 1 counts towards Chronic 2', clp.aquatic.chronic2, '1'),
  hundred: limitOf('Chronic 1 counts towards Chronic 3', clp.aquatic.chronic3, '1'),
};

const categoryOf = ({ substance }: Part, name: 'Aquatic Acute' | 'Aquatic Chronic'): string | undefined =>
  substance.classes.find((c) => c.class === name)?.category;

function weighted(part: Part, kind: 'acute' | 'chronic'): Expression {
  const { m, name } = part.substance;
  const factor = m?.[kind];
  if (!m || factor === undefined) return expression(part.share);
  const figure = given({
    origin: `constant/clp/m/${part.id}/${kind}`,
    sentence: `M-factor of ${name}, ${kind}`,
    value: factor,
    unit: '1',
    how: 'constant',
    spread: exact,
    sources: [sourceOf(m)],
    ...(m.note ? { note: m.note } : {}),
  });
  return times(figure, part.share);
}

const sumOf = (sentence: string, terms: readonly Expression[]): Figure<'%'> | null =>
  terms.length === 0 ? null : workedOut({ sentence, unit: '%', formula: plus(...terms) });

export type AquaticSums = { readonly acute: Figure<'%'> | null; readonly chronic: Figure<'%'> | null };

export function aquatic(parts: readonly Part[]): { readonly sums: AquaticSums; readonly found: Found[] } {
  const chronicOf = (...categories: string[]): Part[] =>
    parts.filter((p) => categories.includes(categoryOf(p, 'Aquatic Chronic') ?? 'none'));
  const acute = sumOf(
    'What is Acute 1, times its M-factor',
    parts.filter((p) => categoryOf(p, 'Aquatic Acute') === '1').map((p) => weighted(p, 'acute')),
  );
  const chronic = sumOf(
    'What is Chronic 1, times its M-factor',
    chronicOf('1').map((p) => weighted(p, 'chronic')),
  );
  const [second, third, all] = [['2'], ['3'], ['1', '2', '3', '4']].map((cs) => chronicOf(...cs));
  const shares = (of: readonly Part[] = []) => of.map((p) => expression(p.share));
  const scaled = (factor: Figure<'1'>, figure: Figure | null) => (figure ? [times(factor, figure)] : []);
  const toTwo = sumOf('Counted towards Chronic 2', [...scaled(factors.ten, chronic), ...shares(second)]);
  const toThree = sumOf('Counted towards Chronic 3', [
    ...scaled(factors.hundred, chronic),
    ...shares(second).map((share) => times(factors.ten, share)),
    ...shares(third),
  ]);
  const toFour = sumOf('All that harms water for long', shares(all));
  const step = (category: string, code: string, figure: Figure | null) => ({
    hazard: { class: 'Aquatic Chronic' as const, category, code },
    ground: figure && { figure, limit },
  });
  const found = [
    ...worstOf('aquaticAcute', [
      {
        hazard: { class: 'Aquatic Acute', category: '1', code: 'H400' },
        ground: acute && { figure: acute, limit },
      },
    ]),
    ...worstOf('aquaticChronic', [
      step('1', 'H410', chronic),
      step('2', 'H411', toTwo),
      step('3', 'H412', toThree),
      step('4', 'H413', toFour),
    ]),
  ];
  return { sums: { acute, chronic }, found };
}
