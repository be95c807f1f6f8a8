/** Base needed against a trade association's fact sheet, against factors and against an equilibrium model. */
import Decimal from 'decimal.js';
import { describe, expect, it } from 'vitest';
import { baseNeeded } from '../../src/chemistry/base-needed';
import { molarMass } from '../../src/chemistry/formula';
import { liquorFrom } from '../../src/chemistry/liquor';
import { loadOf } from '../../src/chemistry/load';
import { type BaseId, bases, type Metal } from '../../src/reference/tables';
import { expectWithin, relativeError } from '../support/close';
import demand from './base-demand.json';

/** One litre with so many moles of acid and metals in it. */
const liquorOf = (moles: Readonly<Record<string, string>>) =>
  liquorFrom({
    origin: 'test',
    volume: { value: '1', unit: 'L' },
    findings: Object.entries(moles).flatMap(([metal, mol]) =>
      metal === 'HNO3'
        ? []
        : {
            by: 'weighing' as const,
            metal: metal as Metal,
            mass: { value: molarMass(metal).value.times(mol).toFixed(9), unit: 'g' as const },
          },
    ),
    freeAcid: [{ by: 'titration', result: { value: moles.HNO3 ?? '0', unit: 'mol/L' } }],
  });

const needed = (base: BaseId, moles: Readonly<Record<string, string>>) =>
  baseNeeded(base, loadOf(liquorOf(moles), 'test'));

/** Mass of pure base for a mole of acid, before purity and excess. */
const perMole = (base: BaseId) => molarMass(bases[base].formula).value.div(bases[base].hydroxidePerMol);

describe('alkali requirement, National Lime Association, Using Lime for Acid Neutralization', () => {
  // Pounds per short ton of acid, read in a public copy on 24 November 2026; acids of 98.08 and 36.46 g/mol.
  const sheet = [
    ['soda-ash', 'sulfuric', 2160],
    ['soda-ash', 'hydrochloric', 2900],
    ['caustic-soda', 'sulfuric', 1630],
    ['caustic-soda', 'hydrochloric', 2190],
  ] as const;
  const acidPerMole = { sulfuric: 98.08 / 2, hydrochloric: 36.46 };
  it.each(sheet)('%s for %s acid: %d lb', (base, acid, pounds) => {
    expectWithin(perMole(base).times(2000 / acidPerMole[acid]), pounds, 0.004);
  });

  it('quicklime: 1240 lb for sulfuric, 1670 for hydrochloric, at 92 % available CaO', () => {
    // The sheet's lime is as sold: both its figures imply the same 92 %, inside the commercial 90 to 96 %.
    expectWithin(perMole('quicklime').times(2000 / acidPerMole.sulfuric / 0.92), 1240, 0.005);
    expectWithin(perMole('quicklime').times(2000 / acidPerMole.hydrochloric / 0.92), 1670, 0.005);
  });
});

describe('kilograms of pure base for a kilogram of nitric acid', () => {
  // Worked out outside this project from atomic masses.
  const factors = [
    ['quicklime', 0.445],
    ['hydrated-lime', 0.5879],
    ['limestone', 0.7942],
    ['caustic-soda', 0.6348],
    ['soda-ash', 0.841],
  ] as const;
  it.each(factors)('%s: %d', (base, factor) => {
    expectWithin(perMole(base).div(molarMass('HNO3').value), factor, 0.0002);
  });
});

describe(demand.source, () => {
  const sumOf = ({ base, moles }: (typeof demand.rows)[number]) =>
    needed(base as BaseId, moles as Record<string, string>)?.hydroxide.value;
  it.each(demand.rows.filter(({ base }) => base !== 'soda-ash'))('$liquor, $base to pH $pH', (row) => {
    expectWithin(sumOf(row), Number(row.baseMol), row.pH === '5' ? 0.01 : 0.013);
  });

  // No outside check of the soda ash: its usual excess of 28 % was read from this very run. It holds the constant to the run.
  it.each(demand.rows.filter(({ base }) => base === 'soda-ash'))(
    '$liquor, $base to pH $pH: the run that the excess in reference/bases.json was taken from, and no check of it',
    (row) => {
      const excess = new Decimal(bases['soda-ash'].excess.value).div(100).plus(1);
      expect(sumOf(row)?.lt(row.baseMol)).toBe(true);
      expect(relativeError(sumOf(row)?.times(excess), Number(row.baseMol))).toBeLessThan(0.005);
    },
  );
});

it('the drawn example: 6.70 L with 0.58 mol/L of acid, 117.9 g of copper and 41.5 g of nickel takes 9.01 mol and 387 g', () => {
  // Worked by hand outside this project: (3.89 + 3.71 + 1.42) mol × 37.046 g/mol ÷ 0.95 × 1.10.
  const load = loadOf(
    liquorFrom({
      origin: 'test',
      volume: { value: '6.70', unit: 'L' },
      findings: [
        { by: 'photometer', metal: 'Cu', concentration: { value: '17.6', unit: 'g/L' } },
        { by: 'photometer', metal: 'Ni', concentration: { value: '6.2', unit: 'g/L' } },
      ],
      freeAcid: [{ by: 'titration', result: { value: '0.58', unit: 'mol/L' } }],
    }),
    'test',
  );
  const lime = baseNeeded('hydrated-lime', load, { purity: { value: '95', unit: '%' }, origin: 'bag' });
  expectWithin(lime?.hydroxide.value, 9.01, 0.001);
  // Half a gram of rounding in the 387.
  expectWithin(lime?.mass.value, 387, 0.0013);
  expect(lime?.mass.low.lt(new Decimal(360)) && lime.mass.high.gt(420)).toBe(true);
});
