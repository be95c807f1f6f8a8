import { describe, expect, it } from 'vitest';
import { baseNeeded } from '../../../src/chemistry/base-needed';
import type { MetalEvidence } from '../../../src/chemistry/evidence';
import { liquorFrom } from '../../../src/chemistry/liquor';
import { loadOf } from '../../../src/chemistry/load';
import type { BaseId } from '../../../src/reference/tables';

const loadWith = (findings: readonly MetalEvidence[]) =>
  loadOf(
    liquorFrom({
      origin: 'test',
      volume: { value: '6.70', unit: 'L' },
      findings,
      freeAcid: [{ by: 'titration', result: { value: '0.58', unit: 'mol/L' } }],
    }),
    'barren',
  );
const perLitre = (metal: 'Cu' | 'Ni' | 'Ba', value: string): MetalEvidence => ({
  by: 'photometer',
  metal,
  concentration: { value, unit: 'g/L' },
});
const needed = (findings: readonly MetalEvidence[], base: BaseId = 'hydrated-lime') =>
  baseNeeded(base, loadWith(findings));

describe('a base needed says what it was worked out without', () => {
  it('copper and nickel that no liquor tells: 167 g of lime for the acid alone, and the liquor named', () => {
    const acidOnly = needed([
      { by: 'not-determined', metal: 'Cu' },
      { by: 'not-determined', metal: 'Ni' },
    ]);
    // 3.886 mol × 37.046 g/mol ÷ 0.95 × 1.10
    expect(acidOnly?.mass.value.toFixed(0)).toBe('167');
    expect(acidOnly?.openIn).toEqual(['barren']);
  });

  it('nickel alone not told leaves it open as well', () => {
    expect(needed([perLitre('Cu', '17.6')])?.openIn).toEqual(['barren']);
  });

  it('metals that nobody ever named are not asked for once copper and nickel are told', () => {
    expect(needed([perLitre('Cu', '17.6'), perLitre('Ni', '6.2')])?.openIn).toEqual([]);
  });
});
