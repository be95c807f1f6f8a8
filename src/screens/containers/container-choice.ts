/** Containers to choose from, each with what is in it and its state: a closed or doubtful one can have been used, too. */

import type { ContainerState, State } from '../../ledger/state';
import type { DecimalSign } from '../../quantities/format';
import { contentsTitle, heldText } from '../amounts';
import { containerWords as w } from './words';

/** "C-03: Wash water B-18, 2.00 L, closed" */
export function containerChoice(
  state: State,
  { body, holds, closedAt, doubtfulSince }: ContainerState,
  sign: DecimalSign,
): { readonly value: string; readonly label: string } {
  const parts = [
    contentsTitle(state, body.containerId) || w.empty,
    heldText(holds, sign),
    ...(closedAt === null ? [] : [w.closedState]),
    ...(doubtfulSince === null ? [] : [w.contentsUnknown]),
  ];
  return { value: body.containerId, label: `${body.code}: ${parts.join(', ')}` };
}
