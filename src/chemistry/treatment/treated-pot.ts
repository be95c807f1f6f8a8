/** A load as the equilibrium model takes it: substances in so much water, and the solids and gas that a base may make. */
import type { Figure } from '../../quantities/figure';
import { equilibrium } from '../../reference/equilibrium-tables';
import { type BaseId, bases, type Metal } from '../../reference/tables';
import { densityOf } from '../density';
import type { Gas, LiquorMade, SolidAsked, Titration } from '../equilibrium/pot';
import type { Equilibrium } from '../equilibrium/solve';
import type { SolidId } from '../equilibrium/system';
import { molarMass } from '../formula';
import { type Load, metalsPresent, molesOf, molesOfIronTwo } from '../load';

/** Hydroxide that a stage before put in with a base. */
export type PutBefore = `${BaseId} before`;

/** One substance of which it is known how much; `acid` is the free acid, `carbonate` what a stage before left of its own. */
export type PotPart = {
  readonly of: 'acid' | 'iron(II)' | Metal | PutBefore | 'carbonate';
  readonly amount: Figure<'mol'>;
};

/** The base of a stage before; undefined of any other part. */
export const baseBefore = (of: PotPart['of']): BaseId | undefined =>
  of.endsWith(' before') ? (of.slice(0, -' before'.length) as BaseId) : undefined;

/** The metal of a part as its liquor was told; undefined of any other part. */
export const metalOf = (of: PotPart['of']): Metal | undefined =>
  Object.hasOwn(nitrates, of) ? (of as Metal) : undefined;

export type TreatedPot = {
  readonly base: BaseId;
  readonly parts: readonly PotPart[];
  /** kg; it hardly matters for the dose, so its range is left out. */
  readonly waterKilograms: number;
};

/** Metals as nitrates in the charge that the model gives them. */
const nitrates: Readonly<Record<Metal, string>> = {
  Cu: 'Cu(NO3)2',
  Ni: 'Ni(NO3)2',
  Zn: 'Zn(NO3)2',
  Fe: 'Fe(NO3)3',
  Ag: 'AgNO3',
  Pd: 'Pd(NO3)2',
  Pb: 'Pb(NO3)2',
  Sn: 'Sn(NO3)4',
  Ba: 'Ba(NO3)2',
  Al: 'Al(NO3)3',
};

/** Tin stands in the liquor as an acid of its own, without nitrate: its nitrate less the acid that water makes of it. */
const tinNitrate = 4;

/** Solids that come down fresh within hours, the most soluble of their kind. Source: reference/equilibrium.json. */
const hydroxides: readonly string[] = [
  'Cu(OH)2(s)',
  'Ni(OH)2(s)',
  'Zn(OH)2(am)',
  'Ferrihydrite',
  'Ag2O(s)',
  'PbO:0.33H2O(s)',
  'Pd(OH)2(am)',
  'SnO2(am)',
  'Al(OH)3(am)',
  'Ba(NO3)2(s)',
  'Ca(OH)2(portlandite)',
  'Mg(OH)2(brucite)',
];
const carbonates: readonly string[] = [
  'Malachite',
  'NiCO3(s)',
  'ZnCO3:H2O(s)',
  'Ag2CO3(s)',
  'Cerussite',
  'Hydrocerussite',
  'Witherite',
  'Calcite',
];

const isCarbonate = (base: BaseId): boolean => Number(bases[base].carbonDioxidePerMol) > 0;

/** Undefined where the free acid is not known: no curve is better than a wrong one. */
export function treatedPot(load: Load, base: BaseId): TreatedPot | undefined {
  const acid = load.freeAcid.figure;
  if (!acid) return undefined;
  const ironTwo = molesOfIronTwo(load);
  const metals = metalsPresent(load).flatMap((metal): PotPart[] => {
    const amount = molesOf(load, metal);
    return amount ? [{ of: metal, amount }] : [];
  });
  const parts: readonly PotPart[] = [
    { of: 'acid', amount: acid },
    ...metals,
    ...(ironTwo ? [{ of: 'iron(II)' as const, amount: ironTwo }] : []),
  ];
  return { base, parts, waterKilograms: waterIn(load, parts) };
}

/** Mass of the liquor less what is dissolved, kg. */
function waterIn(load: Load, parts: readonly PotPart[]): number {
  const liquor = load.volume.value.times(densityOf(load).value).toNumber();
  let dissolved = 0;
  for (const { of, amount } of parts) {
    const metal = metalOf(of);
    const formula = metal ? nitrates[metal] : of === 'acid' ? 'HNO3' : 'Fe(NO3)2';
    dissolved += (amount.value.toNumber() * molarMass(formula).value.toNumber()) / 1000;
  }
  // A load that claims more salt than liquor is wrong, and treated as a very strong one.
  return Math.max(liquor - dissolved, liquor / 3);
}

/** mol of each part, as it stands or changed. */
export type Amounts = ReadonlyMap<PotPart['of'], number>;

export const likely = (pot: TreatedPot): Amounts =>
  new Map(pot.parts.map(({ of, amount }) => [of, amount.value.toNumber()]));

/** All parts at the low or at the high end of their ranges at once. */
export const atEnd = (pot: TreatedPot, end: 'low' | 'high'): Amounts =>
  new Map(pot.parts.map(({ of, amount }) => [of, Math.max(0, amount[end].toNumber())]));

/** The base that is left of one once its carbonic acid is out of it. */
export const withoutCarbonate = (base: BaseId): BaseId => {
  if (base === 'limestone') return 'hydrated-lime';
  return isCarbonate(base) ? 'caustic-soda' : base;
};

function liquorOf(pot: TreatedPot, amounts: Amounts): LiquorMade {
  const substances = new Map<string, number>();
  const add = (formula: string, n: number): void => {
    substances.set(formula, (substances.get(formula) ?? 0) + n);
  };
  for (const [of, n] of amounts) {
    const before = baseBefore(of);
    const metal = metalOf(of);
    if (of === 'acid') add('HNO3', n);
    else if (of === 'carbonate') add('CO2', n);
    else if (before) {
      const { formula, hydroxidePerMol } = bases[withoutCarbonate(before)];
      add(formula, n / Number(hydroxidePerMol));
    }
    // Air makes it iron(III) before it comes down: one acid less than iron(III) nitrate.
    else if (of === 'iron(II)') {
      add(nitrates.Fe, n);
      add('HNO3', -n);
    } else if (metal) {
      add(nitrates[metal], n);
      if (metal === 'Sn') add('HNO3', -tinNitrate * n);
    }
  }
  return { substances, waterKilograms: pot.waterKilograms };
}

/**
 * What nobody knows of how it goes: whether basic copper nitrate comes down first, as it does in nitrate liquor (Hidmi and
 * Edwards 1999), or copper hydroxide at once; whether nickel hydroxide is fresh or aged; whether carbon dioxide bubbles out
 * at 1 atm and is gone, or stirring takes it down to the air's.
 */
export type Turn = {
  readonly copperFirst: 'basic-nitrate' | 'hydroxide';
  readonly nickel: 'fresh' | 'aged';
  readonly gas: 'bubbles' | 'stirred-out';
};
export const likelyTurn: Turn = { copperFirst: 'basic-nitrate', nickel: 'fresh', gas: 'bubbles' };

/** The turns that may make a difference in a pot, the likely one first. */
export function turnsOf(pot: TreatedPot): readonly Turn[] {
  const has = (of: PotPart['of']): boolean => pot.parts.some((part) => part.of === of);
  const coppers: readonly Turn['copperFirst'][] = has('Cu')
    ? ['basic-nitrate', 'hydroxide']
    : ['basic-nitrate'];
  const nickels: readonly Turn['nickel'][] = has('Ni') ? ['fresh', 'aged'] : ['fresh'];
  const gases: readonly Turn['gas'][] = isCarbonate(pot.base) ? ['bubbles', 'stirred-out'] : ['bubbles'];
  return gases.flatMap((gas) =>
    nickels.flatMap((nickel) => coppers.map((copperFirst) => ({ copperFirst, nickel, gas }))),
  );
}

const basicNitrate = 'Cu2(OH)3NO3(s)';
const nickelHydroxide = 'Ni(OH)2(s)';
const agedNickel = equilibrium.solids.find(({ id }) => id === nickelHydroxide)?.low;

/** The titration of a pot with its base, pure. */
export function titrationOf(pot: TreatedPot, amounts: Amounts, turn: Turn = likelyTurn): Titration {
  const withGas = isCarbonate(pot.base);
  const ids = [
    ...hydroxides,
    ...(turn.copperFirst === 'basic-nitrate' ? [basicNitrate] : []),
    ...(withGas || amounts.has('carbonate') ? carbonates : []),
  ];
  const solids = ids.map(
    (id): SolidAsked =>
      id === nickelHydroxide && turn.nickel === 'aged' && agedNickel !== undefined
        ? { id, logK: Number(agedNickel) }
        : { id },
  );
  const gas: Gas = withGas ? (turn.gas === 'bubbles' ? 'leaves' : 'open') : 'none';
  return { model: 'sit', liquor: liquorOf(pot, amounts), reagent: bases[pot.base].formula, solids, gas };
}

/** Hydroxide that acid and metals still take in all by charge, mol: the size of the question. */
export function chargeOfPot(amounts: Amounts): number {
  const each: Partial<Record<PotPart['of'], number>> = { acid: 1, Fe: 3, Al: 3, Ag: 1, Sn: 0, Ba: 0 };
  let sum = 0;
  for (const [of, n] of amounts) sum += (baseBefore(of) ? -1 : (each[of] ?? 2)) * n;
  return Math.max(0, sum);
}

/** Alkali of lime water at pH 12, mol/kg: what it takes beyond the charge to see how far a base goes. */
const alkali = 0.06;

/** Hydroxide after which the ladder of a pot is counted, mol: charge, barium with a carbonate, and alkali of its own. */
export function sizeOf(pot: TreatedPot, amounts: Amounts): number {
  const barium = isCarbonate(pot.base) ? 2 * (amounts.get('Ba') ?? 0) : 0;
  return chargeOfPot(amounts) + barium + alkali * pot.waterKilograms;
}

/** The solid as which a base lies in the pot once it no longer dissolves. */
const baseAsSolid: Readonly<Partial<Record<BaseId, SolidId>>> = {
  'hydrated-lime': 'Ca(OH)2(portlandite)',
  quicklime: 'Ca(OH)2(portlandite)',
  'magnesium-hydroxide': 'Mg(OH)2(brucite)',
  limestone: 'Calcite',
};

/** mol of hydroxide that lies in the pot as the base itself: more of the base changes nothing any more. */
export function undissolved(base: BaseId, at: Equilibrium): number {
  const solid = baseAsSolid[base];
  return solid === undefined ? 0 : (at.solids.get(solid) ?? 0) * Number(bases[base].hydroxidePerMol);
}
