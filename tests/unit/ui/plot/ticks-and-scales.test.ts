import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { beyond, scaleOf } from '../../../../src/ui/plot/scale';
import { decadeTicks, niceTicks } from '../../../../src/ui/plot/ticks';
import { tickTexts, valueText } from '../../../../src/ui/plot/value-text';

const range = fc
  .tuple(fc.double({ min: -1e6, max: 1e6, noNaN: true }), fc.double({ min: 1e-6, max: 1e6, noNaN: true }))
  .map(([from, span]) => [from, from + span] as const)
  .filter(([from, to]) => to - from > Math.abs(from) * 1e-6);
const positiveRange = fc
  .tuple(fc.double({ min: -9, max: 6, noNaN: true }), fc.double({ min: 0.2, max: 12, noNaN: true }))
  .map(([power, decades]) => [10 ** power, 10 ** (power + decades)] as const);
const most = fc.integer({ min: 2, max: 9 });

describe('ticks', () => {
  it('are few, rise by one step of 1, 2 or 5 times a power of ten, and lie inside', () => {
    fc.assert(
      fc.property(range, most, ([from, to], count) => {
        const ticks = niceTicks(from, to, count);
        expect(ticks.length).toBeLessThanOrEqual(count);
        const slack = (to - from) * 1e-6;
        for (const tick of ticks) expect(tick >= from - slack && tick <= to + slack).toBe(true);
        const [first, second] = ticks;
        if (first === undefined || second === undefined) return;
        const step = Number((second - first).toPrecision(6));
        expect(step.toExponential()).toMatch(/^[125]e/);
        for (const tick of ticks) expect(Math.abs(tick / step - Math.round(tick / step))).toBeLessThan(1e-3);
      }),
    );
  });

  it('are powers of ten on a logarithmic axis, or 1, 2 and 5 times them where it is short', () => {
    fc.assert(
      fc.property(positiveRange, most, ([from, to], count) => {
        const ticks = decadeTicks(from, to, count);
        expect(ticks.length).toBeLessThanOrEqual(count);
        for (const tick of ticks) {
          expect(tick.toExponential()).toMatch(to / from >= 100 ? /^1e/ : /^[125]e/);
          expect(tick).toBeGreaterThanOrEqual(from * (1 - 1e-6));
          expect(tick).toBeLessThanOrEqual(to * (1 + 1e-6));
        }
        if (to / from >= 100) expect(ticks.length).toBeGreaterThan(0);
      }),
    );
  });

  it.each([
    [0, 400, 5, [0, 100, 200, 300, 400]],
    [0, 12, 7, [0, 2, 4, 6, 8, 10, 12]],
    [0.05, 0.31, 4, [0.1, 0.2, 0.3]],
    [-3, 3, 4, [-2, 0, 2]],
  ])('from %d to %d, at most %d, are %j', (from, to, count, ticks) => {
    expect(niceTicks(from, to, count)).toEqual(ticks);
  });
});

describe('texts of ticks', () => {
  it('have the decimals of the finest and the decimal sign of the reader', () => {
    expect(tickTexts({ label: 'x' }, [0, 0.5, 1], ',')).toEqual(['0,0', '0,5', '1,0']);
    expect(tickTexts({ label: 'x' }, [-20, 0, 20000])).toEqual(['−20', '0', '20\u202f000']);
  });

  it('are powers of ten where one of them is far from one, or room is short', () => {
    const axis = { label: 'x', scale: 'log' } as const;
    expect(tickTexts(axis, [0.01, 1, 100])).toEqual(['0.01', '1', '100']);
    expect(tickTexts(axis, [1e-5, 1e-3])).toEqual(['10⁻⁵', '10⁻³']);
    expect(tickTexts(axis, [0.01, 100], '.', true)).toEqual(['10⁻²', '10²']);
    expect(tickTexts(axis, [1, 2, 5], '.', true)).toEqual(['1', '2', '5']);
  });

  it('are those of the caller where it writes them', () => {
    const axis = { label: 'x', format: (value: number) => `day ${value}` };
    expect(tickTexts(axis, [1, 2])).toEqual(['day 1', 'day 2']);
    expect(valueText(axis, 3)).toBe('day 3');
  });

  it('show three digits of a value, and a far one as a product', () => {
    expect(valueText({ label: 'x' }, 0.123456, ',')).toBe('0,123');
    expect(valueText({ label: 'x' }, 4.2e-9)).toBe('4.2\u202f×\u202f10⁻⁹');
    expect(valueText({ label: 'x' }, 0)).toBe('0');
  });
});

describe('a scale', () => {
  const values = fc.array(fc.double({ min: 1e-9, max: 1e9, noNaN: true }), { minLength: 1, maxLength: 20 });

  it('holds all its data between its ends, and gives each value back from its place', () => {
    fc.assert(
      fc.property(values, fc.constantFrom('linear' as const, 'log' as const), (data, kind) => {
        const scale = scaleOf({ label: 'x', scale: kind }, data);
        expect(scale.to).toBeGreaterThan(scale.from);
        for (const value of data) {
          const share = scale.share(value);
          expect(share).toBeGreaterThanOrEqual(-1e-9);
          expect(share).toBeLessThanOrEqual(1 + 1e-9);
          const size = kind === 'log' ? value : scale.to - scale.from;
          expect(Math.abs(scale.valueAt(share) - value) / size).toBeLessThan(1e-6);
        }
      }),
    );
  });

  it('has a length without data, and with only one value', () => {
    for (const kind of ['linear', 'log'] as const)
      for (const data of [[], [0], [1], [7], [Number.NaN]]) {
        const { from, to } = scaleOf({ label: 'x', scale: kind }, data);
        expect(to, `${kind} ${data}`).toBeGreaterThan(from);
        expect(Number.isFinite(to - from)).toBe(true);
      }
  });

  it('in decades has nothing below its floor', () => {
    const scale = scaleOf({ label: 'x', scale: 'log', from: 0.01, to: 100 }, []);
    expect([0, -3, 1e-12, 0.01].map(scale.share)).toEqual([0, 0, 0, 0]);
    expect(scale.share(1)).toBeCloseTo(0.5, 12);
    expect([0, 0.01, 0.011, 100, 101].map((value) => beyond(scale, value))).toEqual([
      'low',
      'low',
      undefined,
      undefined,
      'high',
    ]);
  });
});
