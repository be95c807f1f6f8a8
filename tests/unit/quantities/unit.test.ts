import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { times } from '../../../src/quantities/expression';
import { exact, type Figure, given, workedOut } from '../../../src/quantities/figure';
import { converted } from '../../../src/quantities/quantity';
import { meaningOf, sameDimension, type Unit } from '../../../src/quantities/unit';

const figure = <U extends Unit>(value: number, unit: U): Figure<U> =>
  given({ origin: `${value} ${unit}`, sentence: 'Given', value, unit, how: 'stated', spread: exact });

describe('lengths, air and what is in it', () => {
  // NIST Special Publication 811 (2008), appendix B.8, from memory: exact, or rounded to seven figures.
  it.each([
    ['ft', 'm', 0.3048],
    ['in', 'cm', 2.54],
    ['ft³', 'm³', 0.02831685],
    ['ft/min', 'm/s', 0.00508],
    ['ft³/min', 'm³/s', 0.0004719474],
    ['US gal', 'm³', 0.003785412],
  ] as const)('one %s in %s', (from, to, published) => {
    expect(converted(1, from, to).toNumber() / published).toBeCloseTo(1, 6);
  });

  it('an opening times a speed is an airflow in litres as well as in cubic metres', () => {
    const flow = times(figure(0.9, 'm'), figure(0.45, 'm'), figure(0.5, 'm/s'));
    const as = <U extends Unit>(unit: U) => workedOut({ sentence: 'Airflow', unit, formula: flow });
    expect(as('m³/h').value.toNumber()).toBeCloseTo(729, 9);
    expect(as('L/min').value.toNumber()).toBeCloseTo(12150, 8);
  });

  it('there and back again is where it was', () => {
    const kinds = [
      ['m', 'cm', 'in', 'ft'],
      ['L', 'mL', 'US gal', 'm³', 'ft³'],
      ['m³/h', 'L/min', 'ft³/min'],
      ['m/s', 'ft/min'],
    ] as const;
    const pair = fc
      .constantFrom(...kinds)
      .chain((kind) => fc.tuple(fc.constantFrom<Unit>(...kind), fc.constantFrom<Unit>(...kind)));
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 1e6, noNaN: true }), pair, (value, [from, to]) => {
        expect(converted(converted(value, from, to), to, from).toNumber() / value).toBeCloseTo(1, 12);
      }),
    );
  });

  it('a length is no volume, and a million ppm are one', () => {
    expect(sameDimension(meaningOf('m').dimension, meaningOf('L').dimension)).toBe(false);
    expect(converted(1_000_000, 'ppm', '1').toNumber()).toBe(1);
  });
});
