/** Density of liquors against the nitric acid table and against volumes of an independent solver. */
import { describe, it } from 'vitest';
import { densityOf } from '../../src/chemistry/density';
import { molarMass } from '../../src/chemistry/formula';
import { liquorFrom } from '../../src/chemistry/liquor';
import { loadOf } from '../../src/chemistry/load';
import type { Metal } from '../../src/reference/tables';
import { expectWithin } from '../support/close';

/** One litre with so many moles of a metal's nitrate, or of acid. */
function densityWith(what: Metal | 'HNO3', molPerL: number) {
  const grams = molarMass(what).value.times(molPerL).toFixed(6);
  const liquor = liquorFrom({
    origin: 'test',
    volume: { value: '1.000', unit: 'L' },
    findings: what === 'HNO3' ? [] : [{ by: 'weighing', metal: what, mass: { value: grams, unit: 'g' } }],
    freeAcid: [
      { by: 'titration', result: { value: what === 'HNO3' ? molPerL.toFixed(4) : '0', unit: 'mol/L' } },
    ],
  });
  return densityOf(loadOf(liquor, 'test')).value;
}

describe('free acid: Perry’s table at 20 °C, strength and density', () => {
  it.each([
    [0.9819, 1.03122],
    [2.0303, 1.0661],
    [4.3435, 1.1404],
    [6.7431, 1.214],
  ])('%d mol/L has %d kg/L', (c, density) => expectWithin(densityWith('HNO3', c), density, 0.0005));
});

describe('salts: USGS PHREEQC 3.8.9 with phreeqc.dat molar volumes, 20 °C, computed outside this project', () => {
  it.each([
    ['Cu', 0.49, 1.0728],
    ['Cu', 0.962, 1.1426],
    ['Cu', 1.846, 1.2692],
    ['Zn', 0.961, 1.1433],
    ['Pb', 0.099, 1.0274],
  ] as const)('%s nitrate, %d mol/L: %d kg/L', (metal, c, density) =>
    expectWithin(densityWith(metal, c), density, 0.0035),
  );
});
