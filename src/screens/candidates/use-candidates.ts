/** What the laws make of a container, worked out once the page is drawn: it takes a phone a while the first time. */
import { type ContainerCandidates, candidatesOf } from '../../ledger/container-candidates';
import type { NoMixture } from '../../ledger/container-mixture';
import type { ContainerState } from '../../ledger/state';
import { useShell } from '../shell';
import { useLater } from '../treatment/use-worked-out';

/** Undefined while it is being worked out. */
export function useCandidates(container: ContainerState): ContainerCandidates | NoMixture | undefined {
  const { state } = useShell();
  return useLater(() => candidatesOf(state.value, container), state.value);
}
