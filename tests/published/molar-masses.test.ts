/** Molar masses against the library mf-parser, which carries its own table of atomic weights (chemical-elements). */
import { MF } from 'mf-parser';
import { describe, expect, it } from 'vitest';
import { composition, molarMass } from '../../src/chemistry/formula';
import { atomicWeights, bases, metals } from '../../src/reference/tables';
import { expectWithin } from '../support/close';

const formulas = [
  'HNO3',
  'Ca(NO3)2',
  'Cu2(OH)3NO3',
  'CuSO4·5H2O',
  ...Object.values(bases).map((b) => b.formula),
  ...Object.values(metals).flatMap((m) => m.solid ?? []),
];

describe('molar masses agree with a library that has its own atomic weights', () => {
  it.each(Object.keys(atomicWeights))('%s', (element) => {
    // Two parts in ten thousand: sulfur varies in nature, and editions of the table round it differently.
    expectWithin(molarMass(element).value, new MF(element).getInfo().mass, 0.0002);
  });

  it.each(formulas)('%s', (formula) => {
    // The library writes water of crystallisation in brackets.
    const theirs = formula.replace(/·(\d+)H2O/, '(H2O)$1');
    expectWithin(molarMass(formula).value, new MF(theirs).getInfo().mass, 0.0005);
  });

  it('atoms are counted as the library counts them', () => {
    const found = composition('Cu2(OH)3NO3');
    expect(found.ok && Object.fromEntries(found.value)).toEqual(new MF('Cu2(OH)3NO3').getInfo().atoms);
  });
});
