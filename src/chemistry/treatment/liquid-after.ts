/**
 * The liquid in a pot at its target, and what the sludge holds of it: volumes add up from water and partial volumes of the
 * ions. Sources: reference/liquor.json, reference/residuals.json.
 */
import { minus, type Operand, over, plus, times } from '../../quantities/expression';
import { exact, type Figure, given, workedOut } from '../../quantities/figure';
import { residuals } from '../../reference/residual-tables';
import { liquor, metals } from '../../reference/tables';
import { constant, ranged, sourceOf } from '../constants';
import { molarMass } from '../formula';
import { type Load, metalsPresent, molesOf } from '../load';
import type { Sludge } from '../sludge';
import type { BaseTo } from './base-to';
import { modelTells } from './model-tells';
import { dissolvedShare } from './solids-at';

export type Reached = Extract<BaseTo, { ok: true }>;

/** The cation of the base, which goes on with the nitrate: in the filtrate and in the pores of the cake. */
export type GoesOn = {
  readonly element: 'Ca' | 'Mg' | 'Na';
  readonly moles: Figure<'mol'>;
  readonly mass: Figure<'g'>;
};

/** Liquor in the pores of the wet sludge, and the salt in it. */
export type Pores = {
  readonly volume: Figure<'L'>;
  readonly salt: Figure<'g'>;
  readonly saltOfWet: Figure<'%'>;
};

export const waterDensity = constant(
  'water-density',
  'Density of water at 20 °C',
  liquor.waterDensity,
  'kg/L',
);

/** All liquid in the pot at the target, that in the sludge included. */
export type Liquid = {
  readonly volume: Figure<'L'>;
  /** Water and dissolved salt in it. */
  readonly mass: Figure<'kg'>;
  readonly salt: Figure<'g'>;
};

export type LiquidAsked = {
  readonly reached: Reached;
  readonly load: Load;
  readonly goesOn: GoesOn;
  readonly waterMade: Figure<'L'>;
  readonly nitrate: Figure<'mol'> | undefined;
  /** That the base is stirred into. */
  readonly slurryWater: Figure<'L'> | undefined;
};

const millilitres = (element: string, value: string): Figure<'mL/mol'> =>
  given({
    origin: `constant/partial-volume/${element}`,
    sentence: `Partial molal volume of ${element}`,
    value,
    unit: 'mL/mol',
    how: 'constant',
    spread: exact,
    decimals: 2,
    sources: [sourceOf(residuals.cations)],
  });

/** All liquid in the pot at the target, that in the sludge included. */
export function liquidAfter({ reached, load, goesOn, waterMade, nitrate, slurryWater }: LiquidAsked): Liquid {
  const slurry = slurryWater ? [slurryWater] : [];
  const down = metalsPresent(load).flatMap((metal): Operand[] => {
    const [n, value] = [molesOf(load, metal), liquor.partialVolumes.values[metal]];
    const gone = 1 - dissolvedShare(reached.at, metal);
    if (!n || value === undefined || gone <= 0) return [];
    return [
      times(
        n,
        modelTells({
          sentence: `Share of ${metals[metal].name} that comes down`,
          pH: reached.pH,
          value: gone,
          unit: '1',
        }),
        millilitres(metal, value),
      ),
    ];
  });
  const { element, moles, mass } = goesOn;
  const cation = times(moles, millilitres(element, residuals.cations.values[element]));
  const sum = plus(load.volume, waterMade, cation, ...slurry);
  const volume = workedOut({
    sentence: 'Liquid in the pot at the end',
    unit: 'L',
    formula: times(
      down.length > 0 ? minus(sum, plus(...down)) : sum,
      ranged('mixing', 'What ions, water and slurry make together, of their sum', residuals.mixing, '1'),
    ),
    note: 'Iron(II) is not taken off.',
  });
  const stays = reached.needed.leaves.flatMap((metal) => load.metals.get(metal)?.figure ?? []);
  const salt = workedOut({
    sentence: 'Salt dissolved in it',
    unit: 'g',
    formula: plus(mass, ...(nitrate ? [times(nitrate, molarMass('NO3'))] : []), ...stays),
  });
  const water = times(
    load.volume,
    modelTells({
      sentence: 'Water at the target for a litre of the liquor',
      pH: reached.pH,
      value: reached.at.water / load.volume.value.toNumber(),
      unit: 'kg/L',
    }),
  );
  return {
    volume,
    salt,
    mass: workedOut({
      sentence: 'Mass of the liquid in the pot at the end',
      unit: 'kg',
      formula: plus(water, salt, ...slurry.map((litres) => times(litres, waterDensity))),
    }),
  };
}

/** Pore liquor is what the wet sludge weighs beyond its solids, and as strong as the filtrate: nothing was washed. */
export function poresOf({ dry, wet }: Sludge, liquid: Liquid): Pores {
  const mass = workedOut({
    sentence: 'Liquor in the pores of the sludge',
    unit: 'g',
    formula: minus(wet, dry),
  });
  const salt = workedOut({
    sentence: 'Salt in the pores of the sludge',
    unit: 'g',
    formula: over(times(mass, liquid.salt), liquid.mass),
    note: 'Not washed.',
  });
  return {
    volume: workedOut({
      sentence: 'Liquor in the pores of the sludge, as a volume',
      unit: 'L',
      formula: over(times(mass, liquid.volume), liquid.mass),
    }),
    salt,
    saltOfWet: workedOut({
      sentence: 'Salt in the pores, of the wet sludge',
      unit: '%',
      formula: over(salt, wet),
    }),
  };
}
