/** How full a container may be. */
import type Decimal from 'decimal.js';
import { inUnit, quantity } from '../quantities/quantity';
import type { ContainerState, Held, State, Volume } from './state';

/** Until the local rules say otherwise: room for the liquid to expand and to be carried without slopping. */
const usualFillPercent = '90';

/** Percent of the capacity, as a decimal, and whether the local rules said so. */
export function fillLimitPercent(state: State): { readonly percent: string; readonly stated: boolean } {
  const rule = state.rules.get('fill-limit')?.body.stated;
  if (rule?.rule !== 'fill-limit') return { percent: usualFillPercent, stated: false };
  return { percent: rule.value.value, stated: true };
}

/**
 * What a kilogram of wet residue or sludge takes up, kg/L: a round figure for how full a vessel is, for no other use.
 * Common practice, no source.
 */
const residueDensity = 1.6;

/** Room that liquid and solids take up together. */
export const takesUp = ({ volume, mass }: Held): Volume =>
  quantity(volume.plus(mass.div(1000).div(residueDensity)), 'L');

export const capacityOf = ({ body }: ContainerState): Volume => inUnit(body.capacity, 'L');

/** The volume that may be in it. */
export const fillLimit = (state: State, container: ContainerState): Volume =>
  quantity(capacityOf(container).times(fillLimitPercent(state).percent).div(100), 'L');

/** How full it is, percent of the capacity, solids counted with the liquid. */
export const fillPercent = (container: ContainerState): Decimal =>
  takesUp(container.holds).div(capacityOf(container)).times(100);
