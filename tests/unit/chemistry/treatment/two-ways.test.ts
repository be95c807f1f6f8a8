import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { MetalEvidence } from '../../../../src/chemistry/evidence';
import { liquorFrom } from '../../../../src/chemistry/liquor';
import { type Load, loadOf } from '../../../../src/chemistry/load';
import { baseTo } from '../../../../src/chemistry/treatment/base-to';
import {
  asItIs,
  type TreatedFirst,
  type Treating,
  treatedFirst,
} from '../../../../src/chemistry/treatment/two-ways';
import { exact, type Figure, given } from '../../../../src/quantities/figure';
import { type BaseId, baseIds } from '../../../../src/reference/tables';

function loadWith(copper: string, nickel: string, acid: string, volume = '10.0'): Load {
  const found = (metal: 'Cu' | 'Ni', value: string): MetalEvidence => ({
    by: 'photometer',
    metal,
    concentration: { value, unit: 'g/L' },
  });
  return loadOf(
    liquorFrom({
      origin: 'test',
      volume: { value: volume, unit: 'L' },
      findings: [found('Cu', copper), found('Ni', nickel)],
      freeAcid: [{ by: 'titration', result: { value: acid, unit: 'mol/L' } }],
    }),
    'barren',
  );
}
const barren = loadWith('17.6', '6.2', '0.58');

/** A pH that each base reaches in any of these liquors. */
const within: Record<BaseId, number> = {
  'hydrated-lime': 9.5,
  quicklime: 9.5,
  'caustic-soda': 9.5,
  'magnesium-hydroxide': 8,
  limestone: 4.5,
  'soda-ash': 7,
  'sodium-bicarbonate': 6.5,
};
const reachedBy = (load: Load, base: BaseId) => {
  const to = baseTo(base, load, within[base]);
  if (!to.ok) throw new Error(`${base}: ${to.why.code}`);
  return to;
};
const made = (load: Load, base: BaseId = 'hydrated-lime', asked: Treating = {}): TreatedFirst =>
  treatedFirst(reachedBy(load, base), load, asked);
const stated = <U extends '%' | '1' | 'h'>(value: string, unit: U): Figure<U> =>
  given({ origin: `stated ${unit}`, sentence: 'Stated', value, unit, how: 'stated', spread: exact });
const number = (figure: Figure | undefined): number => figure?.value.toNumber() ?? Number.NaN;

describe('a liquor handed over as it is', () => {
  test('weighs its volume times its density', () => {
    const { volume, mass } = asItIs(barren);
    expect(volume.value.toFixed()).toBe('10');
    // 17.6 g/L copper and 6.2 g/L nickel as nitrates with 36.5 g/L nitric acid: about 1.08 kg/L.
    expect(number(mass)).toBeGreaterThan(10.6);
    expect(number(mass)).toBeLessThan(11);
  });
});

describe('a liquor treated first', () => {
  test('loses no mass and gains none: liquor, base and water are sludge, filtrate and gas', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 400 }),
        fc.integer({ min: 1, max: 100 }),
        fc.integer({ min: 0, max: 200 }),
        fc.constantFrom(...baseIds),
        (copper, nickel, acid, base) => {
          const load = loadWith(`${copper / 10}`, `${nickel / 10}`, `${acid / 100}`);
          const t = made(load, base);
          const went = number(asItIs(load).mass) + number(t.base) / 1000 + number(t.water);
          const came = (t.sludge ? number(t.sludge) : 0) + number(t.filtrate.mass);
          expect(came + (t.gas ? number(t.gas) : 0)).toBeCloseTo(went, 9);
          expect(number(t.inAll)).toBeCloseTo(came, 9);
          expect(number(t.inAll)).toBeCloseTo(number(t.slurry), 9);
          // Salt water: 1.0 to 1.4 kg/L.
          const density = number(t.filtrate.mass) / number(t.filtrate.volume);
          expect(density).toBeGreaterThan(0.95);
          expect(density).toBeLessThan(1.4);
        },
      ),
      { numRuns: 25 },
    );
  });

  test('gives off carbon dioxide with a carbonate alone: 44 g for two hydroxides of limestone', () => {
    expect(made(barren).gas).toBeUndefined();
    const hydroxide = number(reachedBy(barren, 'limestone').needed.hydroxide);
    expect(number(made(barren, 'limestone').gas)).toBeCloseTo((hydroxide / 2) * 0.044009, 4);
  });

  test('is split by the solids content: half the solids, twice the sludge, and that much less filtrate', () => {
    const [thick, thin] = ['20', '10'].map((percent) =>
      made(barren, 'hydrated-lime', { solids: stated(percent, '%') }),
    ) as [TreatedFirst, TreatedFirst];
    expect(number(thin.sludge)).toBeCloseTo(2 * number(thick.sludge), 9);
    expect(number(thick.filtrate.mass) - number(thin.filtrate.mass)).toBeCloseTo(number(thick.sludge), 9);
    expect(number(thin.inAll)).toBeCloseTo(number(thick.inAll), 9);
  });

  test('is as certain in all as what went in: the split widens sludge and filtrate, not their sum', () => {
    const t = made(barren);
    const width = (figure: Figure | undefined) =>
      figure ? figure.high.minus(figure.low).toNumber() : Number.NaN;
    expect(width(t.inAll)).toBeCloseTo(width(t.slurry), 6);
    expect(width(t.sludge) + width(t.filtrate.mass)).toBeGreaterThan(width(t.inAll));
  });

  test('makes more to hand over than went in, with a hydroxide', () => {
    expect(number(made(barren).inAll)).toBeGreaterThan(number(asItIs(barren).mass));
  });

  test('keeps somebody at the pot for a wait after each portion', () => {
    const t = made(barren, 'caustic-soda', { portions: stated('12', '1') });
    // 12 waits of 10 minutes.
    expect(number(t.atThePot)).toBeCloseTo(2, 9);
    expect(t.atThePot.low.toNumber()).toBeLessThan(1.2);
    expect(number(made(barren, 'caustic-soda', { hours: stated('6', 'h') }).atThePot)).toBe(6);
  });

  test('takes more portions the more it warms, and four at the least', () => {
    const strong = made(loadWith('40', '10', '2'));
    expect(number(strong.portions)).toBeGreaterThan(number(made(barren).portions) + 1);
    expect(number(made(barren, 'sodium-bicarbonate').portions)).toBeGreaterThanOrEqual(4);
  });

  test('leaves nickel in the filtrate with limestone, and takes copper and nickel down with lime', () => {
    expect(made(barren)).toMatchObject({ comesDown: ['Cu', 'Ni'], stays: [] });
    expect(made(barren, 'limestone').stays).toContain('Ni');
  });
});
