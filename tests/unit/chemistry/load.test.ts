import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { baseNeeded, carbonDioxide } from '../../../src/chemistry/base-needed';
import { densityOf } from '../../../src/chemistry/density';
import { type MetalEvidence, weighed } from '../../../src/chemistry/evidence';
import { warming } from '../../../src/chemistry/heat';
import { liquorFrom, volumeRead } from '../../../src/chemistry/liquor';
import {
  type Load,
  loadAfter,
  loadOf,
  type Movement,
  nitrateIn,
  partOfVolume,
  perLitre,
  together,
} from '../../../src/chemistry/load';
import { heldLiquor, moistureFrom } from '../../../src/chemistry/residue';
import { sludgeFrom } from '../../../src/chemistry/sludge';
import { washed } from '../../../src/chemistry/washing';
import { exact, given } from '../../../src/quantities/figure';
import { baseIds, type Metal } from '../../../src/reference/tables';

const liquor = (origin: string, litres: string, copper?: string, acid?: string) =>
  liquorFrom({
    origin,
    volume: { value: litres, unit: 'L' },
    findings: copper
      ? [{ by: 'photometer', metal: 'Cu', concentration: { value: copper, unit: 'g/L' } }]
      : [],
    freeAcid: acid ? [{ by: 'titration', result: { value: acid, unit: 'mol/L' } }] : [],
  });
const into = (name: string, l = liquor(name, '2.0', '10', '0.5')): Movement => ({
  kind: 'in',
  name,
  liquor: l,
});
const litres = (volume: string) => volumeRead({ value: volume, unit: 'L' }, 'part', 'part');

describe('a container', () => {
  it('holds what came in', () => {
    const load = loadAfter([into('a'), into('b', liquor('b', '3.0', '20', '1.0'))]);
    expect(load?.volume.value.toString()).toBe('5');
    expect(load?.metals.get('Cu')?.figure?.value.toString()).toBe('80');
    expect(load?.freeAcid.figure?.value.toString()).toBe('4');
    expect(load && perLitre(load, 'Cu')?.value.toString()).toBe('16');
  });

  it('is as strong as before when a part is taken out', () => {
    const load = loadAfter([into('a'), { kind: 'out', part: litres('0.5') }]);
    expect(load?.volume.value.toString()).toBe('1.5');
    expect(load && perLitre(load, 'Cu')?.value.toNumber()).toBeCloseTo(10, 12);
  });

  it('is empty when all of it is taken out', () => {
    expect(loadAfter([into('a'), { kind: 'out', part: litres('2.0') }])).toBeUndefined();
  });

  it('says what one liquor does not tell, and counts the rest as the least', () => {
    const load = loadAfter([into('a'), into('b', liquor('b', '3.0'))]);
    expect(load?.metals.get('Cu')).toMatchObject({ openIn: ['b'] });
    expect(load?.metals.get('Cu')?.figure?.value.toString()).toBe('20');
    expect(load?.metals.get('Ag')).toEqual({ openIn: ['a', 'b'] });
    expect(load?.freeAcid.openIn).toEqual(['b']);
  });

  it('never gains or loses copper by pouring from one into another', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 199 }), fc.integer({ min: 1, max: 500 }), (part, copper) => {
        const mother = liquor('a', '2.00', (copper / 10).toFixed(1), '0.5');
        const volume = (part / 100).toFixed(2);
        const stays = loadAfter([into('a', mother), { kind: 'out', part: litres(volume) }]);
        const whole = loadAfter([into('a', mother)]);
        if (!stays || !whole) throw new Error('nothing left');
        const gone = loadAfter([{ kind: 'in-mixed', load: whole, part: litres(volume) }]);
        const sum = stays.metals.get('Cu')?.figure?.value.plus(gone?.metals.get('Cu')?.figure?.value ?? 0);
        expect(sum?.toNumber()).toBeCloseTo((copper / 10) * 2, 9);
      }),
    );
  });
});

it('two liquors poured together are the same whichever went in first, their used-up acid too', () => {
  const any = fc.record({
    litres: fc.integer({ min: 1, max: 90 }),
    copper: fc.integer({ min: 0, max: 900 }),
    charged: fc.integer({ min: 1, max: 90 }),
  });
  const known = (
    name: string,
    { litres, copper, charged }: Record<'litres' | 'copper' | 'charged', number>,
  ) =>
    loadOf(
      liquorFrom({
        origin: name,
        volume: { value: (litres / 10).toFixed(1), unit: 'L' },
        findings: [{ by: 'weighing', metal: 'Cu', mass: { value: (copper / 10).toFixed(1), unit: 'g' } }],
        freeAcid: [
          {
            by: 'charged-minus-consumed',
            volume: { value: (charged / 10).toFixed(1), unit: 'L' },
            strength: { value: '2.00', unit: 'mol/L' },
          },
        ],
      }),
      name,
    );
  fc.assert(
    fc.property(any, any, (a, b) => {
      const [one, other] = [known('a', a), known('b', b)];
      const [ab, ba] = [together(one, other), together(other, one)];
      const figures = (load: Load) => [load.volume, load.freeAcid.figure, load.metals.get('Cu')?.figure];
      const ends = (load: Load) =>
        figures(load).map((f) =>
          [f?.value, f?.low, f?.high].map((x) => x?.toSignificantDigits(12).toFixed()),
        );
      expect(ends(ab)).toEqual(ends(ba));
    }),
  );
});

describe('nitrate', () => {
  it('is one for each acid and two for each copper', () => {
    const load = loadAfter([into('a', liquor('a', '1.000', '63.546', '0.500'))]);
    expect(load && nitrateIn(load).figure?.value.toNumber()).toBeCloseTo(2.5, 6);
  });

  it('is open when the acid is', () => {
    const load = loadAfter([into('a', liquor('a', '1', '10'))]);
    expect(load && nitrateIn(load).figure).toBeUndefined();
  });
});

describe('a metal that was named and not determined', () => {
  const named = (name: string, untold: readonly Metal[]) =>
    liquorFrom({
      origin: name,
      volume: { value: '2.0', unit: 'L' },
      findings: [
        ...(['Cu', 'Ni'] as const).map((metal) => ({
          by: 'assay' as const,
          metal,
          concentration: { value: '10', unit: 'g/L' as const },
        })),
        ...untold.map((metal) => ({ by: 'not-determined' as const, metal })),
      ],
      freeAcid: [{ by: 'titration', result: { value: '0.5', unit: 'mol/L' } }],
    });
  const open = (load: Load) => ({
    base: baseNeeded('hydrated-lime', load)?.openIn,
    nitrate: nitrateIn(load).openIn,
  });

  it('leaves base and nitrate open where it was named; a metal that nobody named does not', () => {
    expect(open(loadOf(named('a', ['Fe', 'Zn', 'Ag']), 'a'))).toEqual({ base: ['a'], nitrate: ['a'] });
    expect(open(loadOf(named('a', []), 'a'))).toEqual({ base: [], nitrate: [] });
  });

  it('stays open through pouring together, pouring over and washing', () => {
    const all = together(loadOf(named('a', []), 'a'), loadOf(named('b', ['Fe']), 'b'));
    expect(open(all).base).toContain('b');
    expect(open(partOfVolume(all, litres('1.0'))).base).toContain('b');
    const dry = weighed({ value: '100', unit: 'g' }, 'dry', 'dry');
    const evenness = given({
      origin: 'mix',
      sentence: 'mix',
      value: 1,
      unit: '1',
      how: 'assumed',
      spread: exact,
    });
    const residue = { load: all, stays: all.volume, dry, way: 'drained', evenness } as const;
    expect(open(washed(residue, litres('2.0'), 2).washWater).base).toContain('b');
  });

  it('is told by another piece of evidence of it, and open where all there is contradicts itself', () => {
    const iron = (...findings: MetalEvidence[]) => {
      const liquor = liquorFrom({ origin: 'a', volume: { value: '2.0', unit: 'L' }, findings, freeAcid: [] });
      return liquor.open;
    };
    const untold = { by: 'not-determined', metal: 'Fe' } as const;
    const mass = { value: '1.0', unit: 'g' } as const;
    expect(iron(untold)).toEqual(['Fe']);
    expect(iron(untold, { by: 'weighing', metal: 'Fe', mass })).toEqual([]);
    const tooMuch = { value: '5.0', unit: 'g' } as const;
    expect(iron({ by: 'copper-weighed', metal: 'Cu', before: mass, after: tooMuch })).toEqual(['Cu']);
  });
});

describe('base needed', () => {
  it('is not shown when the acid is not known', () => {
    const load = loadAfter([into('a', liquor('a', '1', '10'))]);
    expect(load && baseNeeded('hydrated-lime', load)).toBeUndefined();
  });

  it('has a low end for the first portions and a high end for buying, for every base', () => {
    const load = loadAfter([into('a')]);
    for (const base of baseIds) {
      const mass = load && baseNeeded(base, load)?.mass;
      expect(mass?.low.lt(mass.value) && mass.high.gt(mass.value), base).toBe(true);
    }
  });

  it('with limestone leaves nickel where it is, and says so', () => {
    const nickel = liquorFrom({
      origin: 'n',
      volume: { value: '1', unit: 'L' },
      findings: [{ by: 'assay', metal: 'Ni', concentration: { value: '58.6934', unit: 'g/L' } }],
      freeAcid: [{ by: 'titration', result: { value: '1.000', unit: 'mol/L' } }],
    });
    const load = loadAfter([into('n', nickel)]);
    const [stone, lime] = (['limestone', 'hydrated-lime'] as const).map((b) => load && baseNeeded(b, load));
    expect(stone?.hydroxide.value.toNumber()).toBeCloseTo(1, 6);
    expect(stone?.leaves).toEqual(['Ni']);
    expect(lime?.hydroxide.value.toNumber()).toBeCloseTo(3, 6);
  });

  it('grows with the acid and with the copper', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 300 }), fc.integer({ min: 1, max: 300 }), (acid, copper) => {
        const one = (a: number, c: number) => {
          const load = loadAfter([into('a', liquor('a', '1.00', (c / 10).toFixed(1), (a / 100).toFixed(2)))]);
          return load && baseNeeded('hydrated-lime', load)?.mass.value;
        };
        expect(one(acid + 1, copper)?.gt(one(acid, copper) ?? 0)).toBe(true);
        expect(one(acid, copper + 1)?.gt(one(acid, copper) ?? 0)).toBe(true);
      }),
    );
  });

  it('only carbonates foam', () => {
    const load = loadAfter([into('a')]);
    const foams = baseIds.filter((base) => {
      const needed = load && baseNeeded(base, load);
      return needed && carbonDioxide(needed);
    });
    expect(foams).toEqual(['limestone', 'soda-ash', 'sodium-bicarbonate']);
  });
});

describe('what comes of it', () => {
  const load = loadAfter([into('a', liquor('a', '1.00', '63.546', '1.00'))]);
  const needed =
    load && baseNeeded('hydrated-lime', load, { purity: { value: '100', unit: '%' }, origin: 'p' });

  it('a mole of copper leaves its hydroxide and the grit of the lime', () => {
    const sludge = load && needed && sludgeFrom(load, needed);
    const expected = 97.56 + (needed?.mass.value.toNumber() ?? 0) * 0.1;
    expect(sludge?.dry.value.toNumber()).toBeCloseTo(expected, 2);
    expect(sludge?.wet.value.gt(sludge.dry.value)).toBe(true);
  });

  it('quicklime warms it more than hydrated lime', () => {
    const rise = (base: 'quicklime' | 'hydrated-lime') => {
      const n = load && baseNeeded(base, load);
      return load && n && warming(load, n)?.rise.value;
    };
    expect(rise('quicklime')?.gt(rise('hydrated-lime') ?? 0)).toBe(true);
  });
});

it('a wet residue holds liquor as strong as the liquor it was filtered from', () => {
  const mother = loadAfter([into('a', liquor('a', '2.00', '10.0', '0.50'))]);
  if (!mother) throw new Error('no liquor');
  const wetMass = weighed({ value: '500', unit: 'g' }, 'wet', 'Residue, wet');
  const moisture = moistureFrom(
    { by: 'dried-sample', wet: { value: '10.0', unit: 'g' }, dry: { value: '8.0', unit: 'g' } },
    'm',
    'ceramic-residue',
  );
  if (!moisture) throw new Error('no moisture');
  const held = heldLiquor({ wetMass, moisture }, mother);
  expect(held.volume.value.toNumber()).toBeCloseTo(0.1 / densityOf(mother).value.toNumber(), 9);
  expect(perLitre(held.load, 'Cu')?.value.toNumber()).toBeCloseTo(10, 9);
});

describe('acid charged less what the metals took', () => {
  const acidLeft = (copper: string) =>
    liquorFrom({
      origin: 'c',
      volume: { value: '1.00', unit: 'L' },
      findings: [{ by: 'weighing', metal: 'Cu', mass: { value: copper, unit: 'g' } }],
      freeAcid: [
        {
          by: 'charged-minus-consumed',
          volume: { value: '1.00', unit: 'L' },
          strength: { value: '2.00', unit: 'mol/L' },
        },
      ],
    }).freeAcid?.best.all;

  it('is what dilute acid leaves, down to what strong acid would', () => {
    // 10 g of copper take 10 ÷ 63.546 × 8/3 = 0.4197 mol as nitric oxide, 0.6295 mol as nitrogen dioxide.
    expect(acidLeft('10')?.value.toNumber()).toBeCloseTo(2 - 0.41965, 4);
    expect(acidLeft('10')?.low.lt(2 - 0.6295)).toBe(true);
  });

  it('is nothing, not less, when the metals could have taken more than there was', () => {
    // 50 g would take 2.098 of 2.00 mol: nothing is likely, a little may be left.
    expect(acidLeft('50')?.value.toString()).toBe('0');
    expect(acidLeft('50')?.low.toString()).toBe('0');
    expect(acidLeft('50')?.high.toNumber()).toBeGreaterThan(0.01);
    expect(acidLeft('50')?.high.toNumber()).toBeLessThan(0.3);
    expect(acidLeft('100')?.high.toString()).toBe('0');
  });
});
