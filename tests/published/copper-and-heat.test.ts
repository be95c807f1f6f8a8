/** Copper displaced in cementation, and heats of neutralising, against values from outside this project. */
import { MF } from 'mf-parser';
import { describe, expect, it } from 'vitest';
import { baseNeeded } from '../../src/chemistry/base-needed';
import { displacedCopper } from '../../src/chemistry/evidence';
import { heatPerAcid, heatPerMetal, warming } from '../../src/chemistry/heat';
import { liquorFrom } from '../../src/chemistry/liquor';
import { loadOf } from '../../src/chemistry/load';
import { expectWithin } from '../support/close';

const mass = (formula: string): number => new MF(formula).getInfo().mass;
const displaced = (silver: string, palladium: string) =>
  displacedCopper(
    { silver: { value: silver, unit: 'g' }, palladium: { value: palladium, unit: 'g' } },
    'test',
  ).value;

describe('copper displaced in cementation', () => {
  it('a gram of silver displaces 0.2946 g, by a library with its own atomic weights', () => {
    expectWithin(displaced('1', '0'), mass('Cu') / (2 * mass('Ag')), 0.0002);
    expectWithin(displaced('1', '0'), 0.2946, 0.0003);
  });

  it('a gram of palladium displaces 0.5971 g', () => {
    expectWithin(displaced('0', '1'), mass('Cu') / mass('Pd'), 0.0002);
    expectWithin(displaced('0', '1'), 0.5971, 0.0003);
  });
});

/**
 * Reaction enthalpies in the database minteq.v4 (USGS distribution of EPA MINTEQA2, NIST-derived), kJ per mole of solid
 * taking up acid: independent of the enthalpies of formation used here. They meet to 1 kJ.
 */
const minteq = { CaO: -193.91, 'Ca(OH)2': -128.62, 'Cu(OH)2': -56.42, 'Ni(OH)2': -95.96, 'Zn(OH)2': -81.8 };

describe('heats against the minteq.v4 database', () => {
  const within = (computed: number | undefined, listed: number) =>
    expect(Math.abs((computed ?? Number.NaN) - listed)).toBeLessThan(1);

  it('one mole of acid with quicklime and with hydrated lime', () => {
    within(heatPerAcid('quicklime').value.toNumber(), -minteq.CaO / 2);
    within(heatPerAcid('hydrated-lime').value.toNumber(), -minteq['Ca(OH)2'] / 2);
  });

  it('one mole of acid with dissolved hydroxide gives 55.8 kJ: caustic soda gives that and its heat of solution', () => {
    // Heat of solution of solid NaOH 44.5 kJ/mol: CRC Handbook of Chemistry and Physics, from memory.
    within(heatPerAcid('caustic-soda').value.toNumber(), 55.81 + 44.5);
  });

  it('one mole of copper and of nickel with hydrated lime', () => {
    within(heatPerMetal('hydrated-lime', 'Cu')?.value.toNumber(), minteq['Cu(OH)2'] - minteq['Ca(OH)2']);
    within(heatPerMetal('hydrated-lime', 'Ni')?.value.toNumber(), minteq['Ni(OH)2'] - minteq['Ca(OH)2']);
  });
});

it('a litre with 1 mol of acid, 0.1 of copper and 0.05 of nickel warms by 17.8 K with hydrated lime', () => {
  // Worked by hand outside this project: 72.95 kJ ÷ (1.139 kg × 3.6 kJ/(kg·K)), for 1 kg of water and 0.65 mol of lime.
  const load = loadOf(
    liquorFrom({
      origin: 'test',
      volume: { value: '1.034', unit: 'L' },
      density: { value: '1.056', unit: 'kg/L' },
      findings: [
        { by: 'weighing', metal: 'Cu', mass: { value: '6.3546', unit: 'g' } },
        { by: 'weighing', metal: 'Ni', mass: { value: '2.93467', unit: 'g' } },
      ],
      freeAcid: [{ by: 'titration', result: { value: '0.967118', unit: 'mol/L' } }],
    }),
    'test',
  );
  const needed = baseNeeded('hydrated-lime', load, { purity: { value: '100', unit: '%' }, origin: 'pure' });
  const warm = needed && warming(load, needed);
  expectWithin(warm?.heat.value, 72.95, 0.002);
  expectWithin(warm?.rise.value, 17.8, 0.01);
});
