/** A container that is described and not yet in the record, asked whether it would take something. */

import { nothing } from './amounts';
import { type Filling, fillingFault } from './decisions/containers';
import type { IntentionOf } from './intention';
import type { Refusal } from './refusal';
import type { ContainerState, State } from './state';

const described = 'described';

const asContainer = (intention: IntentionOf<'open-container'>): ContainerState => {
  const { do: _, code = '', ...container } = intention;
  return {
    entryId: described,
    at: intention.openedOn,
    who: null,
    body: { kind: 'container-opened', v: 1, containerId: described, code, ...container },
    marks: [],
    movements: [],
    holds: nothing,
    contents: [],
    treatmentIds: [],
    benchTests: [],
    firstWasteIn: null,
    closedAt: null,
    doubtfulSince: null,
    changes: [],
    levels: [],
    determined: null,
    answers: [],
    reports: [],
    inspections: [],
    areas: [],
    heldSince: null,
    leavingSince: null,
    goneSince: null,
    handOverId: null,
    damagedSince: null,
    proofFiledAt: null,
  };
};

/** Why this should not go into the container, once it is opened as described; null when it may. */
export function describedFault(
  state: State,
  intention: IntentionOf<'open-container'>,
  filling: Filling,
): Refusal | null {
  const containers = new Map(state.containers).set(described, asContainer(intention));
  return fillingFault({ ...state, containers }, described, filling);
}
