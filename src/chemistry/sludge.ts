/** Hydroxide sludge that neutralising leaves: dry, and wet as it comes off a cloth. Source: reference/liquor.json. */
import { over, plus, times } from '../quantities/expression';
import { type Figure, workedOut } from '../quantities/figure';
import { type BaseId, bases, liquor, type Metal, metals } from '../reference/tables';
import { type BaseNeeded, broughtDown, ironTwoWith } from './base-needed';
import { ranged } from './constants';
import { composition, molarMass } from './formula';
import { type Load, metalsPresent } from './load';

export type Sludge = { readonly dry: Figure<'g'>; readonly wet: Figure<'g'> };

/** Dry solid from a metal: m × M(solid) ÷ (atoms of the metal × M(metal)); undefined where none forms. */
function solidFrom(metal: Metal, base: BaseId, load: Load): Figure<'g'> | undefined {
  const mass = load.metals.get(metal)?.figure;
  const { name } = metals[metal];
  const { solid } = broughtDown(metal, base);
  const atoms = solid === null ? undefined : composition(solid);
  if (!mass || solid === null || !atoms?.ok) return undefined;
  return workedOut({
    sentence: `Solid from ${name}, as ${solid}`,
    unit: 'g',
    formula: over(times(mass, molarMass(solid)), times(atoms.value.get(metal) ?? 1, molarMass(metal))),
  });
}

function solidFromIronTwo(base: BaseId, { ironTwo }: Load): Figure<'g'> | undefined {
  const { solid } = ironTwoWith(base);
  if (!ironTwo || solid === null) return undefined;
  return workedOut({
    sentence: `Solid from iron(II), as ${solid}`,
    unit: 'g',
    formula: over(times(ironTwo, molarMass(solid)), molarMass('Fe')),
  });
}

/** Sludge from a load treated with `needed`; undefined when nothing comes down. */
export function sludgeFrom(load: Load, needed: BaseNeeded): Sludge | undefined {
  const solids = metalsPresent(load).flatMap((m) => solidFrom(m, needed.base, load) ?? []);
  const grit = bases[needed.base].grit
    ? [
        workedOut({
          sentence: 'Grit of the base that stays',
          unit: 'g',
          formula: times(
            needed.mass,
            ranged('grit', 'Share of the base that stays as grit', liquor.grit, '%'),
          ),
        }),
      ]
    : [];
  const ironTwo = [solidFromIronTwo(needed.base, load)].filter((figure) => figure !== undefined);
  const parts = [...solids, ...ironTwo, ...grit];
  if (parts.length === 0) return undefined;
  const dry = workedOut({
    sentence: 'Sludge, dry',
    unit: 'g',
    formula: plus(...parts),
    note: 'Carbonates weigh up to a sixth more than hydroxides; salt in the pores comes on top.',
  });
  const wet = workedOut({
    sentence: 'Sludge, wet, drained through cloth',
    unit: 'g',
    formula: over(
      dry,
      ranged('cake-solids', 'Solids in a cake drained through cloth', liquor.cakeSolids, '%'),
    ),
  });
  return { dry, wet };
}
