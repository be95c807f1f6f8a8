import type Decimal from 'decimal.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { minus, over, plus, times } from '../../../src/quantities/expression';
import {
  between,
  exact,
  type Figure,
  given,
  partsOfRange,
  read,
  type Spread,
  within,
  workedOut,
} from '../../../src/quantities/figure';
import { formulaText } from '../../../src/quantities/formula-text';
import type { Unit } from '../../../src/quantities/unit';

const measured = <U extends Unit>(origin: string, value: Decimal.Value, unit: U, spread: Spread): Figure<U> =>
  given({ origin, sentence: origin, value, unit, how: 'weighing', spread, decimals: 2 });

const half = (f: Figure) => f.high.minus(f.low).div(2).toNumber();

describe('a worked-out figure', () => {
  const volume = measured('volume', '2', 'L', within('0.1'));
  const strength = measured('strength', '3', 'g/L', within('0.3'));

  it('has the value of its formula, in its own unit whatever the units of its inputs', () => {
    const inGrams = workedOut({ sentence: 'mass', unit: 'g', formula: times(strength, volume) });
    const inKilograms = workedOut({ sentence: 'mass', unit: 'kg', formula: times(strength, volume) });
    expect(inGrams.value.toString()).toBe('6');
    expect(inKilograms.value.toString()).toBe('0.006');
    expect(inKilograms.high.times(1000).toString()).toBe(inGrams.high.toString());
  });

  it('is refused when its formula does not come out in its unit', () => {
    expect(() => workedOut({ sentence: 'mass', unit: 'g', formula: over(strength, volume) })).toThrow();
    expect(() => workedOut({ sentence: 'sum', unit: 'g', formula: plus(strength, volume) })).toThrow();
  });

  it('combines independent uncertainties by the root of the sum of squares', () => {
    // JCGM 100:2008, 5.1.6: relative uncertainties of a product add in squares: 5 % and 10 %.
    const mass = workedOut({ sentence: 'mass', unit: 'g', formula: times(strength, volume) });
    expect(half(mass) / 6).toBeCloseTo(Math.hypot(0.05, 0.1), 10);
  });

  it('is exact when the same uncertain thing is taken from itself', () => {
    const none = workedOut({ sentence: 'none', unit: 'L', formula: minus(volume, volume) });
    expect(none.value.isZero()).toBe(true);
    expect(half(none)).toBe(0);
  });

  it('is twice as wide when the same thing is added to itself, not root two', () => {
    const twice = workedOut({ sentence: 'twice', unit: 'L', formula: plus(volume, volume) });
    expect(half(twice)).toBeCloseTo(0.2, 10);
  });

  it('keeps a shared reading shared through several steps', () => {
    const mass = workedOut({ sentence: 'mass', unit: 'g', formula: times(strength, volume) });
    const back = workedOut({ sentence: 'back', unit: 'g/L', formula: over(mass, volume) });
    expect(half(back)).toBeCloseTo(0.3, 10);
  });

  it('carries a lopsided range to the side where it belongs', () => {
    const purity = measured('purity', '2', '1', between('1.9', '2', '2.4'));
    const shared = workedOut({
      sentence: 'share',
      unit: 'L',
      formula: over(measured('v', '2', 'L', exact), purity),
    });
    expect(shared.value.minus(shared.low).toNumber()).toBeCloseTo(0.2, 10);
    expect(shared.high.minus(shared.value).toNumber()).toBeCloseTo(0.05, 10);
  });

  it('has no end below nothing', () => {
    const wide = workedOut({
      sentence: 'wide',
      unit: 'L',
      formula: minus(measured('a', '1', 'L', within(3)), measured('b', '0.5', 'L', exact)),
    });
    expect(wide.low.toString()).toBe('0');
    expect(wide.high.toString()).toBe('3.5');
  });

  it('is refused where one name stands for two things of different width', () => {
    const [one, other] = [
      measured('scale', '5', 'g', within('0.1')),
      measured('scale', '5', 'g', within('0.2')),
    ];
    expect(() => workedOut({ sentence: 'both', unit: 'g', formula: plus(one, other) })).toThrow(
      'two things have one name',
    );
  });

  it('the parts of its range add up in squares to the range', () => {
    fc.assert(
      fc.property(fc.tuple(fc.integer({ min: 1, max: 99 }), fc.integer({ min: 1, max: 99 })), ([a, b]) => {
        const sum = workedOut({
          sentence: 'sum',
          unit: 'g',
          formula: plus(measured('a', 1000, 'g', within(a)), times(2, measured('b', 1000, 'g', within(b)))),
        });
        const squares = partsOfRange(sum).reduce((s, p) => s + p.plus.toNumber() ** 2, 0);
        expect(Math.sqrt(squares)).toBeCloseTo(sum.high.minus(sum.value).toNumber(), 8);
      }),
    );
  });

  it('prints the formula it was computed from, with brackets only where they are needed', () => {
    const mass = workedOut({
      sentence: 'mass',
      unit: 'g',
      formula: times(2, strength, minus(volume, volume)),
    });
    expect(mass.formula && formulaText(mass.formula)).toBe('2 × 3.00\u202fg/L × (2.00\u202fL − 2.00\u202fL)');
    expect(formulaText(over(strength, times(2, volume)), ',')).toBe('3,00\u202fg/L ÷ (2 × 2,00\u202fL)');
  });
});

describe('a figure that a person wrote', () => {
  const volume = read({
    origin: 'v',
    sentence: 'v',
    written: { value: '2.50', unit: 'L' },
    unit: 'L',
    how: 'reading',
    spread: () => exact,
  });

  it('is at least as uncertain as its last digit', () => {
    expect(half(volume)).toBeCloseTo(0.005, 10);
  });

  it('keeps its digits, also in another unit', () => {
    const inLitres = read({
      origin: 'v',
      sentence: 'v',
      written: { value: '250', unit: 'mL' },
      unit: 'L',
      how: 'reading',
      spread: () => exact,
    });
    expect(volume.decimals).toBe(2);
    expect(inLitres.decimals).toBe(3);
  });
});
