import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { vesselGeometry } from '../../../src/ui/vessel-geometry';
import { type VesselFamily, vesselKind, vesselKinds } from '../../../src/ui/vessel-kinds';

const kind = fc.constantFrom(...vesselKinds);
const share = fc.double({ min: 0, max: 1.5, noNaN: true });
const scale = fc.constantFrom(0.25, 0.74);

/** All numbers of a path text as points. Only M, L and C are written, all absolute. */
const points = (path: string): readonly (readonly [number, number])[] => {
  const numbers = (path.match(/-?\d+(\.\d+)?/g) ?? []).map(Number);
  return numbers.flatMap((x, at) => (at % 2 === 0 ? [[x, numbers[at + 1] ?? Number.NaN] as const] : []));
};

describe('a drawn vessel', () => {
  it('has its level inside its outline, however full it was logged', () => {
    fc.assert(
      fc.property(kind, share, scale, (vessel, fillShare, px) => {
        const drawn = vesselGeometry({ kind: vessel, fillShare, scale: px });
        const outline = points(drawn.outline);
        const top = Math.min(...outline.map(([, y]) => y));
        expect(drawn.levelPx).toBeGreaterThanOrEqual(top);
        for (const [x, y] of points(drawn.liquid)) {
          expect(x).toBeGreaterThanOrEqual(0);
          expect(x).toBeLessThanOrEqual(drawn.widthPx);
          expect(y).toBeGreaterThanOrEqual(drawn.levelPx - 0.02);
          expect(y).toBeLessThanOrEqual(drawn.heightPx);
        }
      }),
    );
  });

  it('never stands lower with more in it', () => {
    fc.assert(
      fc.property(kind, share, share, scale, (vessel, less, more, px) => {
        const low = vesselGeometry({ kind: vessel, fillShare: less, scale: px });
        const high = vesselGeometry({ kind: vessel, fillShare: less + more, scale: px });
        expect(high.levelPx).toBeLessThanOrEqual(low.levelPx + 1e-9);
      }),
    );
  });

  it.each([0.25, 0.5, 0.9, 1])(
    'filled to %s of capacity stands at that share of the shoulder',
    (fillShare) => {
      for (const vessel of vesselKinds) {
        const drawn = vesselGeometry({ kind: vessel, fillShare, scale: 0.74 });
        expect(drawn.heightPx - drawn.levelPx).toBeCloseTo(0.74 * vessel.shoulderMm * fillShare, 6);
      }
    },
  );

  it('has neither liquid nor level line when empty', () => {
    const drawn = vesselGeometry({ kind: vesselKind('jerrican', 10), fillShare: 0, scale: 0.25 });
    expect([drawn.liquid, drawn.solids]).toEqual(['', '']);
  });

  it('has its limit at nine tenths unless the local rules say otherwise', () => {
    const vessel = vesselKind('jerrican', 20);
    const usual = vesselGeometry({ kind: vessel, fillShare: 0.9, scale: 0.25 });
    expect(usual.limitPx).toBeCloseTo(usual.levelPx, 6);
    const strict = vesselGeometry({ kind: vessel, fillShare: 0.8, limitShare: 0.8, scale: 0.25 });
    expect(strict.limitPx).toBeCloseTo(strict.levelPx, 6);
  });

  it('carries a tick a litre, every fifth one long', () => {
    const { ticks } = vesselGeometry({
      kind: vesselKind('jerrican', 10),
      fillShare: 0.5,
      scale: 0.74,
      tickEveryL: 1,
    });
    expect(ticks.map(({ litres }) => litres)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9]);
    expect(ticks.filter(({ long }) => long).map(({ litres }) => litres)).toEqual([5]);
  });
});

describe('a kind of vessel', () => {
  it.each([
    ['jerrican', 20, 290],
    ['bottle', 1, 98],
    ['tub', 12, 285],
  ] as const)('%s of %s L is the measured one, %s mm wide', (family, capacity, width) => {
    expect(vesselKind(family, capacity).widthMm).toBe(width);
  });

  it('is scaled from its nearest relative by the cube root of the capacities', () => {
    expect(vesselKind('jerrican', 25).heightMm).toBeCloseTo(390 * Math.cbrt(25 / 20), 6);
  });

  it('grows with its capacity near each measured one', () => {
    const family = fc.constantFrom<VesselFamily>('jerrican', 'bottle', 'tub');
    fc.assert(
      fc.property(family, fc.double({ min: 0.1, max: 200, noNaN: true }), (of, litres) => {
        const { widthMm, heightMm, shoulderMm } = vesselKind(of, litres);
        expect(widthMm).toBeGreaterThan(0);
        expect(shoulderMm).toBeLessThan(heightMm);
      }),
    );
  });
});
