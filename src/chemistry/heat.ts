/**
 * Heat of neutralising, and how far it warms the liquor if all of it goes in at once:
 * ΔT = Σ nᵢ·(−ΔHᵢ) ÷ (mass × heat capacity). Enthalpies by Hess's law from enthalpies of formation at 25 °C.
 * Source: reference/enthalpies.json. Metals without data (silver, palladium, lead, tin, barium, aluminium) are not
 * counted; they are minor here. With a carbonate a metal takes up heat, slowly: that is not taken off, on the safe side.
 */
import { minus, type Operand, over, plus, times } from '../quantities/expression';
import { type Figure, workedOut } from '../quantities/figure';
import { iron } from '../reference/iron-tables';
import { type BaseId, bases, enthalpies, liquor, type Metal, metals } from '../reference/tables';
import type { BaseNeeded } from './base-needed';
import { constant, ranged } from './constants';
import { densityOf } from './density';
import { ratio } from './formula';
import { type Load, metalsPresent, molesOf, molesOfIronTwo } from './load';

const ofFormation = (species: string): Figure<'kJ/mol'> => {
  const value = enthalpies[species];
  if (!value) throw new Error(`no enthalpy of formation of ${species}`);
  return constant(`enthalpy/${species}`, `Enthalpy of formation of ${species}`, value, 'kJ/mol');
};

/** Hydroxide from each base: what is left of the base, and the carbon dioxide it gives. */
const leftOver: Record<
  BaseId,
  { readonly made: readonly (readonly [number, string])[]; readonly water: number }
> = {
  'hydrated-lime': { made: [[1, 'Ca+2']], water: 0 },
  quicklime: { made: [[1, 'Ca+2']], water: 1 },
  limestone: {
    made: [
      [1, 'Ca+2'],
      [1, 'CO2(g)'],
    ],
    water: 1,
  },
  'magnesium-hydroxide': { made: [[1, 'Mg+2']], water: 0 },
  'sodium-bicarbonate': {
    made: [
      [1, 'Na+'],
      [1, 'CO2(g)'],
    ],
    water: 0,
  },
  'caustic-soda': { made: [[1, 'Na+']], water: 0 },
  'soda-ash': {
    made: [
      [2, 'Na+'],
      [1, 'CO2(g)'],
    ],
    water: 1,
  },
};

/** Figures of constants alone are worked out once. */
function once<K extends string>(make: (key: K) => Figure<'kJ/mol'>): (key: K) => Figure<'kJ/mol'> {
  const known = new Map<K, Figure<'kJ/mol'>>();
  return (key) => {
    const figure = known.get(key) ?? make(key);
    known.set(key, figure);
    return figure;
  };
}

/** Heat given off as one mole of hydroxide goes from the solid base into the liquor, kJ/mol. */
const heatOfHydroxide = once((base: BaseId) => {
  const { formula, hydroxidePerMol } = bases[base];
  const { made, water } = leftOver[base];
  const n = Number(hydroxidePerMol);
  const products: Operand[] = [
    ...made.map(([count, species]) => times(count, ofFormation(species))),
    times(n, ofFormation('OH-')),
  ];
  const used: Operand =
    water === 0 ? ofFormation(formula) : plus(ofFormation(formula), times(water, ofFormation('H2O(l)')));
  return workedOut({
    sentence: `Heat of dissolving ${bases[base].name.toLowerCase()}, for one mole of base`,
    unit: 'kJ/mol',
    formula: over(minus(used, plus(...products)), n),
  });
});

/** Heat per mole of nitric acid neutralised by `base`, kJ/mol, positive when it warms. */
export const heatPerAcid = once((base: BaseId) =>
  workedOut({
    sentence: 'Heat for one mole of acid',
    unit: 'kJ/mol',
    formula: plus(heatOfHydroxide(base), minus(ofFormation('OH-'), ofFormation('H2O(l)'))),
  }),
);

const ionOf: Partial<Record<Metal, string>> = { Cu: 'Cu+2', Ni: 'Ni+2', Zn: 'Zn+2', Fe: 'Fe+3' };

/** Heat per mole of metal brought down by `base`, kJ/mol; undefined without data or with a carbonate. */
export function heatPerMetal(base: BaseId, metal: Metal): Figure<'kJ/mol'> | undefined {
  const ion = ionOf[metal];
  const { solid, hydroxideTaken, name } = metals[metal];
  if (!ion || !solid || Number(bases[base].carbonDioxidePerMol) > 0) return undefined;
  const n = Number(hydroxideTaken);
  return workedOut({
    sentence: `Heat for one mole of ${name}`,
    unit: 'kJ/mol',
    formula: plus(
      times(n, heatOfHydroxide(base)),
      minus(plus(ofFormation(ion), times(n, ofFormation('OH-'))), ofFormation(solid)),
    ),
  });
}

/**
 * Heat per mole of iron(II) brought down by `base` as air takes it to iron(III), kJ/mol; undefined with a carbonate. The
 * oxygen counts nothing: an element's enthalpy of formation is 0.
 */
export function heatPerIronTwo(base: BaseId): Figure<'kJ/mol'> | undefined {
  if (Number(bases[base].carbonDioxidePerMol) > 0) return undefined;
  const n = Number(iron.ironTwo.hydroxide);
  const water = ratio(iron.reactions.intoAir, 'H2O', 'Fe+2').toNumber();
  return workedOut({
    sentence: 'Heat for one mole of iron(II), the air counted',
    unit: 'kJ/mol',
    formula: plus(
      times(n, heatOfHydroxide(base)),
      minus(
        plus(ofFormation('Fe+2'), times(n, ofFormation('OH-')), times(water, ofFormation('H2O(l)'))),
        ofFormation(iron.ironTwo.solid),
      ),
    ),
  });
}

function heatFromIronTwo(load: Load, base: BaseId): readonly Figure<'kJ'>[] {
  const [n, each] = [molesOfIronTwo(load), heatPerIronTwo(base)];
  if (!n || !each) return [];
  return [workedOut({ sentence: 'Heat from iron(II)', unit: 'kJ', formula: times(n, each) })];
}

export type Warming = { readonly heat: Figure<'kJ'>; readonly rise: Figure<'K'> };

/** Heat of the whole treatment and the rise if nothing were lost and all went in at once. */
export function warming(load: Load, needed: BaseNeeded): Warming | undefined {
  const acid = load.freeAcid.figure;
  if (!acid) return undefined;
  const fromAcid = workedOut({
    sentence: 'Heat from the acid',
    unit: 'kJ',
    formula: times(acid, heatPerAcid(needed.base)),
  });
  const fromMetals = metalsPresent(load)
    .filter((m) => !needed.leaves.includes(m))
    .flatMap((m) => {
      const [n, each] = [molesOf(load, m), heatPerMetal(needed.base, m)];
      if (!n || !each) return [];
      return workedOut({ sentence: `Heat from ${metals[m].name}`, unit: 'kJ', formula: times(n, each) });
    });
  const heat = workedOut({
    sentence: 'Heat of neutralising in all',
    unit: 'kJ',
    formula: plus(fromAcid, ...fromMetals, ...heatFromIronTwo(load, needed.base)),
  });
  const mass = workedOut({
    sentence: 'Mass of liquor and base',
    unit: 'kg',
    formula: plus(times(load.volume, densityOf(load)), needed.mass),
  });
  const rise = workedOut({
    sentence: 'Rise in temperature, all at once',
    unit: 'K',
    formula: over(
      heat,
      times(mass, ranged('heat-capacity', 'Heat capacity of the liquor', liquor.heatCapacity, 'kJ/(kg·K)')),
    ),
    note: 'In portions with waits between, the vessel loses some of it: read the thermometer.',
  });
  return { heat, rise };
}
