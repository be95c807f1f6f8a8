/**
 * What treating a container's contents would take and what would come of it, before anything goes in: per base and target
 * pH, by the equilibrium model. Asked for again and again by the pages, so worked out once for a state.
 */
import { type Load, metalsPresent } from '../chemistry/load';
import { type BaseTo, baseTo } from '../chemistry/treatment/base-to';
import { type Curved, doseCurve } from '../chemistry/treatment/dose-curve';
import { type Outcome, outcomeOf } from '../chemistry/treatment/outcome';
import { slurryWater } from '../chemistry/treatment/slurry-water';
import { type PhWindow, type WhichPh, whichPh } from '../chemistry/treatment/which-ph';
import type { ReferenceId } from '../reference/residual-tables';
import { type BaseId, bases, type Metal } from '../reference/tables';
import { type BenchEstimate, benchEstimate } from './bench-estimate';
import { containerFigures } from './container-figures';
import { limitsOf } from './discharge-limits';
import { purityStated } from './purity-stated';
import type { BenchTestState, State } from './state';

/** Remembers what was made for a state. Arguments are part of the key, so they must tell all that it depends on. */
export function perState<A extends readonly (string | number)[], T>(make: (state: State, ...of: A) => T) {
  const known = new WeakMap<State, Map<string, T>>();
  return (state: State, ...of: A): T => {
    const ofState = known.get(state) ?? new Map<string, T>();
    known.set(state, ofState);
    const key = of.join(' ');
    const found = ofState.has(key) ? (ofState.get(key) as T) : make(state, ...of);
    ofState.set(key, found);
    return found;
  };
}

/** The load that a base may go into; undefined where none may, or nobody knows enough of it. */
export function treatable(state: State, containerId: string): Load | undefined {
  const { load, noBase } = containerFigures(state, containerId);
  return noBase === null ? load : undefined;
}

/** Base to a pH for a container's contents; undefined where no base may go in, or the free acid is open. */
export const baseForPh = perState(
  (state: State, containerId: string, base: BaseId, pH: number): BaseTo | undefined => {
    const load = treatable(state, containerId);
    return load && baseTo(base, load, pH, purityStated(state, base));
  },
);

const curveUpTo = perState(
  (state: State, containerId: string, base: BaseId, upTo: number): Curved | undefined => {
    const load = treatable(state, containerId);
    return load && doseCurve(load, base, { stated: purityStated(state, base), upTo });
  },
);

/** The curve of a container with a base, as far as `upTo` g as sold at least. */
export function curveFor(state: State, containerId: string, base: BaseId, upTo: number): Curved | undefined {
  const usual = curveUpTo(state, containerId, base, 0);
  const end = usual?.ok ? (usual.value.points.at(-1)?.grams ?? 0) : Number.POSITIVE_INFINITY;
  return upTo > end ? curveUpTo(state, containerId, base, Math.ceil(upTo)) : usual;
}

/** Where least stays against the limits, and what stays; undefined where no base may go in, or the model gives up. */
export const whichPhFor = perState(
  (state: State, containerId: string, base: BaseId, reference: ReferenceId): WhichPh | undefined => {
    const load = treatable(state, containerId);
    const found = load && whichPh(load, base, limitsOf(state, reference));
    return found?.ok ? found.value : undefined;
  },
);

/** The base whose window is proposed for all, so that all are compared at one pH: it reaches far, and brings no carbonate. */
const proposes: BaseId = 'hydrated-lime';

/** The pH that is proposed for a container; undefined where none stands out. */
export const proposedFor = (
  state: State,
  containerId: string,
  reference: ReferenceId,
): PhWindow | undefined => whichPhFor(state, containerId, proposes, reference)?.window;

/** What is to be minded of metals that base alone does not bring down, or that nobody can predict. */
export type Minded = 'silver' | 'lead' | 'palladium' | 'tin' | 'barium';

const mindedBy: Partial<Record<Metal, Minded>> = {
  Ag: 'silver',
  Pb: 'lead',
  Pd: 'palladium',
  Sn: 'tin',
  Ba: 'barium',
};

/** A carbonate brings these down itself. */
const withoutCarbonate: ReadonlySet<Minded> = new Set<Minded>(['lead', 'barium']);

export const minded = (load: Load, base: BaseId): readonly Minded[] =>
  metalsPresent(load)
    .flatMap((metal) => mindedBy[metal] ?? [])
    .filter((what) => !(withoutCarbonate.has(what) && Number(bases[base].carbonDioxidePerMol) > 0));

/** What comes of treating a container with a base to a pH, stirred into water first; undefined where it does not get there. */
export const comesOf = perState(
  (state: State, containerId: string, base: BaseId, pH: number): Outcome | undefined => {
    const load = treatable(state, containerId);
    const to = baseForPh(state, containerId, base, pH);
    if (!load || !to?.ok) return undefined;
    const { mass } = to.needed;
    return outcomeOf(to, load, { slurryWater: slurryWater(base, mass, 'L') });
  },
);

export type BenchFound = { readonly test: BenchTestState; readonly estimate: BenchEstimate };

/** One trial on the bench, scaled up to the container to the pH at which it ended. */
export const benchOf = perState(
  (state: State, containerId: string, entryId: string): BenchFound | undefined => {
    const test = state.containers.get(containerId)?.benchTests.find((one) => one.entryId === entryId);
    return test && { test, estimate: benchEstimate(state, containerId, test.body) };
  },
);

/** The last trial on the bench with a base that still holds, scaled up to the container. */
export const benchFor = perState(
  (state: State, containerId: string, base: BaseId): BenchFound | undefined => {
    const tests = state.containers.get(containerId)?.benchTests ?? [];
    const test = tests.findLast(({ body, staleSince }) => staleSince === null && body.agent === base);
    return test && { test, estimate: benchEstimate(state, containerId, test.body) };
  },
);
