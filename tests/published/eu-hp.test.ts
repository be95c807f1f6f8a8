/**
 * Annex III of Directive 2008/98/EC as others restate it: limits of HP 4, HP 6 and HP 8 by public pages on the British guidance
 * (WM3, appendix C); how cut-off values work, and which properties add up, by the waste classification pages of ECN. No worked
 * example with substances of this trade was found; the texts themselves are named in src/reference/sources.json.
 */
import { describe, expect, it } from 'vitest';
import { calculatedHps, euHp } from '../../src/reference/eu-hp-tables';
import type { SubstanceId } from '../../src/reference/substances-tables';
import { euHpCandidates } from '../../src/rules/eu-hp/candidates';
import { mixtureOf } from '../cases/mixture-input';

const fires = (massPercent: Partial<Record<SubstanceId, string>>): readonly string[] =>
  euHpCandidates(mixtureOf({ state: 'liquid', massPercent }))
    .filter(({ standing }) => standing === 'fires')
    .map(({ code }) => code);

describe('limits as WM3 appendix C is restated', () => {
  const acute: readonly (readonly [way: string, ...limits: string[]])[] = [
    ['H30', '0.1', '0.25', '5', '25'],
    ['H31', '0.25', '2.5', '15', '55'],
    ['H33', '0.1', '0.5', '3.5', '22.5'],
  ];
  it.each(acute)('HP 6, %s0 to %s2, categories 1 to 4', (way, ...limits) => {
    const rows = euHp.byCalculation['HP 6'].limits.filter(({ of }) => of[0]?.code.startsWith(way));
    expect(rows.map(({ of, limit }) => [of[0]?.category, limit])).toEqual(
      limits.map((limit, i) => [`${i + 1}`, limit]),
    );
  });

  const edges: readonly (readonly [hp: string, id: SubstanceId, at: string, below: string])[] = [
    ['HP 6', 'HNO3', '3.5', '3.49'],
    ['HP 6', 'HNO3-conc', '0.1', '0.09'],
    ['HP 6', 'Cu(OH)2', '0.5', '0.49'],
    ['HP 6', 'Cu(NO3)2', '25', '24.9'],
    ['HP 4', 'NaOH', '1', '0.99'],
    ['HP 4', 'Cu(NO3)2', '10', '9.99'],
    ['HP 4', 'Fe(NO3)3', '20', '19.9'],
    ['HP 8', 'HCl', '5', '4.99'],
  ];
  it.each(edges)('%s by %s at %s %, not at %s %', (hp, id, at, below) => {
    expect(fires({ [id]: at })).toContain(hp);
    expect(fires({ [id]: below })).not.toContain(hp);
  });

  it('HP 4 from 1 % of the strongest acid or base, HP 8 in its place from 5 %', () => {
    expect(fires({ NaOH: '4.99' })).toEqual(['HP 4']);
    expect(fires({ NaOH: '5' })).toEqual(['HP 8']);
  });
});

describe('sums and cut-off values as ECN tells them', () => {
  it('HP 4, 6, 8 and 14 add up; HP 5, 7, 10, 11 and 13 take each substance alone', () => {
    const adding = calculatedHps.filter((hp) =>
      euHp.byCalculation[hp].limits.some((row) => row.combine === 'sum'),
    );
    expect(adding).toEqual(['HP 4', 'HP 6', 'HP 8', 'HP 14']);
  });

  it('what is below 1 % is ignored for HP 8, however much there is of it together', () => {
    const corrosives = ['HNO3', 'HCl', 'NH3aq', 'NaOH', 'AgNO3', 'Pd(NO3)2'] as const;
    const each = (share: string) => Object.fromEntries(corrosives.map((id) => [id, share]));
    expect(fires(each('0.99'))).not.toContain('HP 8');
    expect(fires(each('1'))).toContain('HP 8');
  });
});
