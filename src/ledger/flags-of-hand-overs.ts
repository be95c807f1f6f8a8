/** What is wrong with loads: amounts that differ too much while the proof is awaited, and what came back and still stands here. */
import { awaited } from './due';
import type { Flag } from './flags';
import { differencesOf } from './hand-over-differences';
import type { ContainerState, HandOverState, State } from './state';
import { wholeOf } from './whole-of';

/** Over once the proof is there: then somebody has said what became of it. */
function ofDifferences(state: State, handOver: HandOverState): Flag[] {
  const open = new Set(awaited(state, handOver));
  const { handOverId } = handOver.body;
  return differencesOf(state, handOver).flatMap(({ containerId, agreed, share, standing }): Flag[] =>
    standing === 'under' || !open.has(containerId)
      ? []
      : [
          {
            pressing: standing === 'over' ? 'soon' : 'know',
            about: { containerId, handOverId, entryId: handOver.entryId },
            code: 'quantity-differs',
            agreed,
            percent: share.value.toFixed(),
          },
        ],
  );
}

/** The rejected load that its last coming and going was; null where it stayed here, or was brought back some other way. */
export function cameBackWith(state: State, { marks, goneSince }: ContainerState) {
  if (goneSince !== null) return null;
  const last = marks.findLast(({ body: { mark } }) => mark === 'gone' || mark === 'came-back');
  if (last?.body.mark !== 'came-back') return null;
  for (const handOver of state.handOvers.values())
    if (handOver.rejected.some(({ entryId }) => entryId === last.entryId)) return { handOver, at: last.at };
  return null;
}

function ofReturned(state: State, container: ContainerState): Flag[] {
  const back = cameBackWith(state, container);
  if (!back || (wholeOf(container).length === 0 && container.doubtfulSince === null)) return [];
  const { containerId } = container.body;
  const { handOverId } = back.handOver.body;
  return [{ pressing: 'soon', about: { containerId, handOverId }, code: 'load-came-back', since: back.at }];
}

export const flagsOfHandOvers = (state: State): Flag[] => [
  ...[...state.containers.values()].flatMap((container) => ofReturned(state, container)),
  ...[...state.handOvers.values()].flatMap((handOver) => ofDifferences(state, handOver)),
];
