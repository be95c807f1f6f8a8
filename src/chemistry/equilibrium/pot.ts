/** One liquor as a base goes into it: each point is solved from where the last ones ended. */
import { kilogramsPerMole } from './activity';
import { add } from './floats';
import { type Component, components } from './reaction';
import { type NoEquilibrium, type Solved, type Solver, type Start, solverOf, type Water } from './solve';
import { broughtBy, hydroxideIn, type Totals, totalsOf } from './substances';
import { type ActivityModel, carbonDioxide, type PhaseAsked, type SolidId, systemOf } from './system';

/**
 * What carbon dioxide does. `none`: no carbonate at all; `open`: in equilibrium with air at log p = −3.4; `vent`: a bubble
 * forms when its pressure reaches 1 atm, and stays over the liquor; `leaves`: the same, and what bubbled out is gone;
 * `closed`: no gas forms.
 */
export type Gas = 'none' | 'open' | 'vent' | 'leaves' | 'closed';

/** log10 of the partial pressure of carbon dioxide in air, atm. */
const inAir = -3.4;

export type LiquorMade = {
  /** mol of each substance in `waterKilograms` of water. @example { HNO3: 1, 'Cu(NO3)2': 0.1 } */
  readonly substances: ReadonlyMap<string, number>;
  readonly waterKilograms: number;
};

export type SolidAsked = { readonly id: SolidId; readonly logK?: number };

export type Titration = {
  readonly model: ActivityModel;
  readonly liquor: LiquorMade;
  /** Formula of the pure base. */
  readonly reagent: string;
  readonly solids: readonly SolidAsked[];
  readonly gas: Gas;
};

/** mol in a mole of water of which it is not worth saying that it is there: what rounding leaves of a component, or less. */
const trace = 1e-17;

const presentIn = ({ of }: Totals, water: number): Set<Component> =>
  new Set(components.filter((c) => c !== 'H+' && (of.get(c) ?? 0) > trace * water));

/** A component of which there is less than none, or no number. */
const impossibleIn = ({ of }: Totals, water: number): Component | undefined =>
  components.find((c) => {
    const n = of.get(c) ?? 0;
    return !Number.isFinite(n) || (c !== 'H+' && n < -trace * water);
  });

const gasPhases = (gas: Gas): PhaseAsked[] => {
  if (gas === 'open') return [{ id: carbonDioxide, logSaturation: inAir, held: true }];
  return gas === 'vent' || gas === 'leaves' ? [{ id: carbonDioxide, logSaturation: 0 }] : [];
};

/** Points on the way to a point that is not come to straight. */
const walk = 24;

/** Solves points one after the other, each from where the last one ended. */
export class Pot {
  readonly #titration: Titration;
  readonly #each: Totals;
  readonly #solvers = new Map<string, Solver>();
  readonly #liquor: Totals;
  readonly #water: number;
  /** The last points of one set of components, the latest first, each at another base. */
  #last: readonly Trodden[] = [];

  /** @throws for a substance that the model does not hold */
  constructor(titration: Titration) {
    this.#titration = titration;
    const { substances, waterKilograms } = titration.liquor;
    this.#liquor = totalsOf([...substances].map(([formula, n]) => [broughtBy(formula), n]));
    const perBase = 1 / hydroxideIn(titration.reagent);
    this.#each = totalsOf([[broughtBy(titration.reagent), perBase]]);
    const before = this.#solve(this.#liquor, { kilograms: waterKilograms }, [], 0);
    this.#water = before.ok ? before.value.waterInAll : Number.NaN;
    this.failure = before.ok ? undefined : before.failure;
    this.#last = [];
  }

  /** Why not even the liquor as it is could be solved. */
  readonly failure: NoEquilibrium | undefined;

  /** The liquor after `base` mol of hydroxide. `gone`: carbon dioxide that has left before. */
  at(base: number, gone = 0): Solved {
    if (this.failure) return { ok: false, failure: this.failure };
    const straight = this.#after(base, gone);
    return straight.ok || base <= 0 ? straight : this.#walkTo(base, gone);
  }

  /** A strong liquor far from any point solved yet is come to from the acid side, a little at a time. */
  #walkTo(base: number, gone: number): Solved {
    this.#last = [];
    for (let i = 0; i < walk; i++) this.#after((base * i) / walk, (gone * i) / walk);
    return this.#after(base, gone);
  }

  #after(base: number, gone: number): Solved {
    const { solids, gas } = this.#titration;
    const totals = totalsOf([
      [this.#liquor, 1],
      [this.#each, base],
      [broughtBy('CO2'), -gone],
    ]);
    const water = { moles: this.#water + totals.water - this.#liquor.water };
    return this.#solve(totals, water, [...solids, ...gasPhases(gas)], base);
  }

  #solve(totals: Totals, water: Water, phases: readonly PhaseAsked[], base: number): Solved {
    const size = 'moles' in water ? water.moles : water.kilograms / kilogramsPerMole;
    const impossible = impossibleIn(totals, size);
    if (impossible || !(size > 0 && size < Number.POSITIVE_INFINITY))
      return { ok: false, failure: { code: 'not-converged', gap: Number.NaN, component: impossible } };
    const present = presentIn(totals, size);
    if (phases.some((p) => p.held && p.id === carbonDioxide)) present.add('CO3-2');
    const key = `${[...present].join()}|${phases.length}`;
    let solver = this.#solvers.get(key);
    if (!solver) {
      solver = solverOf(systemOf(this.#titration.model, present, phases));
      this.#solvers.set(key, solver);
    }
    const last = this.#last.filter((point) => point.key === key);
    const solved = solver(totals, water, ahead(last, base));
    const others = last.filter((point) => point.base !== base).slice(0, through - 1);
    if (solved.ok) this.#last = [{ key, base, start: solved.value.start }, ...others];
    return solved;
  }
}

type Trodden = { readonly key: string; readonly base: number; readonly start: Start };

/** How many points a start is laid through, and how many times the last step it may go on. */
const through = 3;
const farthest = 2;

/** On along the curve through the last points that have the same solids; from the last one alone where there is none. */
function ahead(trodden: readonly Trodden[], base: number): Start | undefined {
  const [last, before] = trodden;
  if (!last || !before) return last?.start;
  // A curve tells of what lies a little further, not of what lies far.
  if (Math.abs(base - last.base) > farthest * Math.abs(last.base - before.base)) return last.start;
  const solids = last.start.phases.join();
  const end = trodden.findIndex(({ start }) => start.phases.join() !== solids);
  const points = end < 0 ? trodden : trodden.slice(0, end);
  const shares = points.map((one) =>
    points.reduce((f, other) => (other === one ? f : (f * (base - other.base)) / (one.base - other.base)), 1),
  );
  const on = (of: (start: Start) => Float64Array): Float64Array => {
    const sum = new Float64Array(of(last.start).length);
    for (const [p, { start }] of points.entries()) {
      const share = shares[p] ?? 0;
      for (const [i, x] of of(start).entries()) add(sum, i, share * x);
    }
    return sum;
  };
  return {
    phases: last.start.phases,
    lnActivity: on((start) => start.lnActivity),
    around: on((start) => start.around),
  };
}
