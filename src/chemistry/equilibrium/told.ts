/** What an equilibrium tells of a component, a solid or the gas. */
import type { Component } from './reaction';
import type { Equilibrium } from './solve';
import { phaseOf, type SolidId } from './system';

/** mol of a component in solution, all its species together. */
export function dissolved({ system, moles }: Equilibrium, component: Component): number {
  const k = system.components.indexOf(component);
  const { starts, columns, values } = system.nu;
  let sum = 0;
  for (let j = 0; j < moles.length; j++)
    for (let a = starts[j] ?? 0; a < (starts[j + 1] ?? 0); a++)
      if (columns[a] === k) sum += (values[a] ?? 0) * (moles[j] ?? 0);
  return sum;
}

/** mol of a component in all solids together, gas not counted. */
export function inSolids({ solids }: Equilibrium, component: Component): number {
  let sum = 0;
  for (const [id, n] of solids)
    if (!id.endsWith('(g)')) sum += n * (phaseOf(id).parts.of.get(component) ?? 0);
  return sum;
}

/**
 * log10 of how far a solid is saturated, 0 where it is in equilibrium; of a gas its pressure in atm. Undefined where the
 * liquor holds none of one of its components.
 */
export function saturation({ system, start, waterActivity }: Equilibrium, id: SolidId): number | undefined {
  const { lnK, parts } = phaseOf(id);
  let ln = -lnK + parts.water * Math.log(waterActivity);
  for (const [component, count] of parts.of) {
    const k = system.components.indexOf(component);
    const activity = start.lnActivity[k];
    if (activity === undefined) return undefined;
    ln += count * activity;
  }
  return ln / Math.LN10;
}
