import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { asSold, overTheModel } from '../../../../src/chemistry/base-needed';
import { componentOfMetal } from '../../../../src/chemistry/equilibrium/reaction';
import { dissolved } from '../../../../src/chemistry/equilibrium/told';
import { molarMass } from '../../../../src/chemistry/formula';
import type { Load } from '../../../../src/chemistry/load';
import { sludgeFrom } from '../../../../src/chemistry/sludge';
import { baseTo } from '../../../../src/chemistry/treatment/base-to';
import { doseTo } from '../../../../src/chemistry/treatment/dose-to';
import type { Reached } from '../../../../src/chemistry/treatment/liquid-after';
import { outcomeOf, statedCakeSolids } from '../../../../src/chemistry/treatment/outcome';
import { likely, treatedPot } from '../../../../src/chemistry/treatment/treated-pot';
import { exact, given } from '../../../../src/quantities/figure';
import type { BaseId, Metal } from '../../../../src/reference/tables';
import { loadWith } from './treated-load';

const reached = (base: BaseId, load: Load, pH: number): Reached => {
  const to = baseTo(base, load, pH);
  if (!to.ok) throw new Error(to.why.code);
  return to;
};
const outcome = (base: BaseId, load: Load, pH: number, asked?: Parameters<typeof outcomeOf>[2]) =>
  outcomeOf(reached(base, load, pH), load, asked);
const number = (figure: { readonly value: { toNumber(): number } } | undefined) =>
  figure?.value.toNumber() ?? Number.NaN;

const barren = loadWith(6.7, 0.58, { Cu: 17.6, Ni: 6.2 });

describe('barren liquor with lime to pH 9.5', () => {
  const out = outcome('hydrated-lime', barren, 9.5);

  it('leaves the hydroxides and a tenth of the lime as grit', () => {
    const to = reached('hydrated-lime', barren, 9.5);
    const hydroxides =
      number(barren.metals.get('Cu')?.figure) * 1.5353 + number(barren.metals.get('Ni')?.figure) * 1.5795;
    expect(number(out.sludge?.dry)).toBeCloseTo(hydroxides + 0.1 * number(to.needed.mass), 1);
    // As stoichiometry has it: all copper and nickel come down here.
    expect(number(out.sludge?.dry) / number(sludgeFrom(barren, to.needed)?.dry)).toBeCloseTo(1, 4);
  });

  it('gives heat and no gas', () => {
    expect(out.carbonDioxide).toBeUndefined();
    expect(number(out.warming?.heat)).toBeGreaterThan(300);
  });

  it('keeps all nitrate: acid and two with each metal', () => {
    const moles = 6.7 * (0.58 + (2 * 17.6) / 63.546 + (2 * 6.2) / 58.693);
    expect(number(out.nitrate.moles.figure)).toBeCloseTo(moles, 2);
    expect(number(out.nitrate.mass)).toBeCloseTo(moles * 62.004, 0);
    expect(number(out.nitrate.asCalciumNitrate)).toBeCloseTo((moles * 164.086) / 2, 0);
  });

  it('sends on as much calcium as half the nitrate', () => {
    expect(out.goesOn.element).toBe('Ca');
    expect(number(out.goesOn.moles) / (number(out.nitrate.moles.figure) / 2)).toBeCloseTo(1, 3);
    expect(number(out.goesOn.mass)).toBeCloseTo(number(out.goesOn.moles) * 40.078, 1);
  });

  it('has the ionic strength of three times as much calcium nitrate a kilogram of water', () => {
    const water = reached('hydrated-lime', barren, 9.5).at.water;
    expect(number(out.ionicStrength)).toBeCloseTo((3 * number(out.goesOn.moles)) / water, 2);
    expect(out.holds).toBe('yes');
    expect(out.ionicStrength.low.lt(out.ionicStrength.value)).toBe(true);
  });

  it('makes a mole of water for each mole of acid, none for the metals', () => {
    expect(number(out.waterMade) * 0.9982).toBeCloseTo(6.7 * 0.58 * 0.018015, 3);
  });

  it('is balanced in volume: filtrate, and liquor in the pores of the sludge', () => {
    const [copper, nickel] = [(6.7 * 17.6) / 63.546, (6.7 * 6.2) / 58.693];
    const calcium = (6.7 * 0.58) / 2 + copper + nickel;
    const made = (6.7 * 0.58 * 0.018015) / 0.9982;
    // Partial volumes, L/mol: calcium −0.01785 comes, copper −0.02776 and nickel −0.0294 go.
    const volume = 6.7 + made - 0.01785 * calcium + 0.02776 * copper + 0.0294 * nickel;
    expect(number(out.filtrate) + number(out.pores?.volume)).toBeCloseTo(volume, 3);
  });

  it('holds liquor in the sludge that is as strong as the filtrate', () => {
    const { pores, sludge } = out;
    const poreMass = number(sludge?.wet) - number(sludge?.dry);
    const strength = number(pores?.salt) / poreMass;
    const salt = number(out.goesOn.mass) + number(out.nitrate.mass);
    const water = reached('hydrated-lime', barren, 9.5).at.water * 1000;
    expect(strength).toBeCloseTo(salt / (salt + water), 4);
    expect(number(pores?.saltOfWet)).toBeCloseTo((100 * number(pores?.salt)) / number(sludge?.wet), 6);
  });
});

describe('the wet sludge', () => {
  it('is as heavy as its solids content says, and holds back as much liquor', () => {
    const cakeSolids = statedCakeSolids({ value: '30', unit: '%' }, 'cake');
    const pressed = outcome('hydrated-lime', barren, 9.5, { cakeSolids });
    const drained = outcome('hydrated-lime', barren, 9.5);
    expect(number(pressed.sludge?.wet)).toBeCloseTo(number(pressed.sludge?.dry) / 0.3, 4);
    expect(number(drained.sludge?.wet)).toBeCloseTo(number(drained.sludge?.dry) / 0.15, 4);
    expect(number(pressed.filtrate)).toBeGreaterThan(number(drained.filtrate) + 0.5);
    expect([cakeSolids.low.toNumber(), cakeSolids.high.toNumber()]).toEqual([24, 36]);
  });

  it('water of the slurry goes into the filtrate but for what the pores hold, and thins the salt', () => {
    const slurryWater = given({
      origin: 'slurry',
      sentence: 'Water',
      value: 2,
      unit: 'L',
      how: 'assumed',
      spread: exact,
    });
    const thin = outcome('hydrated-lime', barren, 9.5, { slurryWater });
    const thick = outcome('hydrated-lime', barren, 9.5);
    const { water } = reached('hydrated-lime', barren, 9.5).at;
    const thinner = water / (water + 2 * 0.9982);
    expect(number(thin.ionicStrength) / number(thick.ionicStrength)).toBeCloseTo(thinner, 3);
    const more = number(thin.filtrate) - number(thick.filtrate);
    expect(more).toBeGreaterThan(1.9);
    expect(more).toBeLessThan(2.1);
    expect(number(thin.pores?.salt)).toBeLessThan(number(thick.pores?.salt));
  });
});

describe('sludge of a plan', () => {
  const { needed } = reached('caustic-soda', barren, 9.5);
  const half = given({
    origin: 'half',
    sentence: 'Half',
    value: '0.5',
    unit: '1',
    how: 'assumed',
    spread: exact,
  });

  it('holds of a metal the share that goes into the solid', () => {
    const [all, part] = [{}, { share: half }].map((share) =>
      number(sludgeFrom(barren, needed, { solids: [{ of: 'Cu', solid: 'CuO', ...share }] })?.dry),
    );
    expect(all).toBeCloseTo(6.7 * 17.6 * 1.2518, 1);
    expect(part).toBeCloseTo((all ?? 0) / 2, 6);
  });

  it('holds nothing of what the base leaves, also by stoichiometry', () => {
    const without = number(sludgeFrom(barren, { ...needed, leaves: ['Ni'] })?.dry);
    expect(without).toBeCloseTo(6.7 * 17.6 * 1.5353, 1);
  });
});

describe('with a carbonate', () => {
  it('copper comes down with soda ash as its basic carbonate, heavier by an eighth, and CO2 goes off', () => {
    const copper = loadWith(1, 0.5, { Cu: 10 });
    const out = outcome('soda-ash', copper, 7);
    expect(number(out.sludge?.dry)).toBeCloseTo(10 * 1.7398, 1);
    expect(number(out.carbonDioxide)).toBeGreaterThan(5);
    expect(out.goesOn.element).toBe('Na');
  });

  it('limestone leaves nickel: it is not in the sludge, and the salt of the pores counts it', () => {
    const out = outcome('limestone', barren, 5.2);
    expect(out.leaves).toEqual(['Ni']);
    expect(out.inSludge.get('Ni')).toBeUndefined();
    expect(out.sludge?.dry.inputs.some(({ sentence }) => sentence.includes('nickel'))).toBe(false);
    const salt = number(out.goesOn.mass) + number(out.nitrate.mass) + 6.7 * 6.2;
    const water = reached('limestone', barren, 5.2).at.water * 1000;
    const poreMass = number(out.sludge?.wet) - number(out.sludge?.dry);
    expect(number(out.pores?.salt) / poreMass).toBeCloseTo(salt / (salt + water), 4);
  });
});

describe('whether the model holds', () => {
  it.each([
    [0.5, 'yes'],
    [3, 'doubtful'],
    [7, 'outside'],
  ])('%d mol/L of acid with lime: %s', (acid, holds) => {
    const load = loadWith(1, acid, { Cu: 5 });
    expect(outcome('hydrated-lime', load, 9).holds).toBe(holds);
  });
});

it('iron(II) comes down with the iron(III), and both are in the sludge', () => {
  const iron = given({
    origin: 'fe2',
    sentence: 'Iron(II)',
    value: 3,
    unit: 'g',
    how: 'assumed',
    spread: exact,
  });
  const load = { ...loadWith(1, 0.1, { Fe: 2 }), ironTwo: iron };
  const to = reached('caustic-soda', load, 8);
  const { inSludge, sludge } = outcomeOf(to, load);
  expect(number(inSludge.get('Fe'))).toBeCloseTo(5, 3);
  expect(number(sludge?.dry)).toBeCloseTo(5 * 1.9136, 2);
});

it('a liquor that is at the target already has its own ionic strength, and nothing is made of it', () => {
  // 10 g/L of barium as nitrate: 0.0728 mol/L, three times as much where no pair forms, and some do.
  const load = loadWith(1, 0, { Ba: 10 });
  const out = outcome('caustic-soda', load, 4);
  expect(number(out.ionicStrength)).toBeGreaterThan(2.5 * 0.0728);
  expect(number(out.ionicStrength)).toBeLessThan(3 * 0.0728);
  expect(number(out.waterMade)).toBe(0);
  expect(out.sludge).toBeUndefined();
  expect(number(out.filtrate)).toBeCloseTo(1, 3);
});

const metals = fc.record({
  Cu: fc.constantFrom(0.01, 1, 20),
  Ni: fc.constantFrom(0.01, 1, 8),
  Zn: fc.constantFrom(0.01, 1),
  Pb: fc.constantFrom(0.01, 0.3),
  Ag: fc.constantFrom(0.01, 0.1),
});
const way = fc.constantFrom<readonly [BaseId, number]>(
  ['hydrated-lime', 9],
  ['quicklime', 10.5],
  ['caustic-soda', 11.5],
  ['magnesium-hydroxide', 8],
  ['limestone', 5],
  ['soda-ash', 7.5],
  ['sodium-bicarbonate', 6.5],
);

/** As `reached`, without the ranges that come of solving it once for each metal. */
function quickly(base: BaseId, load: Load, pH: number): Reached {
  const pot = treatedPot(load, base);
  const dose = pot && doseTo(pot, likely(pot), pH);
  if (dose?.found !== 'dose') throw new Error('not reached');
  const hydroxide = given({
    origin: 'dose',
    sentence: 'Base',
    value: dose.base,
    unit: 'mol',
    how: 'assumed',
    spread: exact,
  });
  const mass = asSold(base, hydroxide, overTheModel(base));
  return {
    ok: true,
    pH,
    at: dose.at,
    dose: dose.base,
    gone: dose.gone,
    needed: { base, hydroxide, mass, leaves: [], openIn: [] },
  };
}

it('in any liquor each metal is in the sludge or dissolved, together what the load told', () => {
  fc.assert(
    fc.property(metals, way, (told, [base, pH]) => {
      const load = loadWith(3, 0.6, told);
      const to = quickly(base, load, pH);
      const { inSludge, sludge } = outcomeOf(to, load);
      for (const metal of Object.keys(told) as Metal[]) {
        const left = dissolved(to.at, componentOfMetal(metal)) * number(molarMass(metal));
        const all = number(load.metals.get(metal)?.figure);
        expect((number(inSludge.get(metal) ?? zero) + left) / all).toBeCloseTo(1, 6);
      }
      // Hydroxides, oxides and carbonates of these metals are 1.05 to 2 times as heavy as the metal, grit and base besides.
      const down = [...inSludge.values()].reduce((sum, figure) => sum + number(figure), 0);
      expect(number(sludge?.dry ?? zero)).toBeGreaterThanOrEqual(1.05 * down);
    }),
    { numRuns: 20 },
  );
});

const zero = { value: { toNumber: () => 0 } };

it('every figure names its sources somewhere in its working', () => {
  const { sludge, filtrate, ionicStrength, goesOn } = outcome('hydrated-lime', barren, 9.5);
  type Worked = { readonly sources: readonly unknown[]; readonly inputs: readonly Worked[] };
  const sourced = (figure: Worked): boolean => figure.sources.length > 0 || figure.inputs.some(sourced);
  for (const figure of [sludge?.wet, filtrate, ionicStrength, goesOn.mass])
    expect(figure && sourced(figure)).toBe(true);
});
