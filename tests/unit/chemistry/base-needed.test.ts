import { describe, expect, it } from 'vitest';
import { baseNeeded } from '../../../src/chemistry/base-needed';
import type { MetalEvidence } from '../../../src/chemistry/evidence';
import { liquorFrom } from '../../../src/chemistry/liquor';
import { loadOf } from '../../../src/chemistry/load';
import { sludgeFrom } from '../../../src/chemistry/sludge';
import { type BaseId, baseIds } from '../../../src/reference/tables';

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

it('a base by its basicity factor: 1 mol of acid takes 28.039 g of CaO, so 38.943 g of lime of 0.720, and 10 %', () => {
  // M(CaO) = 56.077 g/mol, half of it for one hydroxide.
  const load = loadOf(
    liquorFrom({
      origin: 'test',
      volume: { value: '2.00', unit: 'L' },
      findings: [],
      freeAcid: [{ by: 'titration', result: { value: '0.500', unit: 'mol/L' } }],
    }),
    'test',
  );
  const stated = { basicity: { value: '0.720', unit: '1' as const }, origin: 'bag' };
  const lime = baseNeeded('hydrated-lime', load, stated);
  expect(lime?.mass.value.toNumber()).toBeCloseTo(38.943 * 1.1, 1);
});

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

describe('soda ash', () => {
  const barium: readonly MetalEvidence[] = [
    { by: 'weighing', metal: 'Ba', mass: { value: '137.327', unit: 'g' } },
  ];
  const hydroxide = (base: BaseId) => needed(barium, base)?.hydroxide.value.toNumber();

  it('spends two hydroxides on a barium, as bicarbonate does; no other base spends any', () => {
    // 6.70 L × 0.58 mol/L of acid, and two for the one mole of barium.
    expect(hydroxide('soda-ash')).toBeCloseTo(3.886 + 2, 4);
    expect(hydroxide('sodium-bicarbonate')).toBeCloseTo(3.886 + 2, 4);
    for (const base of baseIds.filter((b) => b !== 'soda-ash' && b !== 'sodium-bicarbonate'))
      expect(hydroxide(base), base).toBeCloseTo(3.886, 6);
  });

  it('leaves 1.437 g of barium carbonate for a gram of barium', () => {
    const load = loadWith(barium);
    const soda = baseNeeded('soda-ash', load);
    const dry = soda && sludgeFrom(load, soda)?.dry.value.toNumber();
    expect((dry ?? 0) / 137.327).toBeCloseTo(1.437, 3);
  });

  it('is bought with what the model says goes to bicarbonate: 28 % over the sum, up to 40 %', () => {
    const soda = needed([perLitre('Cu', '17.6')], 'soda-ash');
    const pure = baseNeeded('soda-ash', loadWith([perLitre('Cu', '17.6')]), {
      purity: { value: '100', unit: '%' },
      origin: 'pure',
    });
    // (3.886 + 2 × 117.92 ÷ 63.546) mol × 105.988 g/mol ÷ 2 × 1.28
    expect(pure?.mass.value.toNumber()).toBeCloseTo(515.3, 0);
    expect(soda?.mass.high.gt(pure?.mass.value.times(1.09) ?? 0)).toBe(true);
  });
});

describe('grit stays of what is sold as grit, whatever excess it needs', () => {
  const load = loadWith([{ by: 'weighing', metal: 'Cu', mass: { value: '63.546', unit: 'g' } }]);
  const grit = (base: BaseId) => {
    const of = baseNeeded(base, load);
    const dry = of && sludgeFrom(load, of)?.dry.value;
    return dry
      ?.minus('97.56')
      .div(of?.mass.value ?? 1)
      .toNumber();
  };
  it.each(['caustic-soda', 'soda-ash'] as const)('none of %s', (base) => {
    expect(grit(base)).toBeCloseTo(0, 3);
  });
  it.each(['hydrated-lime', 'quicklime', 'limestone'] as const)('a tenth of %s', (base) => {
    expect(grit(base)).toBeCloseTo(0.1, 3);
  });
});
