import Decimal from 'decimal.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Figure } from '../../../src/quantities/figure';
import { limitIds } from '../../../src/reference/exposure-limits-tables';
import { type VentilationResult, ventilationCheck } from '../../../src/safety/ventilation/check';
import { ceiling, mostInDuct } from '../../../src/safety/ventilation/lots';
import type { WrittenCharge, WrittenStation } from '../../../src/safety/ventilation/station-schema';
import { asked, cementation, type Grams, hood, leach, leachOfUnknown, room } from './ventilation-told';

const check = (station: WrittenStation, charge: WrittenCharge): VentilationResult =>
  ventilationCheck(asked(station, charge));
const outdoors: WrittenStation = { is: 'outdoors' };
const ductless: WrittenStation = { is: 'ductless-hood' };

const value = (figure: Figure | undefined): number => figure?.value.toNumber() ?? Number.NaN;
const made = (result: VentilationResult) => {
  if (!result.made) throw new Error(result.reasons.join());
  return result.made;
};

/** Milligrams of metal in a lot that a hood may be asked for. */
const mg = fc.integer({ min: 100, max: 100_000 });
const lots: fc.Arbitrary<Grams> = fc
  .record({ Cu: mg, Ni: mg, Ag: mg, Sn: mg }, { requiredKeys: ['Cu'] })
  .map((told) =>
    Object.fromEntries(Object.entries(told).map(([m, n]) => [m, new Decimal(n).div(1000).toFixed(3)])),
  );
/** A hundredth of a metre a second, in the window. */
const speeds = fc.integer({ min: 40, max: 60 }).map((n) => new Decimal(n).div(100).toFixed(2));

const fifty = leach({ Cu: '50.0' });

describe('50 g of copper in 1:1 acid over two hours (our own sums)', () => {
  const result = check(hood(), fifty);

  it('make 38.5 L, 0.321 L/min, at the peak 1.28', () => {
    const { release, gas } = made(result);
    expect(value(gas.strong)).toBeCloseTo(1.57366, 5);
    expect(value(release.gas)).toBeCloseTo(38.476, 3);
    expect(value(release.mean)).toBeCloseTo(0.32063, 5);
    expect(value(release.peak)).toBeCloseTo(1.2825, 4);
    expect(value(gas.dilute) * 24.45).toBeCloseTo(12.825, 3);
  });

  it.each([
    ['1', 'osha-ceiling', 3848],
    ['10', 'osha-ceiling', 38_476],
    ['1', 'niosh-15-min', 19_238],
    ['3', 'niosh-15-min', 57_714],
    ['10', 'eu-8-h', 384_761],
  ] as const)('would need, mixed by %s and under %s, %d m³/h of room air', (mixing, limit, needed) => {
    const told = check(room('40'), leach({ Cu: '50.0' }, { limit, mixing: { value: mixing, unit: '1' } }));
    expect(value(made(told).airNeeded.mean)).toBeCloseTo(needed, 0);
    expect(told.verdict).toBe('none');
  });

  it('are 26 ppm in the duct of that hood, 106 at the peak: split', () => {
    expect(value(result.duct?.mean)).toBeCloseTo(26.4, 1);
    expect(value(result.duct?.peak)).toBeCloseTo(105.6, 1);
    expect(result.verdict).toBe('split');
    expect(result.reasons).toEqual(['peak-in-duct', 'over-ceiling']);
  });

  it('into so many lots that each is under what is immediately dangerous, at its high end', () => {
    const { split, portion } = result;
    expect(split?.count).toBe(Math.ceil(50 / value(portion)));
    expect(value(split?.each)).toBeLessThanOrEqual(value(portion));
    const each = check(hood(), leach({ Cu: value(split?.each).toFixed(3) }));
    expect(each.verdict).toBe('enough');
    expect(each.duct?.peak.high.lte(13)).toBe(true);
    const fewer = check(hood(), leach({ Cu: (50 / ((split?.count ?? 0) - 1)).toFixed(3) }));
    expect(fewer.verdict).toBe('split');
  });
});

describe('a lot of capacitors in dilute acid over a day (our own sums)', () => {
  const charge = leach(
    { Ag: '5.000', Pd: '1.000', Ni: '10.000', Cu: '5.000' },
    {
      acid: { volume: { value: '2.00', unit: 'L' }, strength: { value: '3.0', unit: 'mol/L' } },
      release: { value: '24', unit: 'h' },
      peak: { share: { value: '50', unit: '%' }, within: { value: '1', unit: 'h' } },
    },
  );
  const result = check(hood(), charge);

  it('makes 4.59 L by the dilute route, 13.8 by the strong, and goes on all night', () => {
    const { gas, release, airNeeded } = made(result);
    expect(gas.usual).toBe('dilute');
    expect(value(gas.dilute) * 24.45).toBeCloseTo(4.5906, 3);
    expect(value(gas.strong) * 24.45).toBeCloseTo(13.772, 3);
    expect(value(airNeeded.peak) / 3).toBeCloseTo(6886, -1);
    expect((value(release.tail) / 3) * 1000).toBeCloseTo(1.6633, 3);
  });

  it('is 3 to 9 ppm in the duct in the first hour', () => {
    expect(value(result.duct?.peak)).toBeCloseTo(9.4, 1);
    expect(result.duct?.peak.low.toNumber()).toBeCloseTo(3.1, 0);
  });

  it('is more metal than goes into one lot all the same', () => {
    expect([result.verdict, ...result.reasons]).toEqual(['split', 'over-ceiling']);
    expect(value(result.portion)).toBeCloseTo(10, 9);
    expect(result.split?.count).toBe(3);
  });
});

describe('when the fan fails over 10 g of copper in a shut room of 40 m³ (our own sums)', () => {
  it('it comes to 192 ppm, and takes an hour to air', () => {
    const { inRoom } = check(hood({ room: { value: '40.0', unit: 'm³' } }), leach({ Cu: '10.000' }));
    expect(value(inRoom?.shut)).toBeCloseTo(192.4, 1);
    // 40 m³ × 13 ppm ÷ (half of 7.695 L in 15 min).
    expect(value(inRoom?.dangerousAfter)).toBeCloseTo(0.52 / (7.6952 / 30), 2);
    expect(value(inRoom?.airing)).toBeCloseTo(((3 * 40) / 729) * 60 * Math.log(192.4), 1);
  });

  it('a hood that is not counted on airs nothing', () => {
    const told = { room: { value: '40.0', unit: 'm³' } } as const;
    const { inRoom } = check(hood(told, '0.30'), leach({ Cu: '10.000' }));
    expect(inRoom?.shut).toBeDefined();
    expect(inRoom?.airing).toBeUndefined();
  });

  it('0.676 g are immediately dangerous, a tenth less are not, as far as one can weigh', () => {
    const shut = (grams: string) => check(room('40.00'), leach({ Cu: grams })).inRoom;
    expect(value(shut('0.6757')?.shut)).toBeCloseTo(13, 2);
    expect(shut('0.5500')?.dangerousAfter).toBeUndefined();
    expect(shut('0.6757')?.dangerousAfter).toBeDefined();
  });
});

describe('cementation with free acid (our own sums)', () => {
  it('of 0.4 mol takes 306 m³/h of room air by the dilute route, over a day', () => {
    const charge = cementation('0.200', '2.00', { release: { value: '24', unit: 'h' } });
    const { gas, airNeeded } = made(check(room('40'), charge));
    const share = gas.dilute.value.div(gas.strong.value);
    expect(airNeeded.mean.value.times(share).toNumber()).toBeCloseTo(305.6, 1);
  });

  it('is split by the liquor, not by the copper, which is never the end of it', () => {
    const result = check(outdoors, cementation('1.000', '2.00'));
    expect(result).toMatchObject({ verdict: 'split', reasons: ['over-ceiling'] });
    expect(result.portion).toBeUndefined();
    expect(result.split?.each.unit).toBe('L');
    const each = value(result.split?.each).toFixed(4);
    expect(check(outdoors, cementation(each, '2.00')).verdict).toBe('enough');
  });
});

describe('room air and hoods that blow back', () => {
  it('are never enough, however little metal and however much air', () => {
    const gentle = leach({ Ag: '0.001' });
    expect(check(room('100000', '900000000'), gentle)).toMatchObject({
      verdict: 'none',
      reasons: ['room-air'],
    });
    expect(check(ductless, gentle)).toMatchObject({ verdict: 'none', reasons: ['ductless-hood'] });
  });

  it('say why, with where that was read', () => {
    expect(check(room('40'), fifty).refused).toMatchObject({
      source: 'dilution-criteria',
      status: 'verified',
    });
    expect(check(ductless, { step: 'filtration' }).refused?.source).toBe('ductless');
    expect(check(hood(), fifty).refused).toBeUndefined();
  });

  it('tell what the room comes to', () => {
    const { inRoom } = check(room('40.0', '600'), leach({ Cu: '10.000' }));
    expect(value(inRoom?.changes)).toBe(15);
    // 3 × 7.6952 L in 120 min, in 10 000 L/min.
    expect(value(inRoom?.mean)).toBeCloseTo((3 * 7.6952e6) / 120 / 10_000, 1);
    expect(value(inRoom?.airing)).toBeCloseTo(63.1, 1);
  });
});

describe('outdoors', () => {
  it('works out nothing of the air, and passes with its conditions', () => {
    const result = check(outdoors, leach({ Cu: '10.0' }));
    expect(result.verdict).toBe('enough');
    expect([result.duct, result.inRoom]).toEqual([undefined, undefined]);
    expect(result.conditions.map(({ id }) => id)).toEqual([
      'open-sides',
      'wind-behind',
      'five-metres',
      'no-rain',
    ]);
    expect(result.conditions.every(({ status }) => status === 'common practice')).toBe(true);
  });

  it('takes 10 g in a lot, and then one at a time', () => {
    const result = check(outdoors, leach({ Cu: '10.1' }));
    expect(result).toMatchObject({ verdict: 'split', reasons: ['over-ceiling'], split: { count: 2 } });
    expect(result.conditions.at(-1)?.id).toBe('one-at-a-time');
    expect(ceiling.sources[0]?.status).toBe('common practice');
  });
});

describe('steps that dissolve nothing', () => {
  it.each(['acid-dilution', 'filtration'] as const)('%s: a hood or the outdoors, and no figure', (step) => {
    expect(check(hood(), { step })).toMatchObject({ verdict: 'enough', reasons: [] });
    expect(check(outdoors, { step }).verdict).toBe('enough');
    expect(check(room('500', '9000'), { step })).toMatchObject({ verdict: 'none', reasons: ['room-air'] });
    expect(check(ductless, { step }).verdict).toBe('none');
    expect(check(hood({}, '0.30'), { step })).toMatchObject({ verdict: 'none', reasons: ['face-too-slow'] });
    expect(check(hood(), { step }).made).toBeUndefined();
  });
});

describe('what cannot be worked out or counted on', () => {
  it.each([
    ['mixing-outside', leach({ Cu: '5' }, { mixing: { value: '0.2', unit: '1' } })],
    ['mixing-outside', leach({ Cu: '5' }, { mixing: { value: '12', unit: '1' } })],
    ['no-limit', leach({ Cu: '5' }, { limit: { at: { value: '0', unit: 'ppm' }, whose: 'Nobody' } })],
    ['no-release-time', leach({ Cu: '5' }, { release: { value: '0', unit: 'h' } })],
    ['no-metal', leach({ Cu: '0.0' })],
  ] as const)('is no pass: %s', (reason, charge) => {
    expect(check(hood(), charge)).toMatchObject({ verdict: 'none', reasons: [reason] });
  });

  it('a hood out of its window takes nothing, and says what the gas would be', () => {
    const result = check(hood({}, '0.30'), leach({ Cu: '1.0' }));
    expect(result).toMatchObject({ verdict: 'none', reasons: ['face-too-slow'] });
    expect(result.duct).toBeDefined();
    expect([result.portion, result.split]).toEqual([undefined, undefined]);
  });
});

describe('a charge that is short of acid', () => {
  const short = {
    acid: { volume: { value: '0.200', unit: 'L' }, strength: { value: '2.00', unit: 'mol/L' } },
  } as const;
  const little = {
    acid: { volume: { value: '0.020', unit: 'L' }, strength: { value: '2.00', unit: 'mol/L' } },
  } as const;

  it('is split as if each lot had acid to spare: all of it may go onto the first', () => {
    const [of, spare] = [check(hood(), leach({ Cu: '9.000' }, short)), check(hood(), leach({ Cu: '9.000' }))];
    expect(made(of).gas.limitedBy).toBe('acid');
    expect(peak(of)).toBeLessThan(peak(spare));
    expect(of.verdict).toBe('split');
    expect(value(of.portion)).toBeCloseTo(value(spare.portion), 9);
  });

  it('is one lot where the acid makes too little gas to matter', () => {
    const result = check(hood(), leach({ Cu: '9.000' }, little));
    expect(result.verdict).toBe('enough');
    expect(value(result.portion)).toBe(9);
  });
});

const peak = ({ duct }: VentilationResult) => value(duct?.peak);

describe('whatever the lot', () => {
  it('more metal never needs less air, nor makes less of it in the duct', () => {
    fc.assert(
      fc.property(lots, mg, (metals, more) => {
        const copper = new Decimal(metals.Cu ?? 0).plus(new Decimal(more).div(1000)).toFixed(3);
        const [of, and] = [metals, { ...metals, Cu: copper }].map((told) => check(hood(), leach(told)));
        if (!of || !and) return;
        expect(value(made(and).airNeeded.mean)).toBeGreaterThan(value(made(of).airNeeded.mean));
        expect(peak(and)).toBeGreaterThan(peak(of));
        if (and.verdict === 'enough') expect(of.verdict).toBe('enough');
      }),
    );
  });

  it('a faster hood of the same opening throws out less, and takes no smaller lot', () => {
    fc.assert(
      fc.property(lots, speeds, speeds, (metals, a, b) => {
        const [slow, fast] = [a, b].sort().map((speed) => check(hood({}, speed), leach(metals)));
        expect(peak(fast as VentilationResult)).toBeLessThanOrEqual(peak(slow as VentilationResult));
        expect(value(fast?.portion)).toBeGreaterThanOrEqual(value(slow?.portion) * (1 - 1e-9));
      }),
    );
  });

  it('the lots that it is split into are enough each, and each has the lower peak', () => {
    fc.assert(
      fc.property(lots, speeds, (metals, speed) => {
        const whole = check(hood({}, speed), leach(metals));
        if (!whole.split) return;
        const { count } = whole.split;
        // As exactly weighed as the whole: a part of a milligram may be worth more than what is left to the limit.
        const part = Object.fromEntries(
          Object.entries(metals).map(([m, g]) => [m, new Decimal(g).div(count).times(0.99).toFixed(9)]),
        );
        const each = check(hood({}, speed), leach(part));
        expect(each.verdict).toBe('enough');
        expect(peak(each)).toBeLessThan(peak(whole));
        expect(each.duct?.peak.high.lte(mostInDuct.value)).toBe(true);
      }),
    );
  });

  it('enough means: under both ceilings, at the high end', () => {
    fc.assert(
      fc.property(lots, speeds, (metals, speed) => {
        const { verdict, duct, made: of, portion } = check(hood({}, speed), leach(metals));
        const metal = of?.gas.metal;
        const within = duct?.peak.high.lte(13) === true && metal?.value.lte(10) === true;
        expect(verdict).toBe(within ? 'enough' : 'split');
        if (verdict === 'enough') expect(portion?.value.gte(metal?.value ?? 0)).toBe(true);
      }),
    );
  });

  it('units change nothing', () => {
    fc.assert(
      fc.property(mg, (milligrams) => {
        const copper = (mass: { value: string; unit: 'g' | 'kg' | 'mg' }) =>
          check(hood(), {
            ...fifty,
            metals: { known: 'each', masses: [{ metal: 'Cu', mass }] },
          });
        const [a, b, c] = [
          copper({ value: `${milligrams}`, unit: 'mg' }),
          copper({ value: new Decimal(milligrams).div(1000).toFixed(3), unit: 'g' }),
          copper({ value: new Decimal(milligrams).div(1_000_000).toFixed(6), unit: 'kg' }),
        ];
        expect([b.verdict, c.verdict]).toEqual([a.verdict, a.verdict]);
        expect(peak(b)).toBe(peak(a));
        expect(peak(c)).toBe(peak(a));
        expect(b.duct?.peak.high.toNumber()).toBeCloseTo(a.duct?.peak.high.toNumber() ?? 0, 9);
      }),
    );
  });

  it('the limit that was chosen moves the air that would be needed, and nothing of the verdict', () => {
    fc.assert(
      fc.property(lots, fc.constantFrom(...limitIds), (metals, limit) => {
        const [usual, other] = [check(hood(), leach(metals)), check(hood(), leach(metals, { limit }))];
        expect([other.verdict, other.split?.count]).toEqual([usual.verdict, usual.split?.count]);
        const { airNeeded, limit: chosen } = made(other);
        expect(value(airNeeded.mean) * value(chosen.at)).toBeCloseTo(value(made(usual).airNeeded.mean), 3);
      }),
    );
  });

  it('metal that nobody knows is never taken for less than copper and tin', () => {
    fc.assert(
      fc.property(mg, fc.constantFrom('Cu', 'Sn', 'Ni'), (milligrams, metal) => {
        const mass = new Decimal(milligrams).div(1000).toFixed(3);
        const [unknown, known] = [
          check(hood(), leachOfUnknown(mass)),
          check(hood(), leach({ [metal]: mass })),
        ];
        expect(peak(unknown)).toBeGreaterThanOrEqual(peak(known));
        if (unknown.verdict === 'enough') expect(known.verdict).toBe('enough');
      }),
    );
  });
});
