import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { closed, inTestWaste } from '../../../src/chemistry/closure';
import { given, within } from '../../../src/quantities/figure';

const grams = (origin: string, value: number, half: number) =>
  given({ origin, sentence: origin, value, unit: 'g', how: 'weighing', spread: within(half) });
const line = (origin: string, value: number, half: number) => ({ figure: grams(origin, value, half) });

describe('an account', () => {
  // ± 3 and ± 4 together ± 5.
  it.each([
    [100, 95.1, 'closes'],
    [100, 94.9, 'more-in'],
    [100, 104.9, 'closes'],
    [100, 105.1, 'more-out'],
  ] as const)('of %d in and %d out %s', (into, out, verdict) => {
    const account = closed('Copper', [line('in', into, 3)], [line('out', out, 4)], true);
    expect(account.verdict).toBe(verdict);
    expect(account.unaccounted?.value.toNumber()).toBeCloseTo(into - out, 9);
    expect(account.unaccounted?.low.toNumber()).toBeCloseTo(into - out - 5, 9);
    expect(account.unaccounted?.high.toNumber()).toBeCloseTo(into - out + 5, 9);
  });

  it('of which a part is missing has no difference: what is not known is not nothing', () => {
    const account = closed('Copper', [line('in', 100, 3)], [line('out', 40, 4)], false);
    expect(account.verdict).toBe('cannot-be-told');
    expect(account.unaccounted).toBeUndefined();
    expect(account.out.sum?.value.toNumber()).toBe(40);
  });

  it('of an empty side cannot be told', () => {
    const account = closed('Copper', [], [line('out', 40, 4)], true);
    expect(account.verdict).toBe('cannot-be-told');
    expect(account.in.sum).toBeUndefined();
  });

  it('does not doubt what stands on both sides', () => {
    const both = line('one weighing', 50, 30);
    const account = closed('Copper', [both, line('in', 10, 0.1)], [both, line('out', 9, 0.1)], true);
    expect(account.verdict).toBe('more-in');
  });

  it('closes or not alike from either side', () => {
    const part = fc.tuple(fc.integer({ min: 0, max: 200 }), fc.integer({ min: 1, max: 50 }));
    fc.assert(
      fc.property(part, part, ([a, ua], [b, ub]) => {
        const [ins, outs] = [[line('a', a, ua)], [line('b', b, ub)]];
        const opposite = { closes: 'closes', 'more-in': 'more-out', 'more-out': 'more-in' } as const;
        const { verdict } = closed('Copper', ins, outs, true);
        expect(closed('Copper', outs, ins, true).verdict).toBe(opposite[verdict as 'closes']);
      }),
    );
  });
});

it('a test waste of 80 mL holds between nothing and 80 mL of the strongest liquor', () => {
  const volume = given({
    origin: 'v',
    sentence: 'v',
    value: '0.080',
    unit: 'L',
    how: 'reading',
    spread: within(0),
  });
  const strongest = given({
    origin: 'c',
    sentence: 'c',
    value: 9,
    unit: 'g/L',
    how: 'assay',
    spread: within(1),
  });
  const held = inTestWaste('g', volume, strongest, 'test');
  expect(held.low.toNumber()).toBeCloseTo(0, 12);
  expect(held.high.toNumber()).toBeCloseTo(0.8, 12);
});
