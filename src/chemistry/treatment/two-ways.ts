/**
 * A liquor handed over as it is, or treated first: volume, mass, and what treating makes of them. Masses are balanced:
 * liquor + base + water of the slurry − carbon dioxide = wet sludge + filtrate. The filtrate stays waste until a named
 * authority says otherwise, so it is counted with what is handed over. What is usual: reference/handing-over.json.
 */
import { minus, notBelowNothing, over, plus, times } from '../../quantities/expression';
import { type Figure, workedOut } from '../../quantities/figure';
import { dosing } from '../../reference/dosing-tables';
import { handingOver } from '../../reference/handing-over-tables';
import { type BaseId, bases, type Metal } from '../../reference/tables';
import type { BaseNeeded } from '../base-needed';
import { constant, ranged } from '../constants';
import { densityOf } from '../density';
import { molarMass } from '../formula';
import { warming } from '../heat';
import { type Load, metalsPresent } from '../load';
import type { Reached } from './liquid-after';
import { outcomeOf } from './outcome';
import { lastParts } from './portion-size';
import { slurryMass, slurryWater } from './slurry-water';

export type AsItIs = { readonly volume: Figure<'L'>; readonly mass: Figure<'kg'> };

export type TreatedFirst = {
  /** As sold. */
  readonly base: Figure<'g'>;
  /** Water that the base is stirred into. */
  readonly water: Figure<'kg'>;
  /** Carbon dioxide; absent with a base that gives none. */
  readonly gas?: Figure<'kg'>;
  /** All that is in the pot at the end. */
  readonly slurry: Figure<'kg'>;
  /** Wet, at the solids content chosen; absent where nothing comes down. */
  readonly sludge?: Figure<'kg'>;
  readonly filtrate: AsItIs;
  /** Sludge and filtrate together. */
  readonly inAll: Figure<'kg'>;
  readonly portions: Figure<'1'>;
  /** Somebody stands by: a wait after each portion. */
  readonly atThePot: Figure<'h'>;
  /** It stands by itself: settling and draining. */
  readonly standing: Figure<'h'>;
  /** In the sludge, and what the base leaves in the filtrate. */
  readonly comesDown: readonly Metal[];
  readonly stays: readonly Metal[];
  /** Liquors that do not tell of the acid or of a metal: more may be needed, and more be made. */
  readonly openIn: readonly string[];
};

export type Treating = {
  /** Solids in the wet sludge; absent: as it drains through cloth. */
  readonly solids?: Figure<'%'> | undefined;
  /** Absent: from the rise in temperature. */
  readonly portions?: Figure<'1'> | undefined;
  /** Hours that somebody stands by, as they say themselves; absent: portions and waits. */
  readonly hours?: Figure<'h'> | undefined;
};

/** The liquor as it stands. Its density is worked out where nobody measured it. */
export const asItIs = (load: Load): AsItIs => ({
  volume: load.volume,
  mass: workedOut({
    sentence: 'Mass of the liquor',
    unit: 'kg',
    formula: times(load.volume, densityOf(load)),
  }),
});

/** So many that none warms the liquor more than is usual, and those in which the pH decides. */
function portionsFor(load: Load, needed: BaseNeeded): Figure<'1'> {
  const rise = warming(load, needed)?.rise;
  const warmest = constant('dosing/warmest', 'Rise allowed for one portion', dosing.warmest, 'K');
  return workedOut({
    sentence: 'Portions',
    unit: '1',
    formula: rise ? plus(over(notBelowNothing(rise), warmest), lastParts) : plus(lastParts),
    note: 'Four more than the rise in temperature asks for: there the pH decides. Foam may ask for more.',
  });
}

function hoursAtThePot(base: BaseId, portions: Figure<'1'>): Figure<'h'> {
  const wait = ranged(`wait/${base}`, 'Wait before the reading', dosing.wait[base], 'min');
  return workedOut({
    sentence: 'Hours at the pot',
    unit: 'h',
    formula: times(portions, wait),
    note: 'Common practice: a wait and a reading after each portion. Weighing, washing up and papers come on top.',
  });
}

const hoursStanding = (): Figure<'h'> =>
  workedOut({
    sentence: 'Hours it stands and drains',
    unit: 'h',
    formula: plus(
      ranged('settling', 'Settling', handingOver.settling, 'h'),
      ranged('filtering', 'Draining through cloth', handingOver.filtering, 'h'),
    ),
  });

/** kg; undefined for a base without carbonate. */
function gasFrom({ base, hydroxide }: BaseNeeded): Figure<'kg'> | undefined {
  const { carbonDioxidePerMol, hydroxidePerMol } = bases[base];
  if (Number(carbonDioxidePerMol) === 0) return undefined;
  return workedOut({
    sentence: 'Carbon dioxide that goes off',
    unit: 'kg',
    formula: times(hydroxide, Number(carbonDioxidePerMol) / Number(hydroxidePerMol), molarMass('CO2')),
    note: 'At most: some of it stays dissolved.',
  });
}

/**
 * What treating makes of the liquor: sludge and the filtrate's volume as the model has them at the target, the filtrate's mass
 * by balance.
 * @param load that `reached` was worked out for
 */
export function treatedFirst(reached: Reached, load: Load, asked: Treating = {}): TreatedFirst {
  const { needed } = reached;
  const water = slurryMass(needed.base, needed.mass);
  const { sludge: cake, filtrate: volume } = outcomeOf(reached, load, {
    slurryWater: slurryWater(needed.base, needed.mass, 'L'),
    ...(asked.solids ? { cakeSolids: asked.solids } : {}),
  });
  const gas = gasFrom(needed);
  const goesIn = plus(asItIs(load).mass, needed.mass, water);
  const slurry = workedOut({
    sentence: 'Slurry in the pot',
    unit: 'kg',
    formula: gas ? minus(goesIn, gas) : goesIn,
  });
  const sludge = cake && workedOut({ sentence: 'Sludge, wet', unit: 'kg', formula: plus(cake.wet) });
  const mass = workedOut({
    sentence: 'Mass of the filtrate',
    unit: 'kg',
    formula: sludge ? notBelowNothing(minus(slurry, sludge)) : plus(slurry),
  });
  const portions = asked.portions ?? portionsFor(load, needed);
  return {
    base: needed.mass,
    water,
    ...(gas ? { gas } : {}),
    slurry,
    ...(sludge ? { sludge } : {}),
    filtrate: { volume, mass },
    inAll: workedOut({
      sentence: 'Sludge and filtrate together',
      unit: 'kg',
      formula: sludge ? plus(sludge, mass) : plus(mass),
    }),
    portions,
    atThePot: asked.hours ?? hoursAtThePot(needed.base, portions),
    standing: hoursStanding(),
    comesDown: metalsPresent(load).filter((m) => !needed.leaves.includes(m)),
    stays: needed.leaves,
    openIn: needed.openIn,
  };
}
