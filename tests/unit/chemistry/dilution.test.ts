import Decimal from 'decimal.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { acidByMass, acidStrength, type WrittenStrength } from '../../../src/chemistry/acid-strength';
import {
  type Diluted,
  type Dilution,
  mixtureOf,
  pouringAt,
  recipeFor,
  type WrittenVolume,
} from '../../../src/chemistry/dilution';
import { inUnit } from '../../../src/quantities/quantity';

const percent = (value: number | string): WrittenStrength => ({ value: String(value), unit: '%' });
const litres = (value: number | string): WrittenVolume => ({ value: String(value), unit: 'L' });

function made(diluted: Diluted): Dilution {
  if (!diluted.ok) throw new Error(diluted.failure.code);
  return diluted.dilution;
}
const codeOf = (diluted: Diluted) => (diluted.ok ? 'made' : diluted.failure.code);

const same = (a: Decimal, b: Decimal, most = 1e-12) =>
  expect(a.minus(b).div(b).abs().toNumber(), `${a} and ${b}`).toBeLessThanOrEqual(most);

/** Hundredths of a per cent, of a litre: as people write them. */
const hundredths = (min: number, max: number) =>
  fc.integer({ min: min * 100, max: max * 100 }).map((n) => new Decimal(n).div(100).toFixed(2));
const stocks = hundredths(1, 70);
const volumes = hundredths(0.01, 50);
/** A stock and a strength below it. */
const pairs = fc
  .tuple(fc.integer({ min: 2, max: 7000 }), fc.integer({ min: 1, max: 6999 }))
  .filter(([stock, wanted]) => wanted < stock)
  .map(
    ([stock, wanted]) =>
      [new Decimal(stock).div(100).toFixed(2), new Decimal(wanted).div(100).toFixed(2)] as const,
  );

describe('three measures of one strength', () => {
  it('each leads to the two others and back', () => {
    fc.assert(
      fc.property(stocks, (value) => {
        const told = acidByMass(percent(value), 'test');
        if (!told.ok) throw new Error(told.failure.code);
        for (const figure of [told.molarity, told.density]) {
          const again = acidByMass({ value: figure.value.toFixed(), unit: figure.unit }, 'test');
          if (!again.ok) throw new Error(again.failure.code);
          same(again.percent.value, new Decimal(value));
          same(again.density.value, told.density.value);
          same(again.molarity.value, told.molarity.value);
        }
      }),
    );
  });

  it.each([
    ['%', '70', '70.01'],
    ['kg/L', '1.4134', '1.4135'],
    ['mol/L', '15.70', '15.71'],
  ] as const)('in %s, %s is in the table and %s is not', (unit, last, beyond) => {
    expect(acidByMass({ value: last, unit }, 'test').ok).toBe(true);
    expect(acidByMass({ value: beyond, unit }, 'test').ok).toBe(false);
  });

  it('lighter than water is outside the table, pure water is in it', () => {
    expect(acidByMass({ value: '0.9981', unit: 'kg/L' }, 'test').ok).toBe(false);
    const water = acidByMass({ value: '0', unit: 'mol/L' }, 'test');
    expect(water.ok && water.percent.value.toNumber()).toBe(0);
  });

  it('a strength told in mol/L needs no table to be taken as it is', () => {
    const strong = acidStrength({ value: '16', unit: 'mol/L' }, 'test');
    expect(strong.ok && strong.molarity.value.toNumber()).toBe(16);
  });

  it('a density tells a strength no better than a hydrometer can', () => {
    const found = acidByMass({ value: '1.4048', unit: 'kg/L' }, 'test');
    if (!found.ok) throw new Error(found.failure.code);
    // 0.5 % of 1.4048 kg/L, where 1 % more acid is 0.0043 to 0.0044 kg/L.
    const half = found.percent.high.minus(found.percent.value).toNumber();
    expect(half).toBeGreaterThan(0.007 / 0.0044);
    expect(half).toBeLessThan(0.0075 / 0.0043);
  });
});

describe('a recipe', () => {
  it('loses neither nitric acid nor mass', () => {
    fc.assert(
      fc.property(pairs, volumes, ([stock, wanted], volume) => {
        const recipe = made(
          recipeFor({ stock: percent(stock), wanted: percent(wanted), volume: litres(volume) }),
        );
        same(recipe.acid.mass.value.plus(recipe.water.mass.value), recipe.whole.mass.value);
        same(recipe.acid.mass.value.times(stock), recipe.whole.mass.value.times(wanted));
        same(recipe.whole.volume.value.times(recipe.mixture.density.value), recipe.whole.mass.value);
      }),
    );
  });

  it('is the same in litres, millilitres and gallons', () => {
    fc.assert(
      fc.property(pairs, volumes, ([stock, wanted], volume) => {
        const [one, ...others] = (['L', 'mL', 'US gal'] as const).map((unit) =>
          made(
            recipeFor({
              stock: percent(stock),
              wanted: percent(wanted),
              volume: { value: inUnit({ value: volume, unit: 'L' }, unit).toFixed(), unit },
            }),
          ),
        );
        for (const other of others)
          for (const part of ['acid', 'water', 'whole'] as const) {
            const [a, b] = [one?.[part].volume, other[part].volume];
            if (!a) throw new Error('nothing');
            same(inUnit({ value: b.value.toFixed(), unit: b.unit }, 'L'), a.value);
          }
      }),
    );
  });

  it('is the same from % as from mol/L and density', () => {
    const stock = acidByMass(percent(65), 'test');
    const wanted = acidByMass(percent(20), 'test');
    if (!stock.ok || !wanted.ok) throw new Error('outside');
    const known = made(recipeFor({ stock: percent(65), wanted: percent(20), volume: litres(2) }));
    for (const unit of ['molarity', 'density'] as const) {
      const other = made(
        recipeFor({
          stock: { value: stock[unit].value.toFixed(), unit: stock[unit].unit },
          wanted: { value: wanted[unit].value.toFixed(), unit: wanted[unit].unit },
          volume: litres(2),
        }),
      );
      same(other.acid.volume.value, known.acid.volume.value);
      same(other.water.volume.value, known.water.volume.value);
    }
  });

  it('poured, gives the strength and the volume that were wanted', () => {
    fc.assert(
      fc.property(pairs, volumes, ([stock, wanted], volume) => {
        const { acid, water } = made(
          recipeFor({ stock: percent(stock), wanted: percent(wanted), volume: litres(volume) }),
        );
        const { mixture, whole } = made(
          mixtureOf({
            stock: percent(stock),
            acid: litres(acid.volume.value.toFixed()),
            water: litres(water.volume.value.toFixed()),
          }),
        );
        same(mixture.percent.value, new Decimal(wanted), 1e-11);
        same(whole.volume.value, new Decimal(volume), 1e-11);
      }),
    );
  });

  it.each([
    ['a stock above 70 %', percent('70.1'), percent(10), '1', 'outside-table'],
    ['more than the table in mol/L', { value: '15.8', unit: 'mol/L' }, percent(10), '1', 'outside-table'],
    ['a wish above 70 %', percent(68), percent(71), '1', 'outside-table'],
    ['stronger than the stock', percent(30), percent(40), '1', 'not-weaker'],
    ['as strong as the stock', percent(30), percent(30), '1', 'not-weaker'],
    ['only water wanted', percent(30), percent(0), '1', 'no-acid'],
    ['a stock of water', percent(0), percent(0), '1', 'no-acid'],
    ['no volume', percent(30), percent(10), '0.00', 'no-volume'],
    ['a hair weaker than the stock', percent(30), percent('29.99'), '1', 'made'],
  ] as const)('%s: %s', (_, stock, wanted, volume, code) => {
    expect(codeOf(recipeFor({ stock, wanted, volume: litres(volume) }))).toBe(code);
  });

  it('outside the table says which strength, and the ends in the unit that was written', () => {
    const failed = recipeFor({
      stock: percent(68),
      wanted: { value: '16', unit: 'mol/L' },
      volume: litres(1),
    });
    expect(failed).toEqual({
      ok: false,
      failure: { code: 'outside-table', which: 'wanted', low: '0', high: '15.7', unit: 'mol/L' },
    });
  });
});

describe('pouring acid into water', () => {
  it('more acid never gives a weaker mixture, nor one stronger than the stock', () => {
    fc.assert(
      fc.property(stocks, volumes, volumes, volumes, (stock, acid, more, water) => {
        const of = (volume: Decimal.Value) =>
          made(
            mixtureOf({
              stock: percent(stock),
              acid: litres(new Decimal(volume).toFixed()),
              water: litres(water),
            }),
          );
        const [less, then] = [of(acid), of(new Decimal(acid).plus(more))];
        expect(then.mixture.percent.value.gte(less.mixture.percent.value)).toBe(true);
        expect(then.mixture.percent.value.lte(stock)).toBe(true);
      }),
    );
  });

  it('neither acid alone nor water alone is a mixture', () => {
    const stock = percent(68);
    expect(codeOf(mixtureOf({ stock, acid: litres(0), water: litres(1) }))).toBe('no-acid');
    expect(codeOf(mixtureOf({ stock, acid: litres(1), water: litres('0.0') }))).toBe('no-water');
    expect(codeOf(mixtureOf({ stock: percent(90), acid: litres(1), water: litres(1) }))).toBe(
      'outside-table',
    );
  });

  it('takes less room than its parts', () => {
    const { acid, water, whole } = made(mixtureOf({ stock: percent(68), acid: litres(1), water: litres(1) }));
    const parts = acid.volume.value.plus(water.volume.value);
    expect(whole.volume.value.lt(parts)).toBe(true);
    // 34 % from 68 %: (1.4048 + 0.9982) kg at 1.2375 kg/L or so, 3 % less than 2 L.
    expect(whole.volume.value.div(parts).toNumber()).toBeGreaterThan(0.95);
  });
});

describe('heat', () => {
  const strong = () => made(recipeFor({ stock: percent(68), wanted: percent(34), volume: litres(5) }));

  it('is never taken up, and never more than the whole heat of the acid', () => {
    fc.assert(
      fc.property(pairs, ([stock, wanted]) => {
        const { warming } = made(
          recipeFor({ stock: percent(stock), wanted: percent(wanted), volume: litres(1) }),
        );
        expect(warming.heat.value.gte(0)).toBe(true);
        expect(warming.rise.value.toNumber()).toBeLessThan(40);
      }),
    );
  });

  it('is said as a range', () => {
    const { rise } = strong().warming;
    expect(rise.low.lt(rise.value) && rise.value.lt(rise.high)).toBe(true);
  });

  it('is heeded by its high end: 40 °C is reached, not passed, in a room that leaves just that much', () => {
    const dilution = strong();
    const left = dilution.warming.rise.high;
    const room = new Decimal(40).minus(left);
    expect(pouringAt(dilution, room.toFixed()).kind).toBe('slowly');
    expect(pouringAt(dilution, room.plus('0.01').toFixed()).kind).toBe('in-portions');
  });

  it('a portion is less than all, and warms the water by no more than is left', () => {
    const dilution = strong();
    const pouring = pouringAt(dilution, '25');
    if (pouring.kind !== 'in-portions') throw new Error(pouring.kind);
    expect(pouring.portion.high.lt(dilution.acid.volume.value)).toBe(true);
    const first = made(
      mixtureOf({
        stock: percent(68),
        acid: litres(pouring.portion.value.toFixed()),
        water: litres(dilution.water.volume.value.toFixed()),
      }),
    );
    expect(first.warming.rise.value.toNumber()).toBeLessThanOrEqual(15);
    expect(first.warming.rise.value.toNumber()).toBeGreaterThan(7);
  });

  it('a warmer room takes smaller portions', () => {
    const at = (room: string) => {
      const pouring = pouringAt(strong(), room);
      return pouring.kind === 'in-portions' ? pouring.portion.value : new Decimal(Number.NaN);
    };
    expect(at('30').lt(at('25'))).toBe(true);
  });

  it('a room of 40 °C leaves no room for a rise, one of 39.9 °C a little', () => {
    expect(pouringAt(strong(), '40').kind).toBe('room-too-warm');
    expect(pouringAt(strong(), '39.9').kind).toBe('in-portions');
  });
});
