import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Expression, minus, notBelowNothing, plus, times } from '../../../src/quantities/expression';
import { type Figure, given, within, workedOut } from '../../../src/quantities/figure';

const acid = (origin: string, value: number, half: number): Figure<'mol'> =>
  given({ origin, sentence: origin, value, unit: 'mol', how: 'titration', spread: within(half) });
const moles = (formula: Expression, signed?: true): Figure<'mol'> =>
  workedOut({ sentence: 'result', unit: 'mol', formula, ...(signed ? { signed } : {}) });

/** Charged less taken, which comes out below nothing; as much of its range as lies above is left. */
const left = (name: string, charged: number, below: number): Figure<'mol'> =>
  moles(
    notBelowNothing(
      minus(
        acid(`${name}/charged`, charged, charged / 5),
        acid(`${name}/taken`, charged + below, charged / 5),
      ),
    ),
  );

describe('two things that look used up', () => {
  const [big, small] = [left('big', 10, 0.5), left('small', 1, 0.1)];

  it('have a range together that is the squares of both', () => {
    const high = Math.hypot(big.high.toNumber(), small.high.toNumber());
    expect(big.high.toNumber()).toBeGreaterThan(2);
    expect(moles(plus(big, small)).high.toNumber()).toBeCloseTo(high, 12);
    expect(moles(plus(small, big)).high.toNumber()).toBeCloseTo(high, 12);
  });

  it('do not cancel when the one is taken from the other', () => {
    const between = moles(minus(big, small), true);
    expect(between.low.toNumber()).toBeCloseTo(-small.high.toNumber(), 12);
    expect(between.high.toNumber()).toBeCloseTo(big.high.toNumber(), 12);
  });

  it('come to the same whichever is put in first', () => {
    const any = fc.record({
      charged: fc.integer({ min: 1, max: 900 }),
      below: fc.integer({ min: 0, max: 90 }),
    });
    fc.assert(
      fc.property(any, any, (a, b) => {
        const [one, other] = [
          left('a', a.charged / 10, a.below / 100),
          left('b', b.charged / 10, b.below / 100),
        ];
        const [ab, ba] = [moles(plus(one, other)), moles(plus(other, one))];
        expect(ab.value.eq(ba.value)).toBe(true);
        expect(ab.low.toNumber()).toBeCloseTo(ba.low.toNumber(), 12);
        expect(ab.high.toNumber()).toBeCloseTo(ba.high.toNumber(), 12);
      }),
    );
  });

  it('are not one because they were worked out from the same two readings', () => {
    const [a, b] = [acid('a', 1, 0.3), acid('b', 1.1, 0.3)];
    const [one, other] = [moles(notBelowNothing(minus(a, b))), moles(notBelowNothing(minus(a, times(2, b))))];
    const [both, swapped] = [moles(plus(one, other)), moles(plus(other, one))];
    expect(both.high.toNumber()).toBeCloseTo(swapped.high.toNumber(), 12);
  });
});

it('one thing that looks used up cancels when it is taken from itself, wherever it was worked out', () => {
  const [here, there] = [left('big', 10, 0.5), left('big', 10, 0.5)];
  const nothing = moles(minus(here, there));
  expect([nothing.low, nothing.value, nothing.high].map(Number)).toEqual([0, 0, 0]);
});
