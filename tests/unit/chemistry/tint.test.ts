import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { tint } from '../../../src/chemistry/tint';
import absorption from '../../../src/reference/absorption.json';

const channels = (hex: string): readonly number[] =>
  [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16));

const brightness = (hex: string): number => {
  const [r = 0, g = 0, b = 0] = channels(hex).map((value) => (value / 255) ** 2.2);
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};

const gPerL = fc.double({ min: 0, max: 120, noNaN: true });

describe('the colour of a liquor', () => {
  // Not published values: these are the colours of our own drawings, made with the same bands by another program.
  it.each([
    [0, 0, '#ECECEC'],
    [0.05, 0, '#E9ECEC'],
    [0.6, 0.9, '#A0EBD9'],
    [10, 0, '#38BBDF'],
    [30, 0, '#3891CB'],
    [0, 10, '#38D8A8'],
    [5, 21, '#38B997'],
    [17.6, 6.2, '#38A5A4'],
  ])('copper %s g/L and nickel %s g/L is %s as drawn, each channel within 1', (copper, nickel, drawn) => {
    const computed = channels(tint(copper, nickel));
    channels(drawn).forEach((value, at) => {
      expect(Math.abs((computed[at] ?? Number.NaN) - value)).toBeLessThanOrEqual(1);
    });
  });

  it('is always a colour of six digits', () => {
    fc.assert(fc.property(gPerL, gPerL, (copper, nickel) => /^#[0-9A-F]{6}$/.test(tint(copper, nickel))));
  });

  it('never has more red with more copper', () => {
    fc.assert(
      fc.property(gPerL, gPerL, gPerL, (copper, more, nickel) => {
        const [less = 0] = channels(tint(copper, nickel));
        const [after = 0] = channels(tint(copper + more, nickel));
        expect(after).toBeLessThanOrEqual(less);
      }),
    );
  });

  it('is lightest for clear water', () => {
    const clear = brightness(tint(0, 0));
    fc.assert(fc.property(gPerL, gPerL, (copper, nickel) => brightness(tint(copper, nickel)) <= clear));
  });

  it('is blue for copper alone and green for nickel alone', () => {
    const [, copperGreen = 0, copperBlue = 0] = channels(tint(10, 0));
    const [, nickelGreen = 0, nickelBlue = 0] = channels(tint(0, 10));
    expect(copperBlue).toBeGreaterThan(copperGreen);
    expect(nickelGreen).toBeGreaterThan(nickelBlue);
  });

  it('takes a negative estimate as none', () => expect(tint(-1, -0.5)).toBe(tint(0, 0)));
});

describe('the data of the colour', () => {
  it('says of every band where it comes from and how weak it is', () => {
    for (const band of Object.values(absorption.ions).flat()) {
      expect(band.source).not.toBe('');
      expect(band.status).toContain('weak');
    }
  });

  it('has daylight from 380 to 780 nm, 100 at 560 nm', () => {
    const { firstNm, stepNm, values } = absorption.daylight;
    expect(firstNm + stepNm * (values.length - 1)).toBe(780);
    expect(values[(560 - firstNm) / stepNm]).toBe(100);
  });
});
