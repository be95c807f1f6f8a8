/** Room over the liquor in a container, for the plan and for the run alike: the foam of a portion must find room in it. */
import { volumeRead } from '../chemistry/liquor';
import { minus } from '../quantities/expression';
import { type Figure, workedOut } from '../quantities/figure';
import { type ContainerFigures, containerFigures } from './container-figures';
import type { State } from './state';

/**
 * Room left in a container; undefined where a residue takes up nobody knows how much.
 * @param figures of what is in it, or was before a treatment
 */
export function freeSpace(
  state: State,
  containerId: string,
  { load, contents }: ContainerFigures = containerFigures(state, containerId),
): Figure<'L'> | undefined {
  const container = state.containers.get(containerId);
  if (!container || !load || contents.residues.length > 0) return undefined;
  const { value, unit } = container.body.capacity;
  const capacity = volumeRead({ value, unit }, `container/${containerId}/capacity`, 'Holds when full');
  return workedOut({
    sentence: 'Free space over the liquor',
    unit: 'L',
    formula: minus(capacity, load.volume),
  });
}
