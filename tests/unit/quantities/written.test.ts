import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Digits, halfLastDigit, readNumber } from '../../../src/quantities/written';

const value = (typed: string) => {
  const read = readNumber(typed);
  return read.ok ? read.value : read.failure.code;
};

describe('a number as a person types it', () => {
  it.each([
    ['2.5', '2.5'],
    ['2,5', '2.5'],
    [' 2,50 ', '2.50'],
    ['.5', '0.5'],
    ['5.', '5'],
    ['007', '7'],
    ['0,0', '0.0'],
    ['1,250', '1.250'],
    ['999999999', '999999999'],
  ])('%j is read as %j', (typed, read) => expect(value(typed)).toBe(read));

  it.each([
    ['', 'empty'],
    ['   ', 'empty'],
    ['abc', 'not-a-number'],
    ['1.2.3', 'not-a-number'],
    ['1,2,3', 'not-a-number'],
    ['1e5', 'not-a-number'],
    ['Infinity', 'not-a-number'],
    ['.', 'not-a-number'],
    ['12 L', 'not-a-number'],
    ['٣', 'not-a-number'],
    ['-2', 'negative'],
    ['−2', 'negative'],
    ['1 250', 'thousands-marks'],
    ["1'250", 'thousands-marks'],
    ['1.250,5', 'thousands-marks'],
    ['1,250.5', 'thousands-marks'],
    ['1.250.000', 'thousands-marks'],
    ['1234567890', 'too-long'],
    ['0.1234567890', 'too-long'],
  ])('%j is refused: %s', (typed, code) => expect(value(typed)).toBe(code));

  it('whatever is typed is either refused or can stand in the record', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.stringMatching(/^[\d., ]{0,12}$/)), (typed) => {
        const read = readNumber(typed);
        expect(!read.ok || Digits.safeParse(read.value).success).toBe(true);
      }),
    );
  });

  it('a comma and a point are the same number, and no digit is lost', () => {
    fc.assert(
      fc.property(fc.stringMatching(/^[1-9]\d{0,7}[.]\d{1,8}$/), (typed) => {
        expect(value(typed)).toBe(typed);
        expect(value(typed.replace('.', ','))).toBe(typed);
      }),
    );
  });
});

it('a reading hides half of its last digit', () => {
  expect(halfLastDigit('2.50').toString()).toBe('0.005');
  expect(halfLastDigit('250').toString()).toBe('0.5');
});
