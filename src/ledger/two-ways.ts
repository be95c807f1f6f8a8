/**
 * Waste handed over as it is, or treated first, side by side: for one container or for all that hold liquid. Only free
 * liquor is compared. It says what either way comes to, and never which one to take. Needs the equilibrium model, so only
 * pages that show it may import it.
 */
import { type Load, metalsPresent } from '../chemistry/load';
import { type BaseTo, baseTo } from '../chemistry/treatment/base-to';
import type { Reached } from '../chemistry/treatment/liquid-after';
import {
  type AsItIs,
  asItIs,
  type TreatedFirst,
  type Treating,
  treatedFirst,
} from '../chemistry/treatment/two-ways';
import { plus } from '../quantities/expression';
import { type Figure, workedOut } from '../quantities/figure';
import type { Unit } from '../quantities/unit';
import { type BaseId, bases, type Metal } from '../reference/tables';
import { baseForPh, perState } from './before-treatment';
import { containerFigures, type NoBase } from './container-figures';
import { type Bill, type Money, moneyFor } from './money';
import { purityStated } from './purity-stated';
import type { State } from './state';
import { allowedNow } from './treatment';
import { planFor } from './treatment-plan';

/** `pH` from 2 to 12.5. */
export type TwoWaysAsked = Treating & { readonly base: BaseId; readonly pH: number };

/** Why nothing is said of treating: also where no free liquor is in it. */
export type NotTreated =
  | { readonly code: NoBase | 'no-liquid' | 'model-failed' }
  /** The base ends at this pH. */
  | { readonly code: 'stalls'; readonly pH: number };

export type WayAsItIs = AsItIs & {
  readonly money: Money;
  /** Metals it holds, as nitrates. */
  readonly metals: readonly Metal[];
};
export type WayTreated = TreatedFirst & {
  readonly money: Money;
  /** The sludge may hold carbonates beside hydroxides. */
  readonly carbonate: boolean;
};

export type TwoWays = {
  /** Those counted on both sides. */
  readonly counted: readonly string[];
  readonly leftOut: readonly { readonly containerId: string; readonly why: NotTreated }[];
  /** Of the containers counted; of the one asked for also where nothing can be said of treating it. */
  readonly asItIs?: WayAsItIs;
  readonly treated?: WayTreated;
  /** When the oldest waste of those went in: treating does not change it. */
  readonly firstWasteIn: string | null;
  /** Containers that the comparison is about: those counted, or the one asked for. */
  readonly about: readonly string[];
  /** Whether the local rules let waste be treated here. */
  readonly allowed: 'yes' | 'no' | 'not-stated';
  /** Wet residue in those containers, which is on neither side. */
  readonly residueToo: boolean;
};

type Compared = { readonly containerId: string; readonly load: Load; readonly reached: Reached };

/** The dose for the free liquor: that of the whole contents where no residue lies in them. */
const doseFor = perState(
  (state: State, containerId: string, base: BaseId, pH: number): BaseTo | undefined => {
    const { liquid, residues } = containerFigures(state, containerId).contents;
    if (residues.length === 0) return baseForPh(state, containerId, base, pH);
    return liquid && baseTo(base, liquid, pH, purityStated(state, base));
  },
);

function comparedOf(state: State, containerId: string, { base, pH }: TwoWaysAsked): Compared | NotTreated {
  const { contents, noBase } = containerFigures(state, containerId);
  const load = contents.liquid;
  if (noBase !== null && noBase !== 'acid-open') return { code: noBase };
  if (!load) return { code: 'no-liquid' };
  const to = doseFor(state, containerId, base, pH);
  if (!to) return { code: 'acid-open' };
  if (to.ok) return { containerId, load, reached: to };
  return to.why.code === 'model-failed' ? { code: 'model-failed' } : to.why;
}

/** Portions as the plan of the container has them; undefined where it has none. */
function plannedPortions(state: State, containerId: string, { base, pH }: TwoWaysAsked) {
  const plan = planFor(state, containerId, { stages: [{ base, pH }] });
  return plan?.ok ? plan.value.stages[0]?.count : undefined;
}

const treatedIn = (
  state: State,
  { containerId, load, reached }: Compared,
  asked: TwoWaysAsked,
): TreatedFirst =>
  treatedFirst(reached, load, {
    ...asked,
    portions: asked.portions ?? plannedPortions(state, containerId, asked),
  });

const isCompared = (found: Compared | NotTreated): found is Compared => !('code' in found);

/** The sum of one figure of each container; the figure itself where there is one. */
function summed<U extends Unit>(figures: readonly Figure<U>[]): Figure<U> {
  const [first, ...others] = figures;
  if (!first) throw new Error('no container to add up');
  if (others.length === 0) return first;
  return workedOut({
    sentence: `${first.sentence}, all containers`,
    unit: first.unit,
    formula: plus(...figures),
  });
}

const summedIfAny = <U extends Unit>(figures: readonly (Figure<U> | undefined)[]): Figure<U> | undefined => {
  const there = figures.filter((figure) => figure !== undefined);
  return there.length === 0 ? undefined : summed(there);
};

const liquids = (sentence: string, { volume, mass }: AsItIs): Bill => ({
  line: 'liquid',
  sentence,
  of: [
    { price: 'collection-per-litre', amount: volume },
    { price: 'collection-per-kilogram', amount: mass },
  ],
});

const visit: Bill = {
  line: 'visit',
  sentence: 'One visit of the collector',
  of: [{ price: 'collection-visit' }],
};

function asItIsOf(state: State, loads: readonly Load[]): WayAsItIs {
  const each = loads.map(asItIs);
  const all = { volume: summed(each.map((e) => e.volume)), mass: summed(each.map((e) => e.mass)) };
  const money = moneyFor(state, [liquids('Collection of the liquor', all), visit]);
  return { ...all, money, metals: [...new Set(loads.flatMap(metalsPresent))] };
}

/** Hours of one container settle beside those of another, so they are not added; those at the pot are. */
function together(each: readonly TreatedFirst[], hours: Figure<'h'> | undefined): TreatedFirst {
  const [first] = each;
  if (!first) throw new Error('no container to add up');
  const sum = <U extends Unit>(of: (t: TreatedFirst) => Figure<U>): Figure<U> => summed(each.map(of));
  const gas = summedIfAny(each.map((t) => t.gas));
  const sludge = summedIfAny(each.map((t) => t.sludge));
  return {
    base: sum((t) => t.base),
    water: sum((t) => t.water),
    ...(gas ? { gas } : {}),
    slurry: sum((t) => t.slurry),
    ...(sludge ? { sludge } : {}),
    filtrate: { volume: sum((t) => t.filtrate.volume), mass: sum((t) => t.filtrate.mass) },
    inAll: sum((t) => t.inAll),
    portions: sum((t) => t.portions),
    atThePot: hours ?? sum((t) => t.atThePot),
    standing: first.standing,
    comesDown: [...new Set(each.flatMap((t) => t.comesDown))],
    stays: [...new Set(each.flatMap((t) => t.stays))],
    openIn: [...new Set(each.flatMap((t) => t.openIn))],
  };
}

function treatedOf(state: State, compared: readonly Compared[], asked: TwoWaysAsked): WayTreated {
  const all = together(
    compared.map((one) => treatedIn(state, one, asked)),
    asked.hours,
  );
  const sludge: Bill[] = all.sludge
    ? [
        {
          line: 'sludge',
          sentence: 'Collection of the sludge',
          of: [{ price: 'collection-per-kilogram', amount: all.sludge }],
        },
      ]
    : [];
  const money = moneyFor(state, [
    { line: 'base', sentence: bases[asked.base].name, of: [{ price: asked.base, amount: all.base }] },
    liquids('Collection of the filtrate', all.filtrate),
    ...sludge,
    visit,
  ]);
  return { ...all, money, carbonate: Number(bases[asked.base].carbonDioxidePerMol) > 0 };
}

/** The oldest of them, as ISO text; null where none is known. */
const oldest = (moments: readonly (string | null | undefined)[]): string | null =>
  moments.filter((moment) => typeof moment === 'string').sort()[0] ?? null;

/** The one container that was asked for, where nothing is said of treating it: its liquor is handed over all the same. */
function loadAlone(state: State, ids: readonly string[]): Load | undefined {
  const [id, ...others] = ids;
  if (id === undefined || others.length > 0) return undefined;
  const { contents, density } = containerFigures(state, id);
  return density ? contents.liquid : undefined;
}

/** Both ways for some containers. A container that cannot be compared is on neither side, and it is said why. */
export function twoWays(state: State, ids: readonly string[], asked: TwoWaysAsked): TwoWays {
  const found = ids.map((containerId) => ({ containerId, is: comparedOf(state, containerId, asked) }));
  const compared = found.flatMap(({ is }) => (isCompared(is) ? [is] : []));
  const counted = compared.map(({ containerId }) => containerId);
  const about = counted.length > 0 ? counted : ids;
  const alone = counted.length > 0 ? undefined : loadAlone(state, ids);
  const loads = alone ? [alone] : compared.map(({ load }) => load);
  return {
    counted,
    leftOut: found.flatMap(({ containerId, is }) => (isCompared(is) ? [] : [{ containerId, why: is }])),
    ...(loads.length > 0 ? { asItIs: asItIsOf(state, loads) } : {}),
    ...(compared.length > 0 ? { treated: treatedOf(state, compared, asked) } : {}),
    about,
    firstWasteIn: oldest(about.map((id) => state.containers.get(id)?.firstWasteIn)),
    allowed: allowedNow(state),
    residueToo: about.some((id) => containerFigures(state, id).contents.residues.length > 0),
  };
}

/** The figures by the name that stands in the address of their working. */
export function namedFigures({ asItIs: as, treated: t }: TwoWays): ReadonlyMap<string, Figure> {
  const ofMoney = (way: string, money: Money | undefined): [string, Figure | undefined][] => [
    ...(money?.lines ?? []).map(({ line, cost }): [string, Figure | undefined] => [`${way}-${line}`, cost]),
    [`${way}-sum`, money?.sum.ok ? money.sum.cost : undefined],
  ];
  const named: [string, Figure | undefined][] = [
    ['volume', as?.volume],
    ['mass', as?.mass],
    ['base', t?.base],
    ['water', t?.water],
    ['gas', t?.gas],
    ['sludge', t?.sludge],
    ['filtrate-volume', t?.filtrate.volume],
    ['filtrate', t?.filtrate.mass],
    ['treated-mass', t?.inAll],
    ['at-the-pot', t?.atThePot],
    ['standing', t?.standing],
    ...ofMoney('as-it-is', as?.money),
    ...ofMoney('treated', t?.money),
  ];
  return new Map(named.filter((pair): pair is [string, Figure] => pair[1] !== undefined));
}
