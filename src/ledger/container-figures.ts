/** Every figure that a container's contents give, each under a name, so that a page and a paper show the same ones. */
import { type BaseNeeded, baseNeeded, carbonDioxide } from '../chemistry/base-needed';
import { densityOf } from '../chemistry/density';
import { type Warming, warming } from '../chemistry/heat';
import {
  type Amount,
  acidPerLitre,
  type Load,
  nitrateIn,
  nitratePerLitre,
  perLitre,
} from '../chemistry/load';
import { type Sludge, sludgeFrom } from '../chemistry/sludge';
import type { Figure } from '../quantities/figure';
import { type BaseId, baseIds, type Metal, metalSymbols } from '../reference/tables';
import { type Contents, silentResidues, wholeLoad } from './container-load';
import { contentsBefore, contentsOf } from './contents-followed';
import { lazily } from './lazily';
import { purityStated } from './purity-stated';
import type { ContentsPart, State } from './state';
import { kindsOfParts } from './waste-kinds';

export type MetalFigures = {
  readonly metal: Metal;
  /** Absent where nothing in the container tells of it. */
  readonly all?: Figure<'g'>;
  readonly perLitre?: Figure<'g/L'>;
  /** Streams that do not tell of it: what is shown is at least there. */
  readonly openIn: readonly string[];
};

export type BaseFigures = {
  readonly needed: BaseNeeded;
  readonly warming?: Warming;
  readonly sludge?: Sludge;
  readonly carbonDioxide?: Figure<'L'>;
};

/**
 * `ammonia`: lime frees the gas and, with silver, favours explosive silver nitride. `doubtful`, `unaccounted`: nobody knows
 * what is in it, so any figure would be a guess. `treated`: something was added, so what was worked out before holds no
 * more. `acid-open`: no liquor tells its free acid.
 */
export type NoBase = 'ammonia' | 'doubtful' | 'unaccounted' | 'treated' | 'acid-open';

/** What a load gives by itself. */
type LoadFigures = {
  readonly metals: readonly MetalFigures[];
  readonly acid: Amount<'mol'>;
  readonly acidPerLitre: Figure<'mol/L'> | undefined;
  readonly nitrate: Amount<'mol'>;
  readonly nitratePerLitre: Figure<'mol/L'> | undefined;
  readonly density: Figure<'kg/L'> | undefined;
};

/** Each is worked out when it is first asked for. */
export type ContainerFigures = LoadFigures & {
  readonly contents: Contents;
  /** Free and held liquor together; undefined when the container holds neither. */
  readonly load: Load | undefined;
  /** Empty where the free acid is not known, or where no base may be added. */
  readonly bases: ReadonlyMap<BaseId, BaseFigures>;
  /** Why no base is worked out though there is something to neutralise; null where there is no such reason. */
  readonly noBase: NoBase | null;
  /** Residues whose held liquor nobody told. */
  readonly silent: readonly string[];
};

function metalFigures(load: Load): readonly MetalFigures[] {
  return metalSymbols.map((metal) => {
    const { figure, openIn } = load.metals.get(metal) ?? { openIn: [] };
    const concentration = perLitre(load, metal);
    return {
      metal,
      openIn,
      ...(figure ? { all: figure } : {}),
      ...(concentration ? { perLitre: concentration } : {}),
    };
  });
}

function baseFigures(state: State, load: Load): ReadonlyMap<BaseId, BaseFigures> {
  const found = new Map<BaseId, BaseFigures>();
  for (const base of baseIds) {
    const needed = baseNeeded(base, load, purityStated(state, base));
    if (!needed) continue;
    const warm = warming(load, needed);
    const sludge = sludgeFrom(load, needed);
    const gas = carbonDioxide(needed);
    found.set(base, {
      needed,
      ...(warm ? { warming: warm } : {}),
      ...(sludge ? { sludge } : {}),
      ...(gas ? { carbonDioxide: gas } : {}),
    });
  }
  return found;
}

/** Worked out once for a state, since a page asks again at every turn of the clock. */
const known = new WeakMap<State, Map<string, ContainerFigures>>();

function once(state: State, name: string, workOut: () => ContainerFigures): ContainerFigures {
  const ofState = known.get(state) ?? new Map<string, ContainerFigures>();
  known.set(state, ofState);
  const figures = ofState.get(name) ?? workOut();
  ofState.set(name, figures);
  return figures;
}

/** Everything for one container. The bases are worked out when they are first asked for. */
export const containerFigures = (state: State, containerId: string): ContainerFigures =>
  once(state, containerId, () => {
    const contents = contentsOf(state, containerId);
    const parts = state.containers.get(containerId)?.contents ?? [];
    return workedOutFor(state, contents, noBaseFor(state, containerId, contents, parts));
  });

/**
 * Everything for what a treatment found in its container, before anything was added: what its plan and its curve rest
 * on. What is there now while nothing has been added.
 */
export const figuresBefore = (state: State, treatmentId: string): ContainerFigures =>
  once(state, `before ${treatmentId}`, () => {
    const treatment = state.treatments.get(treatmentId);
    const { containerId = '' } = treatment?.body ?? {};
    const parts = treatment?.treated ?? state.containers.get(containerId)?.contents ?? [];
    const contents = contentsBefore(state, treatmentId);
    return workedOutFor(state, contents, noBaseFor(state, containerId, contents, parts));
  });

function noBaseFor(
  state: State,
  containerId: string,
  contents: Contents,
  parts: readonly ContentsPart[],
): NoBase | null {
  const { kinds, unaccounted } = kindsOfParts(state, parts);
  if (kinds.includes('ammonia-test-waste')) return 'ammonia';
  if ((state.containers.get(containerId)?.doubtfulSince ?? null) !== null) return 'doubtful';
  if (unaccounted || contents.unaccounted) return 'unaccounted';
  return parts.some(({ treatedBy }) => treatedBy.length > 0) ? 'treated' : null;
}

const ofNothing: LoadFigures = {
  metals: [],
  acid: { openIn: [] },
  acidPerLitre: undefined,
  nitrate: { openIn: [] },
  nitratePerLitre: undefined,
  density: undefined,
};

const figuresOf = (load: Load): LoadFigures =>
  lazily<LoadFigures>({
    metals: () => metalFigures(load),
    acid: () => load.freeAcid,
    acidPerLitre: () => acidPerLitre(load),
    nitrate: () => nitrateIn(load),
    nitratePerLitre: () => nitratePerLitre(load),
    density: () => densityOf(load),
  });

type Told = { readonly load: Load | undefined; readonly figures: LoadFigures };

const toldBy = new WeakMap<Contents, Told>();

/** The same again for the same contents, in whatever state. */
function toldIn(contents: Contents): Told {
  const known = toldBy.get(contents);
  if (known) return known;
  const load = wholeLoad(contents);
  const told = { load, figures: load ? figuresOf(load) : ofNothing };
  toldBy.set(contents, told);
  return told;
}

/** With nothing known of what is dissolved there is no density to work out; what a base leaves behind is dissolved, too. */
const isDensityKnown = (load: Load | undefined, forbidden: NoBase | null): boolean =>
  load !== undefined &&
  forbidden !== 'treated' &&
  (load.density !== undefined ||
    load.freeAcid.figure !== undefined ||
    [...load.metals.values()].some(({ figure }) => figure !== undefined));

function workedOutFor(state: State, contents: Contents, forbidden: NoBase | null): ContainerFigures {
  const { load, figures } = toldIn(contents);
  const noBase = forbidden ?? (!load || load.freeAcid.figure ? null : 'acid-open');
  return lazily<ContainerFigures>({
    contents: () => contents,
    load: () => load,
    metals: () => figures.metals,
    acid: () => figures.acid,
    acidPerLitre: () => figures.acidPerLitre,
    nitrate: () => figures.nitrate,
    nitratePerLitre: () => figures.nitratePerLitre,
    density: () => (isDensityKnown(load, forbidden) ? figures.density : undefined),
    bases: () => (load && noBase === null ? baseFigures(state, load) : new Map()),
    noBase: () => noBase,
    silent: () => silentResidues(contents),
  });
}

/**
 * The figures by name: "volume", "density", "acid", "acid-a-litre", "nitrate", "nitrate-a-litre", a metal ("Cu",
 * "Cu-a-litre"), and for each base its id, with "-heat", "-rise", "-sludge", "-wet-sludge", "-gas" after it; each
 * residue in the order in which it came in: "residue-1", "held-1".
 */
export function namedFigures(f: ContainerFigures): ReadonlyMap<string, Figure> {
  const named: [string, Figure | undefined][] = [
    ['volume', f.load?.volume],
    ['density', f.density],
    ['acid', f.acid.figure],
    ['acid-a-litre', f.acidPerLitre],
    ['nitrate', f.nitrate.figure],
    ['nitrate-a-litre', f.nitratePerLitre],
    ...f.metals.flatMap((m): [string, Figure | undefined][] => [
      [m.metal, m.all],
      [`${m.metal}-a-litre`, m.perLitre],
    ]),
    ...[...f.bases].flatMap(([base, b]): [string, Figure | undefined][] => [
      [base, b.needed.mass],
      [`${base}-heat`, b.warming?.heat],
      [`${base}-rise`, b.warming?.rise],
      [`${base}-sludge`, b.sludge?.dry],
      [`${base}-wet-sludge`, b.sludge?.wet],
      [`${base}-gas`, b.carbonDioxide],
    ]),
    ...f.contents.residues.flatMap((r, i): [string, Figure | undefined][] => [
      [`residue-${i + 1}`, r.wetMass],
      [`held-${i + 1}`, r.held?.volume],
    ]),
  ];
  return new Map(named.filter((pair): pair is [string, Figure] => pair[1] !== undefined));
}
