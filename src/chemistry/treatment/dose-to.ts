/** The dose that brings a pot to a pH, by the equilibrium model: plain numbers, found between two ends. */
import { Pot } from '../equilibrium/pot';
import type { Equilibrium, NoEquilibrium } from '../equilibrium/solve';
import { carbonDioxide } from '../equilibrium/system';
import { ladder } from './ladder';
import { type Amounts, likelyTurn, sizeOf, type TreatedPot, type Turn, titrationOf } from './treated-pot';

export type DoseTo =
  | {
      readonly found: 'dose';
      readonly base: number;
      readonly at: Equilibrium;
      /** mol of carbon dioxide that has left by then. */
      readonly gone: number;
    }
  /** However much goes in, the pH ends there. */
  | { readonly found: 'stall'; readonly pH: number }
  | { readonly found: 'failure'; readonly failure: NoEquilibrium };

/** Dose is found to this part of itself. */
const fine = 1e-7;

/** Least hydroxide, mol, at which the pot reaches `pH`. */
export function doseTo(pot: TreatedPot, amounts: Amounts, pH: number, turn: Turn = likelyTurn): DoseTo {
  const titration = titrationOf(pot, amounts, turn);
  const solver = new Pot(titration);
  const leaves = titration.gas === 'leaves';
  let gone = 0;
  /** The pot at a dose, and the gas that stands over it there. */
  const at = (base: number) => {
    const solved = solver.at(base, gone);
    if (!solved.ok) return solved;
    return { ok: true as const, value: solved.value, over: solved.value.solids.get(carbonDioxide) ?? 0 };
  };
  let below = 0;
  let last = Number.NEGATIVE_INFINITY;
  let above: { readonly base: number; readonly at: Equilibrium } | undefined;
  for (const base of ladder(sizeOf(pot, amounts))) {
    const here = at(base);
    if (!here.ok) return { found: 'failure', failure: here.failure };
    last = here.value.pH;
    if (last >= pH) {
      above = { base, at: here.value };
      break;
    }
    below = base;
    if (leaves) gone += here.over;
  }
  if (above === undefined) return { found: 'stall', pH: last };
  while (above.base - below > fine * above.base) {
    const middle: number = (above.base + below) / 2;
    const here = at(middle);
    if (!here.ok) return { found: 'failure', failure: here.failure };
    if (here.value.pH >= pH) above = { base: middle, at: here.value };
    else below = middle;
  }
  const over = leaves ? (above.at.solids.get(carbonDioxide) ?? 0) : 0;
  return { found: 'dose', ...above, gone: gone + over };
}
