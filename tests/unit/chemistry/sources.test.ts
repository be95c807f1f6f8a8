import { expect, it } from 'vitest';
import { acidByMass } from '../../../src/chemistry/acid-strength';
import { densityOf } from '../../../src/chemistry/density';
import { molarMass } from '../../../src/chemistry/formula';
import { liquorFrom } from '../../../src/chemistry/liquor';
import { loadOf } from '../../../src/chemistry/load';
import { over, times } from '../../../src/quantities/expression';
import { workedOut } from '../../../src/quantities/figure';
import { sides } from '../../../src/quantities/slopes';
import type { Metal } from '../../../src/reference/tables';

const acid = (percent: string) => {
  const found = acidByMass({ value: percent, unit: '%' }, 'test');
  if (!found.ok) throw new Error('outside');
  return found;
};

it.each([
  ['10', 'verified'],
  ['12.5', 'verified'],
  ['27', 'verified'],
  ['27.5', 'memory'],
  ['50', 'memory'],
  ['68', 'verified'],
  ['68.5', 'memory'],
])('acid of %s %% is %s: only a reading between rows that were seen is called so', (percent, status) => {
  expect(acid(percent).density.sources.map((s) => s.status)).toEqual([status]);
});

it('a strength read from the table is no better known than the table', () => {
  const { molarity } = acid('10');
  const table = molarity.slopes.get('table/nitric-acid-density');
  // 0.0005 kg/L on 1.0543, as two standard uncertainties.
  const share = ((table ? sides(table).plus : 0) * 2) / molarity.value.toNumber();
  expect(share).toBeCloseTo(0.0005 / 1.0543, 8);
});

const density = (metal: Metal) =>
  densityOf(
    loadOf(
      liquorFrom({
        origin: 'test',
        volume: { value: '1.00', unit: 'L' },
        findings: [{ by: 'weighing', metal, mass: { value: '100', unit: 'g' } }],
        freeAcid: [{ by: 'titration', result: { value: '0', unit: 'mol/L' } }],
      }),
      'test',
    ),
  );

it.each(['Pd', 'Sn'] as const)('%s has no known volume: the density leaves it out and says so', (metal) => {
  expect(density(metal).value.toString()).toBe('0.9982');
  expect(density(metal).note).toContain('is not counted');
});

it('copper counts, and nothing is said', () => {
  expect(density('Cu').value.gt('1.2')).toBe(true);
  expect(density('Cu').note).toBeUndefined();
});

it('acid told in mol/L has as much acid in a litre as it was told, however far the table of densities is off', () => {
  const found = acidByMass({ value: '6.00', unit: 'mol/L' }, 'test');
  if (!found.ok) throw new Error('outside');
  const { percent, density, molarity } = found;
  const back = workedOut({
    sentence: 'back',
    unit: 'mol/L',
    formula: over(times(percent, density), molarMass('HNO3')),
  });
  const table = back.slopes.get('table/nitric-acid-density');
  expect(table && sides(table).plus).toBeCloseTo(0, 8);
  expect(back.high.minus(molarity.high).abs().toNumber()).toBeLessThan(1e-4);
});
