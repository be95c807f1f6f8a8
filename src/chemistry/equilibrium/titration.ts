/** pH and what is dissolved as a base is added, each point in equilibrium: the curve that the plan and the plots are read from. */
import { type Component, components } from './reaction';
import {
  type Equilibrium,
  type NoEquilibrium,
  type Solved,
  type Solver,
  type Start,
  solverOf,
  type Water,
} from './solve';
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

export type Point = {
  /** Hydroxide added so far, mol; carbonate counts two. */
  readonly base: number;
  readonly at: Equilibrium;
  /** mol of carbon dioxide that left, or stands over the liquor. */
  readonly gas: number;
};

export type PointFailure = NoEquilibrium & { readonly base: number };
export type Titrated =
  | { readonly ok: true; readonly value: readonly Point[] }
  | { readonly ok: false; readonly failure: PointFailure };

const presentIn = (totals: Totals): ReadonlySet<Component> =>
  new Set(components.filter((c) => c !== 'H+' && (totals.of.get(c) ?? 0) > 0));

const gasPhases = (gas: Gas): PhaseAsked[] => {
  if (gas === 'open') return [{ id: carbonDioxide, logSaturation: inAir, held: true }];
  return gas === 'vent' || gas === 'leaves' ? [{ id: carbonDioxide, logSaturation: 0 }] : [];
};

/** Solves points one after the other, each from where the last one ended. */
export class Pot {
  readonly #titration: Titration;
  readonly #each: Totals;
  readonly #solvers = new Map<string, Solver>();
  readonly #liquor: Totals;
  readonly #water: number;
  #start: { readonly key: string; readonly start: Start } | undefined;

  /** @throws for a substance that the model does not hold */
  constructor(titration: Titration) {
    this.#titration = titration;
    const { substances, waterKilograms } = titration.liquor;
    this.#liquor = totalsOf([...substances].map(([formula, n]) => [broughtBy(formula), n]));
    const perBase = 1 / hydroxideIn(titration.reagent);
    this.#each = totalsOf([[broughtBy(titration.reagent), perBase]]);
    const before = this.#solve(this.#liquor, { kilograms: waterKilograms }, []);
    this.#water = before.ok ? before.value.waterInAll : Number.NaN;
    this.failure = before.ok ? undefined : before.failure;
    this.#start = undefined;
  }

  /** Why not even the liquor as it is could be solved. */
  readonly failure: NoEquilibrium | undefined;

  /** The liquor after `base` mol of hydroxide. `gone`: carbon dioxide that has left before. */
  at(base: number, gone = 0): Solved {
    if (this.failure) return { ok: false, failure: this.failure };
    const { solids, gas } = this.#titration;
    const totals = totalsOf([
      [this.#liquor, 1],
      [this.#each, base],
      [broughtBy('CO2'), -gone],
    ]);
    const water = { moles: this.#water + totals.water - this.#liquor.water };
    return this.#solve(totals, water, [...solids, ...gasPhases(gas)]);
  }

  #solve(totals: Totals, water: Water, phases: readonly PhaseAsked[]): Solved {
    const present = new Set(presentIn(totals));
    if (phases.some((p) => p.held && p.id === carbonDioxide)) present.add('CO3-2');
    const key = `${[...present].join()}|${phases.length}`;
    let solver = this.#solvers.get(key);
    if (!solver) {
      solver = solverOf(systemOf(this.#titration.model, present, phases));
      this.#solvers.set(key, solver);
    }
    const solved = solver(totals, water, this.#start?.key === key ? this.#start.start : undefined);
    if (solved.ok) this.#start = { key, start: solved.value.start };
    return solved;
  }
}

/** The points at `bases`, mol of hydroxide, which must rise. Ends at the first point that has no equilibrium. */
export function titrate(titration: Titration, bases: readonly number[]): Titrated {
  const pot = new Pot(titration);
  const points: Point[] = [];
  let gone = 0;
  for (const base of bases) {
    const solved = pot.at(base, gone);
    if (!solved.ok) return { ok: false, failure: { ...solved.failure, base } };
    const over = solved.value.solids.get(carbonDioxide) ?? 0;
    points.push({ base, at: solved.value, gas: gone + over });
    if (titration.gas === 'leaves') gone += over;
  }
  return { ok: true, value: points };
}
