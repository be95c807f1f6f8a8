/** What is in a container, in words: what nobody knows is not called by what was poured in, and never empty. */
import { isDoubted } from '../../ledger/container-life';
import type { ContainerState, State } from '../../ledger/state';
import { contentsTitle } from '../amounts';
import { lifeStates } from './life-words';
import { containerWords as w } from './words';

export const contentsText = (state: State, container: ContainerState): string =>
  isDoubted(state, container)
    ? lifeStates['not-determined'].word
    : contentsTitle(state, container.body.containerId) || w.empty;
