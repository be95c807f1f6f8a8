/** The dose that brings a pot to a pH, by the equilibrium model: plain numbers, found between two ends. */
import { Pot } from '../equilibrium/pot';
import type { Equilibrium, NoEquilibrium } from '../equilibrium/solve';
import { carbonDioxide } from '../equilibrium/system';
import { type Amounts, chargeOfPot, type TreatedPot, titrationOf } from './treated-pot';

export type DoseTo =
  | { readonly found: 'dose'; readonly base: number; readonly at: Equilibrium }
  /** However much goes in, the pH ends there. */
  | { readonly found: 'stall'; readonly pH: number }
  | { readonly found: 'failure'; readonly failure: NoEquilibrium };

/** So many times the charge goes in before a base is said to stall. */
const plenty = 2.5;
/** Dose is found to this part of the charge. */
const fine = 1e-7;
/** Steps on the way up, so that carbon dioxide leaves as it does in the pot. */
const steps = 40;

/** Least hydroxide, mol, at which the pot reaches `pH`. */
export function doseTo(pot: TreatedPot, amounts: Amounts, pH: number): DoseTo {
  const titration = titrationOf(pot, amounts);
  const solver = new Pot(titration);
  const leaves = titration.gas === 'leaves';
  const charge = Math.max(chargeOfPot(amounts), 1e-6);
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
  for (let i = 0; i <= steps * plenty; i++) {
    const base = (charge * i) / steps;
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
  while (above.base - below > fine * charge) {
    const middle: number = (above.base + below) / 2;
    const here = at(middle);
    if (!here.ok) return { found: 'failure', failure: here.failure };
    if (here.value.pH >= pH) above = { base: middle, at: here.value };
    else below = middle;
  }
  return { found: 'dose', ...above };
}
