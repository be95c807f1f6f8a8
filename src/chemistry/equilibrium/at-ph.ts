/** Equilibrium at a pH that is held, nitrate being whatever makes the liquor electroneutral. */

import { type Component, chargeOf } from './reaction';
import type { Equilibrium, NoEquilibrium, Solved, Start } from './solve';
import { solverOf } from './solve';
import type { Totals } from './substances';
import { type ActivityModel, type PhaseAsked, systemOf } from './system';

export type AtPh = {
  readonly model: ActivityModel;
  /** mol in `kilograms` of water of every component but H+ and nitrate. */
  readonly totals: ReadonlyMap<Component, number>;
  /** kg of water, which stays as it is. */
  readonly kilograms: number;
  readonly phases: readonly PhaseAsked[];
};

export type PhSolver = (pH: number) => Solved;

/** Cations that stay dissolved at any pH, whose nitrate the search begins with. */
const background: ReadonlySet<Component> = new Set(['Na+', 'Ca+2', 'Mg+2']);

/** Charge of all species together, mol. */
function chargeIn({ system, moles }: Equilibrium): number {
  return moles.reduce((sum, n, j) => sum + n * (system.charge[j] ?? 0), 0);
}

/** Rounds of looking for the nitrate, and the part of all charge that may be left. */
const most = 60;
const neutral = 1e-10;

/**
 * A solver at held pH; each call begins where the last one ended.
 * @returns a failure where no amount of nitrate makes the liquor neutral: the pH cannot be held in it
 */
export function atPh({ model, totals, kilograms, phases }: AtPh): PhSolver {
  const there = [...totals].filter(([, n]) => n !== 0);
  const present = new Set<Component>([...there.map(([c]) => c), 'NO3-']);
  const first = Math.max(
    [...totals].reduce((sum, [c, n]) => sum + (background.has(c) ? chargeOf(c) * n : 0), 0),
    1e-3,
  );
  let start: Start | undefined;
  let nitrate = first;
  return (pH) => {
    const solver = solverOf(systemOf(model, present, phases, { pH }));
    const solve = (n: number): Solved => {
      const of: Totals['of'] = new Map([...totals, ['NO3-', n] as const]);
      const solved = solver({ of, water: 0 }, { kilograms }, start);
      if (solved.ok) start = solved.value.start;
      return solved;
    };
    let last: { readonly nitrate: number; readonly charge: number } | undefined;
    for (let round = 0; round < most; round++) {
      const solved = solve(nitrate);
      if (!solved.ok) {
        nitrate = first;
        start = undefined;
        return solved;
      }
      const charge = chargeIn(solved.value);
      const size = solved.value.moles.reduce(
        (sum, n, j) => sum + n * Math.abs(solved.value.system.charge[j] ?? 0),
        0,
      );
      if (Math.abs(charge) < neutral * size) return solved;
      const slope = last && last.nitrate !== nitrate ? (charge - last.charge) / (nitrate - last.nitrate) : -1;
      last = { nitrate, charge };
      // Nitrate brings −1 each and hardly anything else; a slope far from that is a sign of a solid that came or went.
      nitrate = Math.max(nitrate - charge / (slope < -0.05 ? slope : -1), nitrate * 0.1, 1e-12);
    }
    nitrate = first;
    start = undefined;
    return { ok: false, failure: noNeutral };
  };
}

const noNeutral: NoEquilibrium = { code: 'not-converged', gap: Number.NaN, component: 'NO3-' };
