import Decimal from 'decimal.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Metal } from '../../../src/reference/tables';
import { type GasMade, gasMade } from '../../../src/safety/ventilation/gas-made';
import { releaseOf } from '../../../src/safety/ventilation/release';
import type { GassingCharge } from '../../../src/safety/ventilation/station-schema';
import { expectWithin } from '../../support/close';
import { cementation, figure, type Grams, leach, leachOfUnknown } from './ventilation-told';

function made(charge: GassingCharge): GasMade {
  const gas = gasMade(charge);
  if (!gas.ok) throw new Error(gas.failure.code);
  return gas.value;
}
const code = (charge: GassingCharge) => {
  const gas = gasMade(charge);
  return gas.ok ? 'made' : gas.failure.code;
};

const acid = (litres: string, strength: string) => ({
  acid: {
    volume: { value: litres, unit: 'L' as const },
    strength: { value: strength, unit: 'mol/L' as const },
  },
});
const spare = acid('1000', '7.9');
const litresOf = (moles: Decimal) => moles.times('24.45').toNumber();

/** Grams to the milligram, so that a balance hides the same of each. */
const grams = fc.integer({ min: 1, max: 200_000 }).map((mg) => new Decimal(mg).div(1000).toFixed(3));
const gassing: readonly Metal[] = ['Cu', 'Ni', 'Ag', 'Pd', 'Zn', 'Fe', 'Sn', 'Pb', 'Al'];
const lot: fc.Arbitrary<Grams> = fc
  .uniqueArray(fc.constantFrom(...gassing), { minLength: 1, maxLength: 5 })
  .chain((metals) =>
    fc.tuple(...metals.map((metal) => grams.map((g) => [metal, g] as const))).map(Object.fromEntries),
  );
const litres = fc.integer({ min: 1, max: 5000 }).map((ml) => new Decimal(ml).div(1000).toFixed(3));

describe('gas of one gram with acid to spare', () => {
  // Electron count: n mol of nitrogen dioxide, n ÷ 3 of nitric oxide, at 24.45 L/mol.
  it.each([
    ['Cu', 0.76952, 0.25651],
    ['Ag', 0.22667, 0.07556],
    ['Pd', 0.4595, 0.15317],
    ['Ni', 0.83315, 0.27772],
  ] as const)('%s: %d L by the strong route, %d L by the dilute', (metal, strong, dilute) => {
    const gas = made(leach({ [metal]: '1.000' }, spare));
    expect(litresOf(gas.strong.value)).toBeCloseTo(strong, 4);
    expect(litresOf(gas.dilute.value)).toBeCloseTo(dilute, 4);
  });

  it('tin gives up to four', () => {
    const { strong } = made(leach({ Sn: '118.710' }, spare));
    expect(strong.value.toNumber()).toBeCloseTo(4, 4);
  });

  it('a third by the dilute route, whatever the metals', () => {
    fc.assert(
      fc.property(lot, (metals) => {
        const gas = made(leach(metals, spare));
        expectWithin(gas.strong.value, gas.dilute.value.times(3).toNumber(), 1e-9);
        expect(gas.limitedBy).toBe('metal');
      }),
    );
  });
});

describe('acid', () => {
  it('makes a mole of gas of two, or of four, where copper is more than it can take', () => {
    const { strong, dilute, limitedBy } = made(leach({ Cu: '1000' }, acid('1.000', '4.00')));
    expect(strong.value.toNumber()).toBeCloseTo(2, 12);
    expect(dilute.value.toNumber()).toBeCloseTo(1, 12);
    expect(limitedBy).toBe('acid');
  });

  it('makes a mole of gas of one, as far as there is tin', () => {
    const tin = '118.710';
    const short = made(leach({ Sn: tin, Cu: '1000' }, acid('1.000', '6.00')));
    // Four for the tin, and one of the other two acids.
    expect(short.strong.value.toNumber()).toBeCloseTo(5, 3);
    const shorter = made(leach({ Sn: tin, Cu: '1000' }, acid('1.000', '3.00')));
    expect(shorter.strong.value.toNumber()).toBeCloseTo(3, 9);
  });

  it('more of it never makes less gas, and makes no more once the metal is the end of it', () => {
    fc.assert(
      fc.property(lot, litres, litres, (metals, a, b) => {
        const [less, more] = [a, b].sort((x, y) => Number(x) - Number(y)) as [string, string];
        const [of, and] = [made(leach(metals, acid(less, '7.9'))), made(leach(metals, acid(more, '7.9')))];
        for (const route of ['dilute', 'strong'] as const)
          expect(and[route].high.toNumber()).toBeGreaterThanOrEqual(of[route].high.toNumber() * (1 - 1e-12));
        if (of.limitedBy === 'metal') expect(and.strong.value.eq(of.strong.value)).toBe(true);
      }),
    );
  });

  it('is never used twice, nor is metal', () => {
    fc.assert(
      fc.property(lot, litres, (metals, volume) => {
        const [gas, all] = [made(leach(metals, acid(volume, '7.9'))), made(leach(metals, spare))];
        expect(gas.strong.high.lte(all.strong.high)).toBe(true);
        const takes = metals.Sn === undefined ? 2 : 1;
        expect(gas.strong.high.toNumber()).toBeLessThanOrEqual(
          (gas.acid.high.toNumber() / takes) * (1 + 1e-12),
        );
      }),
    );
  });
});

describe('the two bounds', () => {
  it('are in order, and the range of the gas goes from one to the other', () => {
    fc.assert(
      fc.property(lot, litres, (metals, volume) => {
        const { dilute, strong, all } = made(leach(metals, acid(volume, '7.9')));
        expect(dilute.value.lte(strong.value)).toBe(true);
        expect(all.value.eq(strong.value)).toBe(true);
        expectWithin(all.high, strong.high.toNumber(), 1e-9);
        expect(all.low.lte(dilute.value.times(1 + 1e-9))).toBe(true);
      }),
    );
  });

  it('more metal never makes less gas', () => {
    fc.assert(
      fc.property(lot, fc.constantFrom(...gassing), grams, litres, (metals, added, more, volume) => {
        const mass = new Decimal(metals[added] ?? 0).plus(more).toFixed(3);
        const [of, and] = [metals, { ...metals, [added]: mass }].map((told) =>
          made(leach(told, acid(volume, '7.9'))),
        ) as [GasMade, GasMade];
        expect(and.strong.high.toNumber()).toBeGreaterThanOrEqual(of.strong.high.toNumber() * (1 - 1e-9));
      }),
    );
  });

  it('of metal that nobody knows hold those of every metal that it may be', () => {
    fc.assert(
      fc.property(
        grams,
        litres,
        fc.constantFrom<Metal>('Cu', 'Ni', 'Ag', 'Pd', 'Sn', 'Fe', 'Zn', 'Pb'),
        (mass, volume, metal) => {
          const [unknown, known] = [
            leachOfUnknown(mass, acid(volume, '7.9')),
            leach({ [metal]: mass }, acid(volume, '7.9')),
          ].map(made) as [GasMade, GasMade];
          expect(unknown.strong.high.gte(known.strong.high)).toBe(true);
          expect(unknown.dilute.high.toNumber()).toBeLessThanOrEqual(
            known.dilute.high.toNumber() * (1 + 1e-9),
          );
        },
      ),
    );
  });

  it('the usual route goes by the strength of the acid', () => {
    const usual = (strength: string) => made(leach({ Cu: '1' }, acid('1.000', strength))).usual;
    expect(['3.8', '3.9', '7.9', '8.0', '15'].map(usual)).toEqual([
      'dilute',
      'either',
      'either',
      'strong',
      'strong',
    ]);
  });
});

describe('cementation with free acid', () => {
  it('0.2 L at 2 mol/L: 2.445 L of nitric oxide, and 9.53 g of copper', () => {
    const { dilute, strong, copper } = made(cementation('0.200', '2.00'));
    expect(litresOf(dilute.value)).toBeCloseTo(2.445, 9);
    expect(litresOf(strong.value)).toBeCloseTo(4.89, 9);
    expect(copper?.value.toNumber()).toBeCloseTo(9.53, 2);
  });
});

describe('no gas can be worked out', () => {
  it.each([
    ['no-metal', leach({ Cu: '0' })],
    ['no-acid', leach({ Cu: '10' }, acid('0', '7.9'))],
    ['no-acid', cementation('1.00', '0')],
    ['no-gas-from-these', leach({ Ba: '10' })],
  ] as const)('%s', (why, charge) => expect(code(charge)).toBe(why));

  it('where the acid is outside the table of densities, with its ends', () => {
    const strength = { value: '96', unit: '%' as const };
    const gas = gasMade(leach({ Cu: '10' }, { acid: { volume: { value: '1', unit: 'L' }, strength } }));
    expect(gas).toMatchObject({ ok: false, failure: { code: 'acid-outside-table', low: '0', high: '70' } });
  });
});

describe('how it comes', () => {
  const released = (charge: GassingCharge, moles = '1') => {
    const release = releaseOf(figure(moles, 'mol'), charge);
    if (!release.ok) throw new Error(release.failure.code);
    return release.value;
  };
  const peak = (share: string, minutes: string) => ({
    peak: { share: { value: share, unit: '%' as const }, within: { value: minutes, unit: 'min' as const } },
  });

  it('half of it in the first quarter of an hour, the rest after that', () => {
    const { mean, peak: first, tail } = released(leach({ Cu: '1' }));
    expect(mean.value.toNumber()).toBeCloseTo(24.45 / 120, 12);
    expect(first.value.toNumber()).toBeCloseTo(24.45 / 30, 12);
    expect(tail?.value.toNumber()).toBeCloseTo(12.225 / 105, 12);
  });

  it('as a person measured it instead', () => {
    const { peak: first } = released(leach({ Cu: '1' }, peak('80', '10')));
    expect(first.value.toNumber()).toBeCloseTo((0.8 * 24.45) / 10, 12);
    expect(first.sources).toEqual([]);
  });

  it('evenly, where that is faster than the peak would be, or over before it', () => {
    const slower = released(leach({ Cu: '1' }, peak('10', '60')));
    expect(slower.peak).toBe(slower.mean);
    const over = released(leach({ Cu: '1' }, { release: { value: '15', unit: 'min' } }));
    expect(over.peak).toBe(over.mean);
    expect(over.tail).toBeUndefined();
  });

  it('first and then add up to all of it', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 20, max: 10_000 }),
        fc.integer({ min: 1, max: 15 }),
        fc.integer({ min: 1, max: 100 }),
        (minutes, within, share) => {
          const told = {
            release: { value: `${minutes}`, unit: 'min' as const },
            ...peak(`${share}`, `${within}`),
          };
          const { peak: first, tail, gas, mean } = released(leach({ Cu: '1' }, told));
          expect(first.value.gte(mean.value.times(1 - 1e-12))).toBe(true);
          if (tail)
            expectWithin(
              first.value.times(within).plus(tail.value.times(minutes - within)),
              gas.value.toNumber(),
              1e-9,
            );
        },
      ),
    );
  });

  it.each([
    ['no-release-time', { release: { value: '0', unit: 'h' as const } }],
    ['no-peak-time', peak('50', '0')],
    ['peak-share-outside', peak('0', '15')],
    ['peak-share-outside', peak('101', '15')],
  ] as const)('refuses: %s', (why, told) => {
    expect(releaseOf(figure(1, 'mol'), leach({ Cu: '1' }, told))).toEqual({
      ok: false,
      failure: { code: why },
    });
  });
});
