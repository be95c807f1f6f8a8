/** What of a metal stays dissolved beside one of its solids, against pH. */
import { atPh } from './at-ph';
import type { Component } from './reaction';
import type { Equilibrium } from './solve';
import { type ActivityModel, metalOf, type PhaseAsked } from './system';
import { dissolved } from './told';

export type SolubilityAsked = {
  readonly model: ActivityModel;
  readonly solid: Pick<PhaseAsked, 'id' | 'logK'>;
  /** mol/kg water of the cation that carries the background. */
  readonly background: ReadonlyMap<Component, number>;
};

export type SolubilityPoint = {
  readonly pH: number;
  /** mol/kg water, all species; undefined where the liquor has no equilibrium at this pH. */
  readonly dissolved: number | undefined;
  readonly at: Equilibrium | undefined;
};

/** The solid is there in any amount, so that only the pH and the background count. */
export function solubility(
  { model, solid, background }: SolubilityAsked,
  values: readonly number[],
): SolubilityPoint[] {
  const metal = metalOf(solid.id);
  const totals = new Map<Component, number>([...background, [metal, 1] as const]);
  const solve = atPh({ model, totals, kilograms: 1, phases: [{ ...solid, held: true }] });
  return values.map((pH) => {
    const solved = solve(pH);
    return solved.ok
      ? { pH, dissolved: dissolved(solved.value, metal), at: solved.value }
      : { pH, dissolved: undefined, at: undefined };
  });
}
