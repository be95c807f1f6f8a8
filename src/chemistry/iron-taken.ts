/** What takes iron in a nitrate liquor, each part with its working, and what the acid it takes may give off. */
import Decimal from 'decimal.js';
import { over, plus, times } from '../quantities/expression';
import { between, type Figure, given, workedOut } from '../quantities/figure';
import { iron } from '../reference/iron-tables';
import { type BaseId, liquor, metals } from '../reference/tables';
import { constant, ranged, sourceOf } from './constants';
import { molarMass, ratio } from './formula';
import type { Load } from './load';

/** `as-it-is`: iron goes into the liquor as it stands. `brought-down`: base first, to about pH 2 to 3. */
export type AcidFirst = 'as-it-is' | 'brought-down';

const source = sourceOf(iron.reactions);

/** Nobler than iron: each goes down wholly as far as base and iron are counted. */
export const noble = ['Ag', 'Pd'] as const;

const ironFor = (metal: keyof typeof iron.reactions.cementing, mass: Figure<'g'>, name: string) =>
  workedOut({
    sentence: `Iron that ${name} takes`,
    unit: 'g',
    formula: times(
      over(mass, molarMass(metal)),
      ratio(iron.reactions.cementing[metal], 'Fe', { Cu: 'Cu+2', Ag: 'Ag+', Pd: 'Pd+2' }[metal]).toNumber(),
      molarMass('Fe'),
    ),
    sources: [source],
  });

/** Free acid as the iron goes in: as it is, or what is left at pH 2 to 3; never more than there is. */
export function acidAtIron(load: Load, acid: Figure<'mol'>, first: AcidFirst): Figure<'mol'> {
  const { value, note } = iron.acidBroughtTo;
  if (first === 'as-it-is' || acid.value.div(load.volume.value).lte(value)) return acid;
  return workedOut({
    sentence: 'Free acid left as the iron goes in',
    unit: 'mol',
    formula: times(ranged('iron/acid', 'Free acid at pH 2 to 3', iron.acidBroughtTo, 'mol/L'), load.volume),
    ...(note === undefined ? {} : { note }),
  });
}

/** Share of thin copper that is usually left: at the high end all of it. Its origin is of this strength alone. */
function shareThatStays(strength: Decimal): Figure<'1'> {
  const { value, low, note } = iron.copperLeft;
  const share = new Decimal(value).div(strength);
  return given({
    origin: `iron/copper-left/of ${strength} mg/L`,
    sentence: 'Share of the copper that is usually left',
    value: share,
    unit: '1',
    how: 'constant',
    spread: between(new Decimal(low).div(strength), share, 1),
    decimals: 3,
    formulaDecimals: 6,
    sources: [sourceOf(iron.copperLeft)],
    ...(note === undefined ? {} : { note }),
  });
}

/** Copper that stays dissolved: what is usual, never more than there is, at neither end. */
export function copperThatStays(load: Load, copper: Figure<'g'>): Figure<'g'> {
  const strength = copper.value.div(load.volume.value).times(1000);
  if (strength.lte(iron.copperLeft.value)) return copper;
  const sentence = 'Copper that stays dissolved';
  const usual = workedOut({
    sentence,
    unit: 'g',
    formula: times(
      ranged('iron/copper-left', 'Copper left a litre, usual', iron.copperLeft, 'mg/L'),
      load.volume,
    ),
  });
  if (usual.high.lte(copper.value)) return usual;
  return workedOut({ sentence, unit: 'g', formula: times(copper, shareThatStays(strength)) });
}

export type Parts = {
  readonly acid: Figure<'mol'>;
  readonly copper: Figure<'g'>;
  readonly ironThree?: Figure<'g'>;
  readonly taken: readonly Figure<'g'>[];
};

/** What takes iron, each with its own working. */
export function partsOf(load: Load, copper: Figure<'g'>, acid: Figure<'mol'>): Parts {
  const ironThree = load.metals.get('Fe')?.figure;
  const others = noble.flatMap((metal) => {
    const mass = load.metals.get(metal)?.figure;
    return mass ? [ironFor(metal, mass, metals[metal].name)] : [];
  });
  const forIronThree = ironThree && [
    workedOut({
      sentence: 'Iron that iron(III) takes',
      unit: 'g' as const,
      formula: times(ironThree, ratio(iron.reactions.ironThree, 'Fe', 'Fe+3').toNumber()),
      sources: [source],
    }),
  ];
  const forAcid = workedOut({
    sentence: 'Iron that free acid takes',
    unit: 'g',
    formula: times(
      acid,
      ranged('iron/acid-takes', 'Moles of iron for a mole of acid', iron.ironForAcid, '1'),
      molarMass('Fe'),
    ),
    sources: [source],
  });
  return {
    acid,
    copper,
    ...(ironThree ? { ironThree } : {}),
    taken: [ironFor('Cu', copper, 'copper'), ...others, ...(forIronThree ?? []), forAcid],
  };
}

/** Iron that goes into the liquor: no more than what it drives out, and the acid, leave nitrate for. */
export const dissolvedFrom = ({ taken }: Parts): Figure<'g'> =>
  workedOut({ sentence: 'Iron that dissolves', unit: 'g', formula: plus(...taken) });

/** Ammonium and nitric oxide: from none to all that the acid the iron takes can make. */
export const fromAcid = (acid: Figure<'mol'>) => ({
  ammonium: workedOut({
    sentence: 'Ammonium that may form',
    unit: 'mol',
    formula: times(acid, ranged('iron/ammonium', 'Ammonium for a mole of acid', iron.ammonium, '1')),
    sources: [source],
    note: 'It holds copper and nickel up against lime.',
  }),
  nitricOxide: workedOut({
    sentence: 'Nitric oxide that may form',
    unit: 'L',
    formula: times(
      acid,
      ranged('iron/nitric-oxide', 'Nitric oxide for a mole of acid', iron.nitricOxide, '1'),
      constant('gas-volume', 'Volume of one mole of gas at 20 °C', liquor.gasVolume, 'L/mol'),
    ),
    sources: [source],
  }),
});

/**
 * Base that ammonium takes as it lets its hydrogen go, g: likely none, since nobody knows how much forms, and the most that
 * can form at the high end. None with a base that does not come to that pH.
 * @param each grams of base for a mole of hydroxide
 */
export function baseForAmmonium(
  acid: Figure<'mol'>,
  base: BaseId,
  each: Figure<'g/mol'>,
): Figure<'g'> | undefined {
  const { ammonium, ammoniumTakes } = iron;
  if (ammoniumTakes.notWith.includes(base)) return undefined;
  return workedOut({
    sentence: 'Base that ammonium may take',
    unit: 'g',
    formula: times(
      acid,
      given({
        origin: 'iron/ammonium-takes',
        sentence: 'Ammonium that takes base, for a mole of acid',
        value: 0,
        unit: '1',
        how: 'constant',
        spread: between(0, 0, ammonium.high),
        decimals: 0,
        sources: [sourceOf(ammoniumTakes), sourceOf(ammonium)],
      }),
      Number(ammoniumTakes.hydroxide),
      each,
    ),
    sources: [sourceOf(ammoniumTakes)],
    note: ammoniumTakes.note,
  });
}
