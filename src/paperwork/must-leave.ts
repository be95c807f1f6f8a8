/** By when a container must have left, as labels and papers tell it: by the clocks that run on the screen, and no other. */
import { standsNearWork } from '../ledger/accumulation';
import { type Due, duesOf } from '../ledger/due';
import type { ContainerState } from '../ledger/state';
import type { Asked } from './disposal/asked';
import { noTimeRuns, notDetermined } from './words';

/** With both readings; not determined while nothing is in it, or no limit was entered. */
export function mustLeave(
  { state, now, zone }: Pick<Asked, 'state' | 'now' | 'zone'>,
  container: ContainerState,
): Due | typeof noTimeRuns | typeof notDetermined {
  const due = duesOf(state, container, now, zone).find(({ kind }) => kind === 'leave');
  if (due) return due;
  if (container.firstWasteIn === null) return notDetermined;
  return container.goneSince !== null || standsNearWork(state, container) ? noTimeRuns : notDetermined;
}
