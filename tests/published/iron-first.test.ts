/** Copper onto iron: what the reactions, as published, take. */
import { describe, expect, it } from 'vitest';
import { molarMass, parsed, ratio, reaction } from '../../src/chemistry/formula';
import { heatPerIronTwo } from '../../src/chemistry/heat';
import { iron } from '../../src/reference/iron-tables';
import { expectWithin } from '../support/close';

describe('reactions of iron are balanced', () => {
  const { cementing, ironThree, acid, intoAir } = iron.reactions;
  it.each([...Object.values(cementing), ironThree, ...Object.values(acid), intoAir])('%s', (text) => {
    const atoms = new Map<string, number>();
    let charge = 0;
    for (const [species, n] of reaction(text)) {
      const sign = /([+-])(\d*)$/.exec(species);
      if (sign) charge += n * (sign[1] === '+' ? 1 : -1) * Number(sign[2] || 1);
      for (const [element, count] of parsed(species))
        atoms.set(element, (atoms.get(element) ?? 0) + n * count);
    }
    expect([...atoms.values()].every((n) => n === 0)).toBe(true);
    expect(charge).toBe(0);
  });
});

it('a gram of copper takes 0.879 g of iron: Cu²⁺ + Fe → Cu + Fe²⁺, US Bureau of Mines, copper cementation kinetics', () => {
  // 55.845 ÷ 63.546 g/mol, atomic weights of the IUPAC table.
  const perGram = molarMass('Fe')
    .value.times(ratio(iron.reactions.cementing.Cu, 'Fe', 'Cu+2'))
    .div(molarMass('Cu').value);
  expectWithin(perGram, 55.845 / 63.546, 1e-4);
  expectWithin(perGram, 0.879, 0.0005);
});

it('the iron that acid takes has its ends and its middle at the three reactions', () => {
  const { nitricOxide, ammonium, hydrogen } = iron.reactions.acid;
  const per = (text: string) => ratio(text, 'Fe', 'H+').toNumber();
  expect([iron.ironForAcid.low, iron.ironForAcid.value, iron.ironForAcid.high].map(Number)).toEqual([
    per(nitricOxide),
    per(ammonium),
    per(hydrogen),
  ]);
  expect(Number(iron.ammonium.high)).toBe(ratio(ammonium, 'NH4+', 'H+').toNumber());
  expect(Number(iron.nitricOxide.high)).toBe(ratio(nitricOxide, 'NO', 'H+').toNumber());
});

it('iron(II) with base and air takes two hydroxides each', () => {
  expect(Number(iron.ironTwo.hydroxide)).toBe(ratio(iron.reactions.intoAir, 'OH-', 'Fe+2').toNumber());
});

it('iron(II) with lime and air gives the heat of the reaction by hand', () => {
  // NBS 1982, kJ/mol: Fe²⁺ −89.1, Fe(OH)3 −823.0, Ca(OH)2 −986.09, Ca²⁺ −542.83, H2O −285.83; half a water for each iron.
  const byHand = -89.1 - 986.09 - 285.83 / 2 + 823.0 + 542.83;
  expectWithin(heatPerIronTwo('hydrated-lime')?.value, byHand, 0.01);
});
