/**
 * Propagation with correlated inputs against JCGM 100:2008 (GUM), annex H.2: resistance, reactance and impedance from five
 * simultaneous sets of voltage, current and phase. Observations (table H.2), results and standard uncertainties (tables H.3
 * and H.4) as restated in public programs that reproduce the example (read on 25 November 2026); the correlations of the
 * results from memory of table H.3.
 *
 * Each set of readings is one origin here: what happened in it moved voltage, current and phase together, so the means
 * share five origins. This is how two loads share one volume in this book.
 */

import Decimal from 'decimal.js';
import { describe, expect, it } from 'vitest';
import { expression, type Operand, over, plus, times } from '../../src/quantities/expression';
import { type Figure, given, within, workedOut } from '../../src/quantities/figure';
import { quantity } from '../../src/quantities/quantity';

const volts = [5.007, 4.994, 5.005, 4.99, 4.999];
const milliamperes = [19.663, 19.639, 19.64, 19.685, 19.678];
const radians = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433];

const meanOf = (all: readonly number[]): number => all.reduce((a, b) => a + b, 0) / all.length;

/** The mean as a figure: its distance in each set over √(n(n − 1)) times an origin of that set with u = 1. */
function mean(name: string, all: readonly number[]): Figure<'1'> {
  const scale = Math.sqrt(all.length * (all.length - 1));
  const moved = all.map((one, set): Operand => {
    const origin = given({
      origin: `set ${set}`,
      sentence: `Set ${set}`,
      value: 0,
      unit: '1',
      how: 'reading',
      spread: within(2),
    });
    return times((one - meanOf(all)) / scale, origin);
  });
  return workedOut({ sentence: name, unit: '1', formula: plus(meanOf(all), ...moved) });
}

const [voltage, current, phase] = [
  mean('voltage, V', volts),
  mean('current, mA', milliamperes),
  mean('phase, rad', radians),
];

/** cos or sin as a value with its slope, the way a value comes out of a table or a solver. */
const turned = (what: 'cos' | 'sin'): Operand => {
  const at = phase.value.toNumber();
  const slope = what === 'cos' ? -Math.sin(at) : Math.cos(at);
  return {
    op: 'reading',
    table: what,
    at: [{ of: expression(phase), slope: new Decimal(slope) }],
    value: new Decimal(Math[what](at)),
    unit: '1',
  };
};

const inOhm = (sentence: string, ...factors: Operand[]): Figure<'1'> =>
  workedOut({ sentence, unit: '1', formula: times(1000, over(times(voltage, ...factors), current)) });
const resistance = inOhm('R', turned('cos'));
const reactance = inOhm('X', turned('sin'));
const impedance = inOhm('Z');

const u = (figure: Figure): number => figure.high.minus(figure.value).div(2).toNumber();

/** r(a, b) from the uncertainty of the sum: u²(a + b) = u²(a) + u²(b) + 2 r u(a) u(b). */
function correlation(a: Figure<'1'>, b: Figure<'1'>): number {
  const sum = workedOut({ sentence: 'sum', unit: '1', formula: plus(a, b) });
  return (u(sum) ** 2 - u(a) ** 2 - u(b) ** 2) / (2 * u(a) * u(b));
}

describe('JCGM 100:2008, H.2', () => {
  it.each([
    ['voltage', voltage, 4.999, 0.0032],
    ['current', current, 19.661, 0.0095],
    ['phase', phase, 1.04446, 0.00075],
  ] as const)('the mean %s and its standard uncertainty', (_, figure, value, uncertainty) => {
    expect(figure.value.toNumber()).toBeCloseTo(value, 8);
    expect(u(figure).toPrecision(2)).toBe(uncertainty.toPrecision(2));
  });

  it.each([
    ['voltage and current', voltage, current, '-0.36'],
    ['voltage and phase', voltage, phase, '0.86'],
    ['current and phase', current, phase, '-0.65'],
  ] as const)('%s are correlated', (_, a, b, r) => {
    expect(correlation(a, b).toFixed(2)).toBe(r);
  });

  it.each([
    ['resistance', resistance, '127.732', 0.071],
    ['reactance', reactance, '219.847', 0.295],
    ['impedance', impedance, '254.260', 0.236],
  ] as const)('%s, Ω, with its combined standard uncertainty', (_, figure, value, uncertainty) => {
    expect(figure.value.toFixed(3)).toBe(value);
    // One last digit: the example carries rounded correlations.
    expect(Math.abs(u(figure) - uncertainty)).toBeLessThan(0.001);
  });

  it.each([
    ['resistance and reactance', resistance, reactance, -0.588],
    ['resistance and impedance', resistance, impedance, -0.485],
    ['reactance and impedance', reactance, impedance, 0.993],
  ] as const)('%s are correlated in their turn', (_, a, b, r) => {
    expect(Math.abs(correlation(a, b) - r)).toBeLessThan(0.001);
  });

  it('inputs taken for independent would give another uncertainty: the shared origins matter', () => {
    const apart = given({
      origin: 'current alone',
      sentence: 'current, mA',
      value: quantity(current.value, '1'),
      unit: '1',
      how: 'reading',
      spread: within(2 * u(current)),
    });
    const wrong = workedOut({ sentence: 'Z', unit: '1', formula: times(1000, over(voltage, apart)) });
    expect(u(wrong)).toBeLessThan(0.21);
  });
});
