import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { liquorFrom, volumeRead } from '../../../src/chemistry/liquor';
import { loadOf } from '../../../src/chemistry/load';
import { heldLiquor, moistureFrom } from '../../../src/chemistry/residue';
import {
  leastWater,
  shareAllowed,
  volumeOfEach,
  type WashLimit,
  washesNeeded,
  washingTradeOff,
  worthStopping,
} from '../../../src/chemistry/wash-limit';
import { leftAfter, mixedPerfectly, type Washable, washable, washed } from '../../../src/chemistry/washing';
import { exact, given, read, within } from '../../../src/quantities/figure';
import type { Written } from '../../../src/quantities/written';

type Volume = Written<'L' | 'mL' | 'US gal'>;
const litres = (value: string, unit: Volume['unit'] = 'L') =>
  volumeRead({ value, unit }, `volume/${value}${unit}`, 'Volume');

/** A wet residue of 400 g, a quarter of it liquor with 17.6 g/L of copper, 6.2 g/L of nickel and 0.58 mol/L of acid. */
function residue(wet: Written<'g' | 'kg'> = { value: '400', unit: 'g' }) {
  const mother = loadOf(
    liquorFrom({
      origin: 'mother',
      volume: { value: '6.70', unit: 'L' },
      density: { value: '1.070', unit: 'kg/L' },
      findings: [
        { by: 'photometer', metal: 'Cu', concentration: { value: '17.6', unit: 'g/L' } },
        { by: 'photometer', metal: 'Ni', concentration: { value: '6.2', unit: 'g/L' } },
      ],
      freeAcid: [{ by: 'titration', result: { value: '0.58', unit: 'mol/L' } }],
    }),
    'barren',
  );
  const wetMass = read({
    origin: 'wet',
    sentence: 'Residue, wet',
    written: wet,
    unit: 'g',
    how: 'weighing',
    spread: () => within(1),
  });
  const moisture = moistureFrom(
    { by: 'stated', percent: { value: '25', unit: '%' } },
    'm',
    'ceramic-residue',
  );
  if (!moisture) throw new Error('no moisture');
  return { wetMass, held: heldLiquor({ wetMass, moisture }, mother) };
}
const drained = (): Washable => {
  const made = washable(residue());
  if (!made) throw new Error('nothing to wash');
  return made;
};
const atMost = <U extends 'mg/kg' | 'mg/L'>(value: string, unit: U) =>
  given({ origin: 'limit', sentence: 'Limit', value, unit, how: 'stated', spread: exact });
const limit = (value: string, unit: 'mg/kg' | 'mg/L' = 'mg/kg'): WashLimit => ({
  metal: 'Cu',
  at: unit === 'mg/kg' ? atMost(value, unit) : atMost(value, unit),
});
const allowed = (value: string, unit?: 'mg/kg' | 'mg/L', of = drained()) => {
  const share = shareAllowed(of, limit(value, unit));
  if (!share) throw new Error('no share');
  return share;
};
const copper = (of: ReturnType<typeof washed>) => {
  const found = of.metals.find(({ metal }) => metal === 'Cu');
  if (!found) throw new Error('no copper');
  return found;
};

/** What happens in the tub, one wash after another, in plain numbers. */
function inTheTub(held: number, metal: number, volume: number, count: number, evenness: number) {
  let inResidue = metal;
  const waters: number[] = [];
  for (let i = 0; i < count; i += 1) {
    const out = inResidue * evenness * (volume / (held + volume));
    inResidue -= out;
    waters.push(out);
  }
  return { inResidue, waters };
}

const volumes = fc.integer({ min: 10, max: 5000 }).map((ml) => `${ml / 1000}`);
const counts = fc.integer({ min: 1, max: 12 });

describe('a washed residue', () => {
  it('holds what was in it less what each wash water took, wash by wash', () => {
    fc.assert(
      fc.property(volumes, counts, (v, n) => {
        const it = drained();
        const after = copper(washed(it, litres(v), n));
        const tub = inTheTub(
          it.stays.value.toNumber(),
          after.before.value.toNumber(),
          Number(v),
          n,
          it.evenness.value.toNumber(),
        );
        expect(after.stays.value.toNumber()).toBeCloseTo(tub.inResidue, 12);
        expect(after.inWashWater.value.toNumber()).toBeCloseTo(
          tub.waters.reduce((a, b) => a + b),
          12,
        );
      }),
    );
  });

  it('loses no metal and no acid: what stays and what is in the wash water is what there was', () => {
    fc.assert(
      fc.property(volumes, counts, (v, n) => {
        const it = drained();
        const after = washed(it, litres(v), n);
        for (const m of after.metals)
          expect(m.stays.value.plus(m.inWashWater.value).minus(m.before.value).abs().lt(1e-12)).toBe(true);
        const acid = it.load.freeAcid.figure?.value;
        const [stays, gone] = [after.acidStays?.value, after.washWater.freeAcid.figure?.value];
        expect(
          stays
            ?.plus(gone ?? 0)
            .minus(acid ?? 0)
            .abs()
            .lt(1e-12),
        ).toBe(true);
        expect(after.washWater.volume.value.toNumber()).toBeCloseTo(Number(v) * n, 12);
      }),
    );
  });

  it('never holds more after one more wash, nor after a larger one', () => {
    fc.assert(
      fc.property(volumes, volumes, counts, (v, more, n) => {
        const it = drained();
        const left = (volume: string, count: number) => leftAfter(it, litres(volume), count).value;
        expect(left(v, n + 1).lt(left(v, n))).toBe(true);
        const larger = `${Number(v) + Number(more)}`;
        expect(left(larger, n).lt(left(v, n))).toBe(true);
      }),
    );
  });

  it('is never washed cleaner than perfect mixing would, whatever end of the range is asked', () => {
    const [real, ideal] = [drained(), mixedPerfectly(drained())];
    for (const n of [1, 2, 5]) {
      const left = leftAfter(real, litres('0.50'), n);
      expect(left.value.gt(leftAfter(ideal, litres('0.50'), n).value)).toBe(true);
      expect(left.high.gt(left.value)).toBe(true);
      expect(left.low.gte(0)).toBe(true);
    }
  });

  it('comes out the same whatever units it was weighed and measured in', () => {
    const grams = washable(residue());
    const kilos = washable(residue({ value: '0.400', unit: 'kg' }));
    if (!grams || !kilos) throw new Error('nothing to wash');
    const [a, b] = [copper(washed(grams, litres('0.50'), 3)), copper(washed(kilos, litres('500', 'mL'), 3))];
    expect(b.stays.value.minus(a.stays.value).abs().lt(1e-15)).toBe(true);
    expect(b.perDryMass.value.minus(a.perDryMass.value).abs().lt(1e-12)).toBe(true);
  });

  it('dry, is the wet one less its moisture', () => {
    expect(drained().dry.value.toNumber()).toBeCloseTo(300, 9);
  });
});

describe('a residue that settles and is poured off', () => {
  it('holds more liquor, so that the same washes take out less; the water to the level comes on top', () => {
    const settled = washable(residue(), litres('0.500'));
    if (!settled) throw new Error('nothing to wash');
    const wash = washed(settled, litres('0.50'), 2);
    const dry = washed(drained(), litres('0.50'), 2);
    expect(copper(wash).stays.value.gt(copper(dry).stays.value)).toBe(true);
    const held = drained().stays.value;
    expect(wash.water.value.toNumber()).toBeCloseTo(1 + 0.5 - held.toNumber(), 12);
    expect(wash.washWater.volume.value.toNumber()).toBe(1);
  });

  it('cannot be poured off to less than it holds drained', () => {
    expect(washable(residue(), litres('0.010'))).toBeUndefined();
  });
});

describe('washes under a limit', () => {
  it('are the fewest: one fewer leaves more than the limit, likely and at the high end', () => {
    fc.assert(
      fc.property(fc.integer({ min: 20, max: 3000 }), fc.integer({ min: 100, max: 2000 }), (mgPerKg, ml) => {
        const it = drained();
        const volume = litres(`${ml / 1000}`);
        const { likely, sure } = washesNeeded(it, volume, limit(`${mgPerKg}`));
        const left = (n: number) => copper(washed(it, volume, n)).perDryMass;
        if (likely === undefined || sure === undefined) return;
        expect(left(likely).value.lte(mgPerKg)).toBe(true);
        expect(left(sure).high.lte(mgPerKg)).toBe(true);
        if (likely > 0) expect(left(likely - 1).value.gt(mgPerKg)).toBe(true);
        if (sure > 0) expect(left(sure - 1).high.gt(mgPerKg)).toBe(true);
        expect(sure).toBeGreaterThanOrEqual(likely);
      }),
    );
  });

  it('none are needed where the limit is kept already, and none are enough where too little goes out', () => {
    expect(washesNeeded(drained(), litres('0.50'), limit('9000'))).toEqual({ likely: 0, sure: 0 });
    expect(washesNeeded(drained(), litres('0.001'), limit('1'))).toEqual({});
    expect(washingTradeOff(drained(), allowed('9000'))).toEqual([]);
  });

  it('of the volume worked out for them just keep the limit', () => {
    fc.assert(
      fc.property(counts, fc.integer({ min: 10, max: 3000 }), (n, mgPerKg) => {
        const it = drained();
        const volume = volumeOfEach(it, allowed(`${mgPerKg}`), n);
        if (!volume) return;
        const after = copper(washed(it, volume, n)).perDryMass.value;
        expect(after.div(mgPerKg).minus(1).abs().lt(1e-12)).toBe(true);
      }),
    );
  });

  it('keep a limit in the held liquor as well as one of the dry residue', () => {
    const it = drained();
    const volume = volumeOfEach(it, allowed('50', 'mg/L'), 4);
    if (!volume) throw new Error('out of reach');
    expect(copper(washed(it, volume, 4)).perLitre.value.toNumber()).toBeCloseTo(50, 9);
  });

  it('one wash that mixes badly is never enough, however large', () => {
    expect(volumeOfEach(drained(), allowed('50'), 1)).toBeUndefined();
    expect(volumeOfEach(mixedPerfectly(drained()), allowed('50'), 1)).toBeDefined();
  });
});

describe('the trade-off between washes and water', () => {
  const points = washingTradeOff(drained(), allowed('50'));

  it('more washes make less water, and the least is really the least', () => {
    const waters = points.flatMap(({ water }) => water?.value.toNumber() ?? []);
    expect(waters.length).toBeGreaterThan(5);
    for (const [i, water] of waters.entries()) if (i > 0) expect(water).toBeLessThan(waters[i - 1] ?? 0);
    expect(leastWater(points)?.water?.value.toNumber()).toBe(Math.min(...waters));
  });

  it('never goes below what endless small washes would make: h times the logarithm', () => {
    const it = drained();
    const least = it.stays.value.toNumber() * Math.log(1 / allowed('50').value.toNumber());
    for (const p of points) expect(p.least.value.toNumber()).toBeGreaterThan(least);
    for (const p of points) if (p.water) expect(p.water.value.gt(p.least.value)).toBe(true);
  });

  it('is worth stopping where one more wash saves less than a tenth', () => {
    const stop = worthStopping(points);
    const at = (n: number) => points.find((p) => p.washes === n)?.water?.value.toNumber() ?? 0;
    const n = stop?.washes ?? 0;
    expect(at(n + 1)).toBeGreaterThan(0.9 * at(n));
    expect(at(n)).toBeLessThan(0.9 * at(n - 1));
  });
});
