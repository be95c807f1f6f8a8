/**
 * The species and solids of one set of components as flat arrays: what a solver runs over. Natural logarithms, molal scale.
 */
import {
  type EquilibriumSolid,
  type EquilibriumSpecies,
  equilibrium,
} from '../../reference/equilibrium-tables';
import { type Component, chargeOf, components, type Parts, partsIn } from './reaction';
import { type Sparse, sparse } from './sparse';
import { type Feeling, feelingOf, type Pair } from './surroundings';

/** How activity coefficients are worked out: by specific ion interaction, or after Davies for comparison. */
export type ActivityModel = 'sit' | 'davies';

export type SolidId = string;

type Known = { readonly id: string; readonly lnK: number; readonly parts: Parts };
type KnownSpecies = Known & { readonly only?: ActivityModel };

const ln10 = Math.LN10;

const species: readonly KnownSpecies[] = equilibrium.species.map((s: EquilibriumSpecies) => ({
  id: s.id,
  lnK: Number(s.logK) * ln10,
  parts: partsIn(s.reaction),
  ...(s.only ? { only: s.only } : {}),
}));

const phases: ReadonlyMap<SolidId, Known> = new Map(
  [...equilibrium.solids, equilibrium.gas].map((s: Pick<EquilibriumSolid, 'id' | 'logK' | 'reaction'>) => [
    s.id,
    { id: s.id, lnK: Number(s.logK) * ln10, parts: partsIn(s.reaction) },
  ]),
);

export const carbonDioxide: SolidId = equilibrium.gas.id;
export const isKnownSolid = (id: string): boolean => phases.has(id);

/** A solid or the gas by its name. Throws for one that the reference data does not hold. */
export function phaseOf(id: SolidId): Known {
  const known = phases.get(id);
  if (!known) throw new Error(`no solid "${id}"`);
  return known;
}

/** The metal that a solid holds; the first where it holds several. */
export function metalOf(id: SolidId): Component {
  const [metal] = [...phaseOf(id).parts.of].flatMap(([c, n]) =>
    n > 0 && chargeOf(c) > 0 && c !== 'H+' ? c : [],
  );
  if (!metal) throw new Error(`no metal in "${id}"`);
  return metal;
}

/** A phase beside the solution. `held` is there in any amount, also owed: its activity is fixed whatever it costs. */
export type PhaseAsked = {
  readonly id: SolidId;
  /** log10 of saturation at which it is in equilibrium; for a gas its partial pressure in atm. */
  readonly logSaturation?: number;
  /** log K in place of the one in the reference data, for the fresh or the aged solid. */
  readonly logK?: number;
  readonly held?: true;
};

export type Phase = {
  readonly id: SolidId;
  readonly lnK: number;
  readonly water: number;
  readonly nu: Float64Array;
  readonly held: boolean;
};

export type System = {
  readonly model: ActivityModel;
  readonly components: readonly Component[];
  /** The components first, in their order. */
  readonly species: readonly string[];
  readonly charge: Float64Array;
  readonly lnK: Float64Array;
  readonly water: Float64Array;
  /** Numbers of each component in each species, without the noughts. */
  readonly nu: Sparse;
  readonly phases: readonly Phase[];
  /** How species feel each other. */
  readonly feeling: Feeling;
};

const fits = (parts: Parts, present: ReadonlySet<Component>): boolean =>
  [...parts.of.keys()].every((c) => present.has(c));

/**
 * The system of the components that are present (water and H+ always are).
 * @param asked solids and gas that may form; those whose components are not all present are left out
 * @param held a pH that is held, as hydrogen ion given or taken in any amount
 */
export function systemOf(
  model: ActivityModel,
  present: ReadonlySet<Component>,
  asked: readonly PhaseAsked[],
  held?: { readonly pH: number },
): System {
  const list = components.filter((c) => c === 'H+' || present.has(c));
  const set = new Set<Component>(list);
  const all: readonly KnownSpecies[] = [
    ...list.map((c) => ({ id: c, lnK: 0, parts: { of: new Map([[c, 1]]), water: 0 } })),
    ...species.filter((s) => fits(s.parts, set) && (s.only === undefined || s.only === model)),
  ];
  const row = (parts: Parts): number[] => list.map((c) => parts.of.get(c) ?? 0);
  const ids = all.map((s) => s.id);
  const charge = Float64Array.from(ids, chargeOf);
  return {
    model,
    components: list,
    species: ids,
    charge,
    lnK: Float64Array.from(all, (s) => s.lnK),
    water: Float64Array.from(all, (s) => s.parts.water),
    nu: sparse(all.map((s) => row(s.parts))),
    phases: [...phasesFor(asked, set, row), ...(held ? [phOf(held.pH, list)] : [])],
    feeling: feelingOf(charge, model === 'sit' ? pairsAmong(ids) : []),
  };
}

function phasesFor(
  asked: readonly PhaseAsked[],
  set: ReadonlySet<Component>,
  row: (parts: Parts) => number[],
): Phase[] {
  return asked.flatMap((a) => {
    const known = phaseOf(a.id);
    if (!fits(known.parts, set)) return [];
    return {
      id: a.id,
      lnK: (a.logK === undefined ? known.lnK : a.logK * ln10) + (a.logSaturation ?? 0) * ln10,
      water: known.parts.water,
      nu: Float64Array.from(row(known.parts)),
      held: a.held === true,
    };
  });
}

const phOf = (pH: number, list: readonly Component[]): Phase => ({
  id: 'pH',
  lnK: -pH * ln10,
  water: 0,
  nu: Float64Array.from(list, (c) => (c === 'H+' ? 1 : 0)),
  held: true,
});

function pairsAmong(ids: readonly string[]): Pair[] {
  const at = new Map(ids.map((id, i) => [id, i]));
  return equilibrium.interactions.values.flatMap(({ cation, anion, epsilon }) => {
    const [a, b] = [at.get(cation), at.get(anion)];
    return a === undefined || b === undefined || Number(epsilon) === 0
      ? []
      : { a, b, epsilon: Number(epsilon) * ln10 };
  });
}
