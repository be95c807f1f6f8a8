/** How full a container may be. */
import { inUnit, quantity } from '../quantities/quantity';
import type { ContainerState, State, Volume } from './state';

/** Until the local rules say otherwise: room for the liquid to expand and to be carried without slopping. */
const usualFillPercent = '90';

/** Percent of the capacity, as a decimal, and whether the local rules said so. */
export function fillLimitPercent(state: State): { readonly percent: string; readonly stated: boolean } {
  const rule = state.rules.get('fill-limit')?.body.stated;
  if (rule?.rule !== 'fill-limit') return { percent: usualFillPercent, stated: false };
  return { percent: rule.value.value, stated: true };
}

export const capacityOf = ({ body }: ContainerState): Volume => inUnit(body.capacity, 'L');

/** The volume that may be in it. */
export const fillLimit = (state: State, container: ContainerState): Volume =>
  quantity(capacityOf(container).times(fillLimitPercent(state).percent).div(100), 'L');
