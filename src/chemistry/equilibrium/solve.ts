/**
 * Equilibrium of a liquor with the solids that may form: the mass balances of all components, mass action of all species,
 * each solid either there and in equilibrium or not there and not supersaturated, water counted.
 */
import { Climb, type Pace } from './climb';
import { coldStart } from './cold-start';
import type { Component } from './reaction';
import type { Totals } from './substances';
import type { SolidId, System } from './system';

/** Water as it is told: kg that stays as it is, or mol in all, so that what neutralisation makes is counted. */
export type Water = { readonly kilograms: number } | { readonly moles: number };

export type Equilibrium = {
  readonly system: System;
  readonly pH: number;
  /** mol/kg */
  readonly ionicStrength: number;
  /** kg of free water. */
  readonly water: number;
  /** mol of water in all, that in species and solids included. */
  readonly waterInAll: number;
  readonly waterActivity: number;
  /** mol of each species. */
  readonly moles: Float64Array;
  readonly lnGamma: Float64Array;
  /** mol of each solid or gas that is there. */
  readonly solids: ReadonlyMap<SolidId, number>;
  /** Where to begin for a neighbouring liquor. */
  readonly start: Start;
  /** Newton steps it took. */
  readonly steps: number;
};

/** ln of the component activities, the surroundings of the species, and the numbers of the solids that are there. */
export type Start = {
  readonly lnActivity: Float64Array;
  readonly around: Float64Array;
  readonly phases: readonly number[];
};

export type NoEquilibrium = {
  readonly code: 'not-converged';
  /** Largest relative gap of a mass balance at the end, and whose. */
  readonly gap: number;
  readonly component: Component | undefined;
};
export type Solved =
  | { readonly ok: true; readonly value: Equilibrium }
  | { readonly ok: false; readonly failure: NoEquilibrium };

export type Solver = (totals: Totals, water: Water, start?: Start) => Solved;

const quick: Pace = { rise: 2.5, follow: 1, most: 200 };
const careful: Pace = { rise: 0.5, follow: 0.2, most: 1000 };

/** A solver over one system. It begins where it is told, then from scratch, then from scratch with short steps. */
export function solverOf(system: System): Solver {
  const climb = new Climb(system);
  return (totals, water, start) => {
    const warm = start && climb.run(totals, water, start, quick);
    if (warm?.ok) return warm;
    const cold = coldStart(system, totals, water);
    const first = climb.run(totals, water, cold, quick);
    return first.ok ? first : climb.run(totals, water, cold, careful);
  };
}
