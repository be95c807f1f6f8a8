/** pH and what is dissolved as a base is added, each point in equilibrium: the curve that the plan and the plots are read from. */
import { Pot, type Titration } from './pot';
import type { Equilibrium, NoEquilibrium } from './solve';
import { carbonDioxide } from './system';

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
