/** Where a waste that is refused in one container may go instead, as far as the record tells. */
import { hasAny, isWaste, type ThingId, traitsOf } from '../safety/must-not-meet/matter';
import { asHeld, nothing, plus } from './amounts';
import { isDoubted } from './container-life';
import { type Filling, fillingFault } from './decisions/containers';
import { capacityOf } from './fill';
import { contentsSide, vesselSide } from './meeting-sides';
import type { ContainerState, State } from './state';
import { givesGas } from './waste-kinds';
import { wholeOf } from './whole-of';

/** How near a container is to what comes: of its own kind, empty, of another kind. */
function nearness({ contents }: ContainerState, kinds: ReadonlySet<string>, state: State): number {
  if (contents.length === 0) return 1;
  const own = contents.every(({ streamId }) =>
    kinds.has(state.streams.get(streamId ?? '')?.body.stream ?? ''),
  );
  return own ? 0 : 2;
}

/** As `materials` in reactivity.json names them. */
const plastics: ReadonlySet<ThingId> = new Set(['hdpe', 'ldpe', 'polypropylene', 'pvc', 'fluoropolymer']);

const isPlastic = ({ body }: ContainerState): boolean =>
  vesselSide(body).some(({ thing }) => plastics.has(thing));

/**
 * Whether it may be named as a place: nothing that gives off gas goes under a tight cap, no acid into what nobody knows, and
 * ammonia-test waste, which is kept acid, into plastic only.
 */
function isNamed(container: ContainerState, { side }: Filling): boolean {
  const { body } = container;
  if (side.some(({ thing }) => thing === 'ammonia-test-waste') && !isPlastic(container)) return false;
  if (body.cap === 'tight' && side.some(({ thing }) => isWaste(thing) && givesGas(thing))) return false;
  return vesselSide(body).length > 0 || !side.some((matter) => hasAny(traitsOf(matter), ['acid']));
}

/**
 * Containers that would take it, those with its own kind first, then empty ones. None named does not mean that there is no
 * place: a new one may be opened.
 * @param except containers that it is not to go into: the one that refused it, the one that it comes from
 */
export function placesThatFit(
  state: State,
  filling: Filling,
  except: readonly string[],
): readonly ContainerState[] {
  const kinds = new Set(filling.side.map(({ thing }) => thing));
  return [...state.containers.values()]
    .filter(({ body }) => !except.includes(body.containerId))
    .filter((container) => isNamed(container, filling))
    .filter(({ body }) => fillingFault(state, body.containerId, filling) === null)
    .sort((a, b) => nearness(a, kinds, state) - nearness(b, kinds, state));
}

/**
 * Sound, empty containers into which all of a damaged one may be moved, the smallest that fits first. What nobody knows
 * is taken for acid that gives off gas: no tight cap, and plastic only.
 */
export function emptyPlaces(state: State, container: ContainerState): readonly ContainerState[] {
  const { containerId } = container.body;
  const added = wholeOf(container).map(asHeld).reduce(plus, nothing);
  const side = contentsSide(state, containerId);
  const unknown = side.length === 0 || isDoubted(state, container);
  const filling = { added, side, field: 'toContainerId' };
  return placesThatFit(state, filling, [containerId])
    .filter(({ contents }) => contents.length === 0)
    .filter((place) => !unknown || (place.body.cap !== 'tight' && isPlastic(place)))
    .toSorted((a, b) => capacityOf(a).comparedTo(capacityOf(b)));
}
