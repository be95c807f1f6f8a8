/**
 * Waste handed over as it is, or treated first, side by side: for one container or for all that hold liquid. Only free
 * liquor is compared. It says what either way comes to, and never which one to take. Needs the equilibrium model, so only
 * pages that show it may import it.
 */
import type { BaseNeeded } from '../chemistry/base-needed';
import { type Load, metalsPresent } from '../chemistry/load';
import { type BaseTo, baseTo } from '../chemistry/treatment/base-to';
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
import { containerFigures, type NoBase } from './container-figures';
import { type Bill, type Money, moneyFor } from './money';
import type { State } from './state';
import { allowedNow } from './treatment';

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
  /** Whether the local rules let waste be treated here. */
  readonly allowed: 'yes' | 'no' | 'not-stated';
  /** Wet residue in those containers, which is on neither side. */
  readonly residueToo: boolean;
};

type Compared = { readonly containerId: string; readonly load: Load; readonly needed: BaseNeeded };

/** The dose is found by iteration: once for a state. */
const known = new WeakMap<State, Map<string, BaseTo>>();

function doseOnce(state: State, containerId: string, load: Load, { base, pH }: TwoWaysAsked): BaseTo {
  const ofState = known.get(state) ?? new Map<string, BaseTo>();
  known.set(state, ofState);
  const purity = state.bases.get(base)?.body.purity;
  const name = `${containerId} ${base} ${pH}`;
  const to = ofState.get(name) ?? baseTo(base, load, pH, purity && { purity, origin: `purity/${base}` });
  ofState.set(name, to);
  return to;
}

function comparedOf(state: State, containerId: string, asked: TwoWaysAsked): Compared | NotTreated {
  const { contents, noBase } = containerFigures(state, containerId);
  const load = contents.liquid;
  if (noBase !== null && noBase !== 'acid-open') return { code: noBase };
  if (!load) return { code: 'no-liquid' };
  const to = doseOnce(state, containerId, load, asked);
  if (to.ok) return { containerId, load, needed: to.needed };
  return to.why.code === 'model-failed' ? { code: 'model-failed' } : to.why;
}

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
    compared.map(({ load, needed }) => treatedFirst(load, needed, asked)),
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
    ['slurry', t?.slurry],
    ['sludge', t?.sludge],
    ['filtrate-volume', t?.filtrate.volume],
    ['filtrate', t?.filtrate.mass],
    ['treated-mass', t?.inAll],
    ['portions', t?.portions],
    ['at-the-pot', t?.atThePot],
    ['standing', t?.standing],
    ...ofMoney('as-it-is', as?.money),
    ...ofMoney('treated', t?.money),
  ];
  return new Map(named.filter((pair): pair is [string, Figure] => pair[1] !== undefined));
}
