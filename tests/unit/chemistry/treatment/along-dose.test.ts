import { describe, expect, it } from 'vitest';
import { dissolved } from '../../../../src/chemistry/equilibrium/told';
import { alongDose, atPhAlong } from '../../../../src/chemistry/treatment/along-dose';
import { doseTo } from '../../../../src/chemistry/treatment/dose-to';
import {
  chargeOfPot,
  likely,
  titrationOf,
  treatedPot,
} from '../../../../src/chemistry/treatment/treated-pot';
import type { BaseId } from '../../../../src/reference/tables';
import { loadWith } from './treated-load';

const liquor = loadWith(2, 0.5, { Cu: 6, Ni: 3, Zn: 0.5 });

const walked = (base: BaseId, from: number, to: number) => {
  const pot = treatedPot(liquor, base);
  if (!pot) throw new Error('no pot');
  const amounts = likely(pot);
  const along = alongDose(titrationOf(pot, amounts), chargeOfPot(amounts), { from, to });
  if (!along.ok) throw new Error(along.failure.code);
  return { pot, amounts, points: along.points };
};

describe('a pot along its dose', () => {
  it('has no two neighbours within the span further apart than a twentieth of a pH', () => {
    const { points } = walked('hydrated-lime', 6, 11);
    const within = points.filter(({ at }) => at.pH > 6 && at.pH < 11);
    expect(within.length).toBeGreaterThan(80);
    for (const [i, point] of within.slice(1).entries())
      expect(point.at.pH - (within[i]?.at.pH ?? 0)).toBeLessThanOrEqual(0.05);
    expect(points.at(-1)?.at.pH).toBeGreaterThan(11);
  });

  it.each([
    ['hydrated-lime', 8.37],
    ['caustic-soda', 10.93],
    ['soda-ash', 7.21],
    ['soda-ash', 8.44],
    ['limestone', 5.13],
  ] as const)('with %s tells at pH %d what the dose to that pH tells', (base, pH) => {
    const { pot, amounts, points } = walked(base, 4, 12);
    const exact = doseTo(pot, amounts, pH);
    if (exact.found !== 'dose') throw new Error(exact.found);
    for (const metal of ['Cu+2', 'Ni+2', 'Zn+2'] as const) {
      const along = atPhAlong(points, pH, (at) => dissolved(at, metal)) ?? 0;
      expect(along / dissolved(exact.at, metal)).toBeCloseTo(1, 2);
    }
    expect((atPhAlong(points, pH, (at) => at.ionicStrength) ?? 0) / exact.at.ionicStrength).toBeCloseTo(1, 3);
  });

  it('tells nothing beyond where the base ends', () => {
    const { pot, amounts, points } = walked('limestone', 4, 12);
    const stall = doseTo(pot, amounts, 12);
    // Carbon dioxide leaves at each point looked at, and the two look at different ones.
    expect(stall.found === 'stall' && (points.at(-1)?.at.pH ?? 0) - stall.pH).toBeCloseTo(0, 3);
    expect(atPhAlong(points, 6, (at) => at.pH)).toBeUndefined();
  });
});
