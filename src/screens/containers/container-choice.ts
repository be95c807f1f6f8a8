/** Containers to choose from, each with what is in it and its state: a closed, doubtful or gone one can have been used, too. */

import { isDoubted, type LifeName, lifeOf } from '../../ledger/container-life';
import type { ContainerState, State } from '../../ledger/state';
import type { DecimalSign } from '../../quantities/format';
import { contentsTitle, heldText } from '../amounts';
import { lifeStates } from './life-words';
import { containerWords as w } from './words';

/** Said by what is in it. */
const quiet: ReadonlySet<LifeName> = new Set(['opened', 'filling', 'full', 'emptied']);

const short: Readonly<Partial<Record<LifeName, string>>> = {
  closed: w.closedState,
  'not-determined': w.contentsUnknown,
};

/** "C-03: Wash water B-18, 2.00 L, closed" */
export function containerChoice(
  state: State,
  container: ContainerState,
  sign: DecimalSign,
): { readonly value: string; readonly label: string } {
  const { body, holds, doubtfulSince } = container;
  const { is } = lifeOf(state, container);
  const parts = [
    contentsTitle(state, body.containerId) || (isDoubted(state, container) ? '' : w.empty),
    doubtfulSince === null || holds.volume.gt(0) || holds.mass.gt(0) ? heldText(holds, sign) : '',
    quiet.has(is) ? '' : (short[is] ?? lifeStates[is].word.toLowerCase()),
  ];
  return { value: body.containerId, label: `${body.code}: ${parts.filter(Boolean).join(', ')}` };
}

/** Those that are here, then those that are gone: what happened before they went can still be written down. */
export const hereFirst = (state: State): readonly ContainerState[] =>
  [...state.containers.values()].sort((a, b) => Number(a.goneSince !== null) - Number(b.goneSince !== null));
