/**
 * Hydroxide sludge that neutralising leaves: dry, and wet as it comes off a cloth. The solids are those that a plan says, or,
 * without one, what stoichiometry makes of the metals that the base brings down. Source: reference/liquor.json.
 */
import { over, plus, times } from '../quantities/expression';
import { type Figure, workedOut } from '../quantities/figure';
import { bases, liquor, type Metal, metals } from '../reference/tables';
import { type BaseNeeded, broughtDown, ironTwoWith } from './base-needed';
import { ranged } from './constants';
import { molarMass, parsed } from './formula';
import { type Load, metalsPresent } from './load';

export type Sludge = { readonly dry: Figure<'g'>; readonly wet: Figure<'g'> };

/** A solid that a metal of the load goes into, and what share of the metal does; absent: all of it. */
export type SolidShare = {
  readonly of: Metal | 'iron(II)';
  readonly solid: string;
  readonly share?: Figure<'1'>;
};

export type SludgeAsked = {
  /** What comes down by the plan; absent: by stoichiometry. */
  readonly solids?: readonly SolidShare[];
  /** Solids in the wet cake; absent: as it drains through cloth. */
  readonly cakeSolids?: Figure<'%'>;
};

/** What the base brings down by stoichiometry, but for what it leaves. */
function byStoichiometry(load: Load, { base, leaves }: BaseNeeded): readonly SolidShare[] {
  const metals = metalsPresent(load).filter((metal) => !leaves.includes(metal));
  const solids = metals.map((of) => ({ of, solid: broughtDown(of, base).solid }));
  const ironTwo = { of: 'iron(II)' as const, solid: load.ironTwo ? ironTwoWith(base).solid : null };
  return [...solids, ironTwo].flatMap(({ of, solid }) => (solid === null ? [] : { of, solid }));
}

/** Dry solid from a metal: m × M(solid) ÷ (atoms of the metal × M(metal)); undefined where none forms. */
function solidFrom({ of, solid, share }: SolidShare, load: Load): Figure<'g'> | undefined {
  const [metal, mass] =
    of === 'iron(II)' ? (['Fe', load.ironTwo] as const) : ([of, load.metals.get(of)?.figure] as const);
  if (!mass) return undefined;
  const name = of === 'iron(II)' ? of : metals[of].name;
  return workedOut({
    sentence: `Solid from ${name}, as ${solid}`,
    unit: 'g',
    formula: over(
      times(mass, molarMass(solid), ...(share ? [share] : [])),
      times(parsed(solid).get(metal) ?? 1, molarMass(metal)),
    ),
  });
}

const gritOf = ({ base, mass }: BaseNeeded): readonly Figure<'g'>[] =>
  bases[base].grit
    ? [
        workedOut({
          sentence: 'Grit of the base that stays',
          unit: 'g',
          formula: times(mass, ranged('grit', 'Share of the base that stays as grit', liquor.grit, '%')),
        }),
      ]
    : [];

/** Sludge from a load treated with `needed`; undefined when nothing comes down. */
export function sludgeFrom(load: Load, needed: BaseNeeded, asked: SludgeAsked = {}): Sludge | undefined {
  const solids = (asked.solids ?? byStoichiometry(load, needed)).flatMap((s) => solidFrom(s, load) ?? []);
  const parts = [...solids, ...gritOf(needed)];
  if (parts.length === 0) return undefined;
  const dry = workedOut({
    sentence: 'Sludge, dry',
    unit: 'g',
    formula: plus(...parts),
    note: asked.solids
      ? 'Salt in the pores comes on top.'
      : 'Carbonates weigh up to a sixth more than hydroxides; salt in the pores comes on top.',
  });
  const wet = workedOut({
    sentence: asked.cakeSolids ? 'Sludge, wet' : 'Sludge, wet, drained through cloth',
    unit: 'g',
    formula: over(
      dry,
      asked.cakeSolids ??
        ranged('cake-solids', 'Solids in a cake drained through cloth', liquor.cakeSolids, '%'),
    ),
  });
  return { dry, wet };
}
