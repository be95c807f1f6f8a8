/**
 * Washing with perfect mixing against repeated extraction: one wash of volume v of what holds h is one extraction with a
 * volume ratio v ÷ h and a distribution ratio of 1; where the distribution ratio is D, v counts D times.
 */
import { describe, expect, it } from 'vitest';
import { shareAllowed, volumeOfEach, washesNeeded } from '../../src/chemistry/wash-limit';
import { leftAfter, mixedPerfectly, washable } from '../../src/chemistry/washing';
import { exact, type Figure, given } from '../../src/quantities/figure';
import type { Unit } from '../../src/quantities/unit';
import { expectWithin } from '../support/close';

const figure = <U extends Unit>(value: number | string, unit: U): Figure<U> =>
  given({ origin: `${value} ${unit}`, sentence: 'Given', value, unit, how: 'stated', spread: exact });

/** A residue that holds so many litres with 1 g of copper in all, mixed perfectly by every wash. */
function holding(litres: string) {
  const volume = figure(litres, 'L');
  const load = {
    volume,
    metals: new Map([['Cu' as const, { figure: figure('1', 'g'), openIn: [] }]]),
    freeAcid: { openIn: [] },
    density: figure('1.000', 'kg/L'),
  };
  const made = washable({ wetMass: figure('10000', 'g'), held: { volume, load } });
  if (!made) throw new Error('nothing to wash');
  return mixedPerfectly(made);
}

describe('fraction extracted with n successive portions, IUPAC Gold Book F02503 (Pure Appl. Chem. 65, 2373): 1 − (rD + 1)⁻ⁿ', () => {
  it.each([
    [1, 1, 0.5],
    [3, 2, 1 - 1 / 16],
    [4, 5, 1 - 1 / 3125],
  ] as const)('r = %d, n = %d', (r, n, extracted) => {
    const left = leftAfter(holding('0.100'), figure(`${r / 10}`, 'L'), n);
    expect(1 - left.value.toNumber()).toBeCloseTo(extracted, 12);
  });
});

describe('worked examples of repeated extraction on public pages, read November 2026 (expertsmind 912320, justaaa 321415, qammunity 8925032)', () => {
  it('50 mL with D = 10: 100 mL at once leaves 0.04762, five times 20 mL leave 0.00032', () => {
    expectWithin(leftAfter(holding('0.050'), figure('1.000', 'L'), 1).value, 0.04762, 0.0001);
    expectWithin(leftAfter(holding('0.050'), figure('0.200', 'L'), 5).value, 0.00032, 0.001);
  });

  it('100 mL with K = 3: 500 mL at once leave 6.2 %, five times 100 mL leave 0.098 %', () => {
    expectWithin(leftAfter(holding('0.100'), figure('1.500', 'L'), 1).value, 0.062, 0.01);
    expectWithin(leftAfter(holding('0.100'), figure('0.300', 'L'), 5).value, 0.00098, 0.005);
  });

  it('100 mL with K = 10: five times 20 mL take out the 99.5 % of a compound that four do not', () => {
    // The 10 kg of residue, 0.1 L of which is liquor, hold 1 g: 0.5 % of it is 5 mg on 9.9 kg dry.
    const held = holding('0.100');
    const limit = { metal: 'Cu' as const, at: figure(0.005 / 9.9 / 1e-3, 'mg/kg') };
    expect(washesNeeded(held, figure('0.200', 'L'), limit)).toEqual({ likely: 5, sure: 5 });
    const share = shareAllowed(held, limit);
    expectWithin(share?.value, 0.005, 1e-9);
    // Five equal portions that just do it: 0.1 L × (200^(1/5) − 1).
    expectWithin(share && volumeOfEach(held, share, 5)?.value, 0.1 * (200 ** 0.2 - 1), 1e-9);
  });
});
