/** The containers that hold free liquid, and are here. */
import { containerFigures } from './container-figures';
import type { State } from './state';

/** In the order of the record. */
export const liquidContainers = (state: State): readonly string[] =>
  [...state.containers.values()].flatMap(({ body: { containerId }, goneSince }) =>
    goneSince === null && containerFigures(state, containerId).contents.liquid ? [containerId] : [],
  );
