/** The containers that hold free liquid. */
import { containerFigures } from './container-figures';
import type { State } from './state';

/** In the order of the record. */
export const liquidContainers = (state: State): readonly string[] =>
  [...state.containers.values()].flatMap(({ body: { containerId } }) =>
    containerFigures(state, containerId).contents.liquid ? [containerId] : [],
  );
