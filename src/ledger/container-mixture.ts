/**
 * What a container holds, as rules of classification take it. Metals in liquor count as their nitrates without water of
 * crystallisation, at the high end of what is known; what nobody determined is open and never nothing.
 */
import { molarMass } from '../chemistry/formula';
import type { Load } from '../chemistry/load';
import { densityToWeigh } from '../chemistry/usual-density';
import { over, plus, times } from '../quantities/expression';
import { type Figure, workedOut } from '../quantities/figure';
import { nitrateOf, type SubstanceId, substances } from '../reference/substances-tables';
import { type Metal, metalSymbols, metals } from '../reference/tables';
import type { Element, ElementLevels } from '../rules/element-levels';
import type { Mixture } from '../rules/mixture';
import type { StreamKind } from '../safety/stream-kind';
import { type Contents, silentResidues, tellsNothing, wholeLoad } from './container-load';
import { phOf } from './container-ph';
import { contentsOf } from './contents-followed';
import { resultsNow, withFound } from './lab-levels';
import type { ContainerState, State } from './state';
import { wasteKinds } from './waste-kinds';

export type ContainerMixture = {
  readonly mixture: Mixture;
  readonly levels: ElementLevels;
  readonly kinds: readonly StreamKind[];
  /** All that is in it. */
  readonly mass: Figure<'kg'>;
};

/** Why nothing can be said of what is in it. */
export type NoMixture = 'empty' | 'not-determined';

const liquids: ReadonlySet<StreamKind> = new Set<StreamKind>([
  'leach-liquor',
  'barren-liquor',
  'wash-water',
  'chloride-test-waste',
  'ammonia-test-waste',
  'treated-slurry',
  'filtrate',
]);

/** Wastes that came of nitric acid and keep its nitrate, lime or not. Of the others nobody can tell without asking. */
const ofNitricAcid: ReadonlySet<StreamKind> = new Set<StreamKind>([
  ...liquids,
  'ceramic-residue',
  'spent-filters',
  'hydroxide-sludge',
]);

/** What a kind of waste may hold besides nitrates, that a load does not tell of. */
const besides: Partial<Readonly<Record<StreamKind, readonly SubstanceId[]>>> = {
  'chloride-test-waste': ['HCl', 'AgCl'],
  'ammonia-test-waste': ['NH3aq'],
  'ceramic-residue': ['AgCl', 'BaTiO3'],
  'treated-slurry': ['Ca(NO3)2', 'Cu(OH)2', 'Ni(OH)2'],
  filtrate: ['Ca(NO3)2'],
  'hydroxide-sludge': ['Ca(NO3)2', 'Cu(OH)2', 'Ni(OH)2', 'AgCl'],
};

const massesMade = new WeakMap<Contents, Map<string, Figure<'kg'>>>();

/** All that is in a vessel, by mass; it holds something. Made once for the same contents, in whatever state. */
export function massOfContents(contents: Contents, kinds: readonly StreamKind[]): Figure<'kg'> {
  const ofContents = massesMade.get(contents) ?? new Map<string, Figure<'kg'>>();
  massesMade.set(contents, ofContents);
  const known = ofContents.get(kinds.join(' '));
  if (known) return known;
  const { liquid, residues } = contents;
  const parts = [
    ...(liquid ? [times(liquid.volume, densityToWeigh(liquid, kinds))] : []),
    ...residues.map(({ wetMass }) => wetMass),
  ];
  const mass = workedOut({ sentence: 'Waste in the container', unit: 'kg', formula: plus(...parts) });
  ofContents.set(kinds.join(' '), mass);
  return mass;
}

/** The nitrate that a metal in liquor counts as, of all that is in the container. */
function shareOfMetal(
  metal: Metal,
  id: SubstanceId,
  load: Load,
  mass: Figure<'kg'>,
): Figure<'%'> | undefined {
  const all = load.metals.get(metal)?.figure;
  const { name, formula } = substances[id];
  return (
    all &&
    workedOut({
      sentence: `Share of ${name} by mass`,
      unit: '%',
      formula: over(times(all, over(molarMass(formula), molarMass(metal))), mass),
    })
  );
}

function shareOfAcid(load: Load, mass: Figure<'kg'>): Figure<'%'> | undefined {
  const all = load.freeAcid.figure;
  return (
    all &&
    workedOut({
      sentence: 'Share of nitric acid by mass',
      unit: '%',
      formula: over(times(all, molarMass('HNO3')), mass),
    })
  );
}

const withNitrate = metalSymbols.flatMap((metal) => {
  const id = nitrateOf.get(metal);
  return id ? [[metal, id] as const] : [];
});

function sharesOf(load: Load | undefined, mass: Figure<'kg'>): Mixture['shares'] {
  const shares = new Map<SubstanceId, Figure<'%'>>();
  if (!load) return shares;
  const acid = shareOfAcid(load, mass);
  if (acid) shares.set('HNO3', acid);
  for (const [metal, id] of withNitrate) {
    const share = shareOfMetal(metal, id, load, mass);
    if (share) shares.set(id, share);
  }
  return shares;
}

/** What one of the wastes in it does not tell of is open, also where the others do. */
const isOpen = (
  told: { readonly figure?: Figure; readonly openIn: readonly string[] } | undefined,
): boolean => !told?.figure || told.openIn.length > 0;

/** @param load of all that is in it; undefined where a part of it tells of nothing at all */
const openOf = (load: Load | undefined, kinds: readonly StreamKind[]): readonly SubstanceId[] => [
  ...new Set([
    ...(isOpen(load?.freeAcid) ? (['HNO3'] as const) : []),
    ...withNitrate.flatMap(([metal, id]) => (isOpen(load?.metals.get(metal)) ? [id] : [])),
    ...kinds.flatMap((kind) => besides[kind] ?? []),
  ]),
];

/** Elements with a limit of toxicity that this trade's evidence does not know: never determined here. */
const neverAsked: readonly Element[] = ['As', 'Cd', 'Cr', 'Hg', 'Se'];

function levelsOf(
  load: Load | undefined,
  mass: Figure<'kg'>,
  mixture: Mixture,
  silent: boolean,
): Omit<ElementLevels, 'ammoniacalSilver' | 'nitrateBearing'> {
  const filtered = new Map<Element, Figure<'mg/L'>>();
  const total = new Map<Element, Figure<'mg/kg'>>();
  const open: Element[] = [...neverAsked];
  for (const [metal] of withNitrate) {
    const element = metal as Element;
    const all = load?.metals.get(metal)?.figure;
    if (silent || isOpen(load?.metals.get(metal))) open.push(element);
    if (!load || !all || mixture.state !== 'liquid') continue;
    const sentence = `Dissolved ${metals[metal].name.toLowerCase()}`;
    filtered.set(element, workedOut({ sentence, unit: 'mg/L', formula: over(all, load.volume) }));
    total.set(
      element,
      workedOut({ sentence: `${sentence}, by mass`, unit: 'mg/kg', formula: over(all, mass) }),
    );
  }
  const { state, aqueous, pH } = mixture;
  return { state, aqueous, ...(pH ? { pH } : {}), filtered, total, tclp: new Map(), wet: new Map(), open };
}

function stateOf({ liquid, residues }: Contents, kinds: readonly StreamKind[]): Mixture['state'] {
  if (residues.length === 0) return 'liquid';
  return liquid || kinds.includes('hydroxide-sludge') ? 'sludge' : 'solid';
}

const made = new WeakMap<State, Map<string, ContainerMixture | NoMixture>>();

type Determined = { readonly contents: Contents; readonly kinds: readonly StreamKind[] };

function determined(state: State, container: ContainerState): Determined | NoMixture {
  const { containerId } = container.body;
  if (container.doubtfulSince !== null) return 'not-determined';
  if (container.contents.length === 0) return 'empty';
  const { kinds, unaccounted } = wasteKinds(state, containerId);
  const contents = contentsOf(state, containerId);
  if (unaccounted || contents.unaccounted || tellsNothing(contents)) return 'not-determined';
  return { contents, kinds };
}

/** The mass of a mixture, without all that else would be worked out for it. */
export function massOf(state: State, container: ContainerState): Figure<'kg'> | NoMixture {
  const found = determined(state, container);
  return typeof found === 'string' ? found : massOfContents(found.contents, found.kinds);
}

function mixed(state: State, container: ContainerState): ContainerMixture | NoMixture {
  const known = determined(state, container);
  if (typeof known === 'string') return known;
  const { contents, kinds } = known;
  const found = mixtureFrom(contents, kinds, phOf(state, container, wholeLoad(contents)));
  return { ...found, levels: withFound(found.levels, resultsNow(container.reports)) };
}

/** Contents of any vessel, real or planned. @param pH where it is known */
export function mixtureFrom(
  contents: Contents,
  kinds: readonly StreamKind[],
  pH: Figure<'1'> | undefined,
): ContainerMixture {
  const load = wholeLoad(contents);
  const mass = massOfContents(contents, kinds);
  const silent = silentResidues(contents).length > 0;
  const mixture: Mixture = {
    state: stateOf(contents, kinds),
    aqueous: contents.liquid !== undefined,
    ...(pH ? { pH } : {}),
    shares: sharesOf(load, mass),
    open: openOf(silent ? undefined : load, kinds),
  };
  const nitrateBearing = kinds.some((kind) => ofNitricAcid.has(kind)) ? true : null;
  const ammoniacalSilver = kinds.includes('ammonia-test-waste');
  const levels = { ...levelsOf(load, mass, mixture, silent), nitrateBearing, ammoniacalSilver };
  return { mixture, levels, kinds, mass };
}

/** Worked out once for a state. */
export function mixtureOf(state: State, container: ContainerState): ContainerMixture | NoMixture {
  const known = made.get(state) ?? new Map<string, ContainerMixture | NoMixture>();
  made.set(state, known);
  const { containerId } = container.body;
  const found = known.get(containerId) ?? mixed(state, container);
  known.set(containerId, found);
  return found;
}
