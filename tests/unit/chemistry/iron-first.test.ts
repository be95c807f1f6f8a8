import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { baseNeeded } from '../../../src/chemistry/base-needed';
import type { MetalEvidence } from '../../../src/chemistry/evidence';
import { molarMass } from '../../../src/chemistry/formula';
import { heatPerIronTwo, warming } from '../../../src/chemistry/heat';
import { type IronFirst, type IronPlan, ironFirst } from '../../../src/chemistry/iron-first';
import { liquorFrom } from '../../../src/chemistry/liquor';
import { type Load, loadOf, nitrateIn, partOfVolume, together } from '../../../src/chemistry/load';
import { sludgeFrom } from '../../../src/chemistry/sludge';
import { exact, given } from '../../../src/quantities/figure';
import type { Metal } from '../../../src/reference/tables';

type Grams = Partial<Record<Metal, string>>;

function loadWith(grams: Grams, acid: string | null, volume = '10.0', unit: 'L' | 'mL' = 'L'): Load {
  const findings = Object.entries(grams).map(
    ([metal, value]): MetalEvidence => ({
      by: 'weighing',
      metal: metal as Metal,
      mass: { value, unit: 'g' },
    }),
  );
  return loadOf(
    liquorFrom({
      origin: 'test',
      volume: { value: volume, unit },
      findings,
      freeAcid: acid === null ? [] : [{ by: 'titration', result: { value: acid, unit: 'mol/L' } }],
    }),
    'barren',
  );
}

const plan: IronPlan = { acid: 'as-it-is', base: 'hydrated-lime' };
function first(load: Load, how: Partial<IronPlan> = {}): IronFirst {
  const result = ironFirst(load, { ...plan, ...how });
  if (!result.ok) throw new Error(result.failure);
  return result.value;
}
const molesOfIron = (figure: { value: { toNumber(): number } }) =>
  figure.value.toNumber() / molarMass('Fe').value.toNumber();
/** What air adds to the iron that is used up, and the usual excess over that. */
const [air, excessUsual] = [1.1, 1.5];

describe('iron that goes into a liquor', () => {
  it('is 0.879 g for a gram of copper that goes down, with what air and an excess add', () => {
    const found = first(loadWith({ Cu: '178' }, '0'));
    // 10 mg/L of 10 L stay: 177.9 g go down.
    expect(found.copper.value.toNumber()).toBeCloseTo(177.9, 9);
    expect(found.copperLeft.value.toNumber()).toBeCloseTo(0.1, 9);
    expect(found.ironGoingOn.value.toNumber()).toBeCloseTo(177.9 * (55.845 / 63.546), 2);
    expect(found.iron.value.toNumber()).toBeCloseTo(
      found.ironGoingOn.value.toNumber() * air * excessUsual,
      9,
    );
    expect(found.ironPerCopper.value.toNumber()).toBeCloseTo(0.8788 * air * excessUsual, 3);
  });

  it.each<readonly [string, Grams, string, number]>([
    ['silver takes half each', { Ag: '107.868' }, '0', 0.5],
    ['palladium takes one each', { Pd: '106.42' }, '0', 1],
    ['iron(III) takes half each', { Fe: '55.845' }, '0', 0.5],
    ['nickel and zinc take none', { Ni: '58.693', Zn: '65.38' }, '0', 0],
    ['acid takes four for ten', {}, '0.1', 0.4],
  ])('%s', (_, grams, acid, moles) => {
    const [bare, found] = [
      first(loadWith({ Cu: '178' }, '0')),
      first(loadWith({ Cu: '178', ...grams }, acid)),
    ];
    const ofIron = Number(grams.Fe ?? 0) / 55.845;
    const more = molesOfIron(found.ironGoingOn) - molesOfIron(bare.ironGoingOn) - ofIron;
    expect(more).toBeCloseTo(moles, 4);
  });

  it('is as much as the person says where an excess is stated', () => {
    const excess = given({
      origin: 'x',
      sentence: 'Excess',
      value: 20,
      unit: '%',
      how: 'stated',
      spread: exact,
    });
    const found = first(loadWith({ Cu: '178' }, '0'), { excess });
    expect(found.iron.value.div(found.ironGoingOn.value).toNumber()).toBeCloseTo(1.2 * air, 12);
  });

  it('is the same whatever unit the volume was written in', () => {
    const [litres, millilitres] = [
      first(loadWith({ Cu: '178' }, '0.30')),
      first(loadWith({ Cu: '178' }, '0.30', '10000', 'mL')),
    ];
    expect(millilitres.iron.value.minus(litres.iron.value).abs().lt(1e-12)).toBe(true);
  });

  it('takes far less of it once base has brought the acid down', () => {
    const load = loadWith({ Cu: '178' }, '0.58');
    const [asItIs, brought] = [first(load), first(load, { acid: 'brought-down' })];
    expect(asItIs.iron.value.minus(brought.iron.value).toNumber()).toBeCloseTo(
      (5.8 - 0.03) * 0.4 * 55.845 * air * excessUsual,
      2,
    );
    expect(brought.ammonium.high.lt(asItIs.ammonium.value.div(20))).toBe(true);
    expect(brought.baseFirst).toBeDefined();
    expect(asItIs.baseFirst).toBeUndefined();
  });

  it('leaves acid alone that is below pH 2.5 already', () => {
    const found = first(loadWith({ Cu: '178' }, '0.001'), { acid: 'brought-down' });
    expect(found.baseFirst).toBeUndefined();
  });

  it('can make up to one ammonium for ten acids, or one nitric oxide for four', () => {
    const found = first(loadWith({ Cu: '178' }, '0.58'));
    expect(found.ammonium.low.toNumber()).toBe(0);
    expect(found.ammonium.high.toNumber()).toBeGreaterThanOrEqual(0.58);
    expect(found.nitricOxide.high.toNumber()).toBeGreaterThanOrEqual(5.8 * 0.25 * 24.06);
  });
});

describe('copper onto iron spares no lime', () => {
  it('the iron takes as much as what it drove out: to the last mole where no acid takes iron', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 5, max: 500 }),
        fc.integer({ min: 0, max: 60 }),
        fc.integer({ min: 0, max: 60 }),
        (cu, ag, fe) => {
          const load = loadWith({ Cu: `${cu}`, Ag: `${ag}`, Fe: `${fe}` }, '0');
          const found = first(load);
          const hydroxide = (of: Load) => baseNeeded('hydrated-lime', of)?.hydroxide.value.toNumber() ?? 0;
          expect(hydroxide(found.after)).toBeCloseTo(hydroxide(load), 8);
        },
      ),
    );
  });

  it('but acid that iron takes instead of lime takes three quarters of it to all of it back as iron', () => {
    const [none, some] = [loadWith({ Cu: '178' }, '0'), loadWith({ Cu: '178' }, '0.58')];
    const hydroxide = (of: Load) => baseNeeded('hydrated-lime', of)?.hydroxide.value.toNumber() ?? 0;
    const share = (hydroxide(first(some).after) - hydroxide(first(none).after)) / 5.8;
    expect(share).toBeCloseTo(0.8, 6);
  });

  it('base in all is the base before the iron and the base after it', () => {
    const found = first(loadWith({ Cu: '178', Ni: '62' }, '0.58'), { acid: 'brought-down' });
    const parts = (found.baseFirst?.value ?? found.baseAfter.value).plus(found.baseAfter.value);
    expect(found.withIron.mass.value.minus(parts).abs().lt(1e-9)).toBe(true);
    expect(found.baseChange.value.toNumber()).toBeCloseTo(
      found.withIron.mass.value.minus(found.without.mass.value).toNumber(),
      9,
    );
    // The acid left at pH 2 to 3 is all that iron can take from lime.
    expect(found.baseChange.value.div(found.without.mass.value).abs().toNumber()).toBeLessThan(0.001);
  });

  it('and the sludge grows: a mole of iron hydroxide is heavier than one of copper hydroxide', () => {
    const found = first(loadWith({ Cu: '178' }, '0'));
    expect(found.sludgeChange?.value.gt(0)).toBe(true);
  });
});

describe('copper left after the iron', () => {
  it('is never more than there is: of 0.5 g in 10 L, 0.01 to 0.5 g', () => {
    const { copperLeft, copper } = first(loadWith({ Cu: '0.500' }, '0'));
    expect(copperLeft.value.toNumber()).toBeCloseTo(0.1, 12);
    expect(copperLeft.low.toNumber()).toBeCloseTo(0.01, 3);
    expect(copperLeft.high.toNumber()).toBeCloseTo(0.5, 3);
    expect(copper.low.toNumber()).toBeCloseTo(0, 3);
  });

  it('at no strength: neither end lies beyond the ends of all of it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 101, max: 5000 }), (mg) => {
        const load = loadWith({ Cu: (mg / 1000).toFixed(3) }, '0');
        const all = load.metals.get('Cu')?.figure;
        const { copperLeft } = first(load);
        expect(copperLeft.high.lte(all?.high ?? 0)).toBe(true);
        expect(copperLeft.value.toNumber()).toBeCloseTo(0.1, 12);
      }),
    );
  });
});

describe('ammonium that the iron makes of acid', () => {
  const load = loadWith({ Cu: '178', Ni: '62' }, '0.58');
  const bare = (found: IronFirst, base: IronPlan['base']) => baseNeeded(base, found.after);

  it('takes base above pH 8 at the high end: one for ten acids, as 0.58 mol of 5.8', () => {
    const found = first(load);
    const [with_, without] = [found.baseAfter, bare(found, 'hydrated-lime')?.mass];
    if (!without) throw new Error('acid open');
    expect(with_.value.eq(without.value)).toBe(true);
    expect(with_.low.eq(without.low)).toBe(true);
    // 0.58 mol ÷ 2 × 74.093 g/mol ÷ 0.95 × 1.10 × what the model says of the sum, beside the rest in squares.
    const rise = (high: typeof with_) => high.high.minus(high.value).toNumber();
    const perMole =
      without.value.toNumber() / (bare(found, 'hydrated-lime')?.hydroxide.value.toNumber() ?? 1);
    expect(rise(with_)).toBeCloseTo(Math.hypot(rise(without), 0.58 * perMole), 6);
    expect(perMole).toBeCloseTo((74.093 / 2 / 0.95) * 1.1, 2);
    expect(with_.note).toContain('mmonium');
  });

  it('takes none of a base that does not come to pH 8, and hardly any once the acid is brought down', () => {
    const limestone = first(load, { base: 'limestone' });
    expect(limestone.baseAfter.high.eq(bare(limestone, 'limestone')?.mass.high ?? 0)).toBe(true);
    const brought = first(load, { acid: 'brought-down' });
    const over = brought.baseAfter.high.div(bare(brought, 'hydrated-lime')?.mass.high ?? 1);
    expect(over.toNumber()).toBeLessThan(1.0001);
  });
});

describe('what cannot be worked out is said', () => {
  it.each([
    ['copper that nobody told', {}, '0.58', 'copper-open'],
    ['free acid that nobody told', { Cu: '178' }, null, 'acid-open'],
    ['a trace of copper, which stays where it is', { Cu: '0.05' }, '0.58', 'no-copper'],
  ] as const)('%s', (_, grams, acid, failure) => {
    expect(ironFirst(loadWith(grams, acid), plan)).toEqual({ ok: false, failure });
  });

  it('and a metal that is known in part is named', () => {
    const mixed = together(
      loadWith({ Cu: '178' }, '0.58'),
      loadOf(
        liquorFrom({
          origin: 'wash',
          volume: { value: '3.0', unit: 'L' },
          findings: [],
          freeAcid: [{ by: 'titration', result: { value: '0.05', unit: 'mol/L' } }],
        }),
        'wash',
      ),
    );
    expect(first(mixed).openIn).toContain('wash');
  });
});

describe('a load with iron(II) in it', () => {
  const after = first(loadWith({ Cu: '178', Ni: '62' }, '0')).after;
  const n = molesOfIron(after.ironTwo ?? { value: { toNumber: () => 0 } });

  it('has two nitrates for each, and takes two hydroxides for each', () => {
    const { ironTwo: _, ...without } = after;
    const nitrate = (of: Load) => nitrateIn(of).figure?.value.toNumber() ?? 0;
    const hydroxide = (of: Load) => baseNeeded('hydrated-lime', of)?.hydroxide.value.toNumber() ?? 0;
    expect(nitrate(after) - nitrate(without)).toBeCloseTo(2 * n, 9);
    expect(hydroxide(after) - hydroxide(without)).toBeCloseTo(2 * n, 9);
  });

  it('keeps it through a half poured over and the two halves poured together', () => {
    const half = partOfVolume(after, given({ ...after.volume, origin: 'half', value: '5', spread: exact }));
    expect(
      half.ironTwo?.value
        .times(2)
        .minus(after.ironTwo?.value ?? 0)
        .abs()
        .lt(1e-9),
    ).toBe(true);
    expect(
      together(half, half)
        .ironTwo?.value.minus(after.ironTwo?.value ?? 0)
        .abs()
        .lt(1e-9),
    ).toBe(true);
  });

  it('gives iron(III) hydroxide and its heat, but limestone leaves it', () => {
    const { ironTwo: _, ...without } = after;
    const dry = (of: Load, base: 'caustic-soda' | 'limestone') => {
      const needed = baseNeeded(base, of);
      return needed ? (sludgeFrom(of, needed)?.dry.value.toNumber() ?? 0) : 0;
    };
    expect(dry(after, 'caustic-soda') - dry(without, 'caustic-soda')).toBeCloseTo(n * 106.866, 1);
    expect(dry(after, 'limestone')).toBeCloseTo(dry(without, 'limestone'), 9);
    const heat = (of: Load) => {
      const needed = baseNeeded('hydrated-lime', of);
      return needed ? (warming(of, needed)?.heat.value.toNumber() ?? 0) : 0;
    };
    const each = heatPerIronTwo('hydrated-lime')?.value.toNumber() ?? 0;
    expect(heat(after) - heat(without)).toBeCloseTo(n * each, 6);
  });
});
