/**
 * Base needed to neutralise a load, by stoichiometry: free acid takes one hydroxide each, a metal as many as its charge
 * in nitrate. n(OH) = n(HNO₃) + Σ z·n(metal), then mass = n × M ÷ hydroxide per mol ÷ purity × (1 + excess).
 * The low end is for the first portions, the high end for buying. Source of the sum against an equilibrium model:
 * reference/liquor.json, baseDemand.
 */
import Decimal from 'decimal.js';
import { over, plus, times } from '../quantities/expression';
import { type Figure, given, read, within, workedOut } from '../quantities/figure';
import type { Written } from '../quantities/written';
import { iron } from '../reference/iron-tables';
import { type BaseId, bases, liquor, type Metal, metals } from '../reference/tables';
import { basicityStated, purityFrom } from './basicity';
import { ranged, sourceOf } from './constants';
import { molarMass } from './formula';
import { type Load, metalsPresent, molesOf, molesOfIronTwo, openMetals } from './load';

/** How pure the base in the workshop is, or what it is worth in acid by its basicity factor (ASTM C400). */
export type StatedPurity =
  | { readonly purity: Written<'%'>; readonly origin: string }
  | { readonly basicity: Written<'1'>; readonly origin: string };

export type BaseNeeded = {
  readonly base: BaseId;
  /** Hydroxide taken by each part of the load, mol. */
  readonly hydroxide: Figure<'mol'>;
  /** As sold, g. */
  readonly mass: Figure<'g'>;
  /** Metals that this base does not bring down. */
  readonly leaves: readonly Metal[];
  /** Metals whose amount is not fully known, and the liquors that do not tell. */
  readonly openIn: readonly string[];
};

const spelled = ['no', 'one', 'two', 'three'];

/** How a base brings a metal down: hydroxides spent on each, the solid, who says so. None and no solid where it does not. */
export function broughtDown(metal: Metal, base: BaseId) {
  const { leaves, alsoTakes } = bases[base];
  const own = alsoTakes?.metals[metal];
  if (alsoTakes && own) return { each: Number(own.hydroxide), solid: own.solid, told: alsoTakes };
  if (leaves?.metals.includes(metal)) return { each: 0, solid: null, told: leaves };
  return { each: Number(metals[metal].hydroxideTaken), solid: metals[metal].solid, told: metals[metal] };
}

/** Moles of hydroxide a metal takes; undefined when it takes none or is not there. */
function hydroxideFor(metal: Metal, base: BaseId, load: Load): Figure<'mol'> | undefined {
  const n = molesOf(load, metal);
  const { each, told } = broughtDown(metal, base);
  if (!n || each === 0) return undefined;
  return workedOut({
    sentence: `${metals[metal].name.replace(/^./, (c) => c.toUpperCase())} takes ${spelled[each] ?? each} each`,
    unit: 'mol',
    formula: times(each, n),
    sources: [sourceOf(told)],
    ...(told.note === undefined ? {} : { note: told.note }),
  });
}

/** Hydroxides that a mole of iron(II) takes with `base`, none where it stays; and the solid, as air gets at it. */
export const ironTwoWith = (base: BaseId) =>
  iron.ironTwo.leftBy.includes(base)
    ? { each: 0, solid: null }
    : { each: Number(iron.ironTwo.hydroxide), solid: iron.ironTwo.solid };

function hydroxideForIronTwo(base: BaseId, load: Load): Figure<'mol'> | undefined {
  const n = molesOfIronTwo(load);
  const { each } = ironTwoWith(base);
  if (!n || each === 0) return undefined;
  return workedOut({
    sentence: 'Iron(II) takes two each',
    unit: 'mol',
    formula: times(each, n),
    sources: [sourceOf(iron.ironTwo)],
    ...(iron.ironTwo.note === undefined ? {} : { note: iron.ironTwo.note }),
  });
}

/** The purity the person stated, to ± 1 %, or by its basicity factor; else what is usual for the grade. */
function purityOf(base: BaseId, stated: StatedPurity | undefined): Figure<'%'> {
  if (!stated) return ranged(`purity/${base}`, 'Purity, usual for this grade', bases[base].purity, '%');
  if ('basicity' in stated)
    return purityFrom(base, basicityStated({ factor: stated.basicity, origin: stated.origin }));
  return read({
    origin: stated.origin,
    sentence: 'Purity as stated on the bag',
    written: stated.purity,
    unit: '%',
    how: 'stated',
    spread: () => within(1),
  });
}

const oneEach = (acid: Figure<'mol'>): Figure<'mol'> =>
  workedOut({ sentence: 'Free acid takes one each', unit: 'mol', formula: times(1, acid) });

/** What usually goes beyond the sum of acid and metals. */
const overTheSum = (base: BaseId): Figure<'%'> =>
  ranged(`excess/${base}`, 'Excess over the sum', bases[base].excess, '%');

/**
 * What usually goes beyond what the equilibrium model says: coated grit; for a base that dissolves what the air takes,
 * since the model counts bicarbonate itself.
 */
export const overTheModel = (base: BaseId): Figure<'%'> =>
  bases[base].grit
    ? overTheSum(base)
    : ranged('excess/soluble', 'Excess over the model', bases['caustic-soda'].excess, '%');

/** The base as sold that holds one mole of hydroxide: molar mass ÷ hydroxides ÷ purity, g/mol. */
export function perHydroxide(base: BaseId, stated?: StatedPurity): Figure<'g/mol'> {
  const { formula, hydroxidePerMol, name } = bases[base];
  const pure = workedOut({
    sentence: `${name}, pure, for one mole of base`,
    unit: 'g/mol',
    formula: over(molarMass(formula), Number(hydroxidePerMol)),
  });
  return workedOut({
    sentence: `${name} as sold, for one mole of base`,
    unit: 'g/mol',
    formula: over(pure, purityOf(base, stated)),
  });
}

/**
 * The base as sold that gives so much hydroxide: purity and excess counted, g.
 * @param excess what goes beyond the sum: grit that gets coated, what the air takes
 */
export function asSold(
  base: BaseId,
  hydroxide: Figure<'mol'>,
  excess: Figure<'%'>,
  stated?: StatedPurity,
): Figure<'g'> {
  const surplus = workedOut({
    sentence: 'With an excess over the sum',
    unit: '1',
    formula: plus(1, excess),
  });
  return workedOut({
    sentence: `${bases[base].name} as sold`,
    unit: 'g',
    formula: times(hydroxide, perHydroxide(base, stated), surplus),
  });
}

/**
 * Base needed for a load; undefined when its free acid is not known, since no figure is better than a wrong one.
 * @param stated purity of the base in the workshop, per cent by mass of the pure substance
 */
export function baseNeeded(base: BaseId, load: Load, stated?: StatedPurity): BaseNeeded | undefined {
  const acid = load.freeAcid.figure;
  if (!acid) return undefined;
  const leaves = bases[base].leaves?.metals ?? [];
  const present = metalsPresent(load);
  const taken = [
    ...present.flatMap((m) => hydroxideFor(m, base, load) ?? []),
    ...[hydroxideForIronTwo(base, load)].filter((figure) => figure !== undefined),
  ];
  const hydroxide = workedOut({
    sentence: 'Base needed in all',
    unit: 'mol',
    formula: times(
      plus(oneEach(acid), ...taken),
      ranged('base-demand', 'The sum against an equilibrium model', liquor.baseDemand, '1'),
    ),
    ...(bases[base].leaves ? { sources: [sourceOf(bases[base].leaves)] } : {}),
  });
  const mass = asSold(base, hydroxide, overTheSum(base), stated);
  const openIn = [...new Set([...load.freeAcid.openIn, ...openMetals(load)])];
  return { base, hydroxide, mass, leaves: leaves.filter((m) => present.includes(m)), openIn };
}

/** Carbon dioxide that a carbonate gives off, L at 20 °C; undefined for a base without carbonate. */
export function carbonDioxide(needed: BaseNeeded): Figure<'L'> | undefined {
  const { carbonDioxidePerMol, hydroxidePerMol } = bases[needed.base];
  const perHydroxide = new Decimal(carbonDioxidePerMol).div(hydroxidePerMol);
  if (perHydroxide.isZero()) return undefined;
  return workedOut({
    sentence: 'Carbon dioxide that foams out',
    unit: 'L',
    formula: times(
      needed.hydroxide,
      perHydroxide.toNumber(),
      given({
        origin: 'constant/gas-volume',
        sentence: 'Volume of one mole of gas at 20 °C',
        value: liquor.gasVolume.value,
        unit: 'L/mol',
        how: 'constant',
        spread: within(liquor.gasVolume.uncertainty),
        decimals: 2,
        sources: [sourceOf(liquor.gasVolume)],
      }),
    ),
    note: 'Never in a closed vessel; fill it to a third at most.',
  });
}
