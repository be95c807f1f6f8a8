/** The line that a container's page shows of its candidates: loaded and worked out after that page stands. */
import { waiting } from '../../ledger/candidate-words';
import { candidatesOf } from '../../ledger/container-candidates';
import type { ContainerState, State } from '../../ledger/state';
import { codesLine, warningLine } from './codes-line';
import { candidateWords as w } from './words';

export type DoorLine = { readonly text: string; readonly mark: 'unknown' | 'candidate' | 'confirmed' };

export function doorLine(state: State, container: ContainerState): DoorLine {
  const all = candidatesOf(state, container);
  if (typeof all === 'string')
    return { text: all === 'empty' ? w.emptySecond : w.notDeterminedSecond, mark: 'unknown' };
  const { firing, waiting: without } = waiting(container, all);
  const parts = [warningLine(container, all), codesLine(container, all)].filter((text) => text !== '');
  if (parts.length === 0 || firing === 0) return { text: w.nothingFires, mark: 'unknown' };
  return { text: w.doorLine(parts.join('; '), without), mark: without === 0 ? 'confirmed' : 'candidate' };
}
