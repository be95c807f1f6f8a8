/** The containers that hold free liquid, and are here. */
import { containerFigures } from './container-figures';
import type { ContainerState, State } from './state';

const isLiquid = (state: State, { body, goneSince }: ContainerState): boolean =>
  goneSince === null && containerFigures(state, body.containerId).contents.liquid !== undefined;

/** In the order of the record. */
export const liquidContainers = (state: State): readonly string[] =>
  [...state.containers.values()].flatMap((container) =>
    isLiquid(state, container) ? [container.body.containerId] : [],
  );

/** Whether there is any: most often the first that is looked at. */
export const hasLiquid = (state: State): boolean =>
  [...state.containers.values()].some((container) => isLiquid(state, container));
