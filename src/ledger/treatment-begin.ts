/** What holds a treatment back before it begins: everything at once, so that nobody meets one fault after the other. */
import type { Checklist } from '../safety/checklist-schema';
import { clearanceFault } from './clearance';
import { treatingFault } from './decisions/treatments';
import type { ChecklistFinished } from './entries/checklists';
import type { Refusal } from './refusal';
import type { ContainerState, State, Told } from './state';
import { clearanceOfList, startList } from './step-offers';
import { runningTreatment, treatmentRuleFault, treatmentStep } from './treatment';

export type Readiness = {
  /** The list to go through; undefined only where no list is for this step. */
  readonly list: Checklist | undefined;
  /** The clearance that holds now and has begun nothing yet. */
  readonly clearance: Told<ChecklistFinished> | null;
  /** Faults of what is in it and of the local rule, then of the clearance. */
  readonly contents: readonly Refusal[];
  readonly cleared: Refusal | null;
};

/** The list that is gone through before a treatment. */
export const treatmentList = (state: State): Checklist | undefined => startList(state, treatmentStep);

type Asking = {
  readonly who: string | null;
  readonly at: string;
  /** Where the phone is, if somebody said so. */
  readonly stationId?: string | null | undefined;
  /** What is to go in, as it is chosen now. */
  readonly bases?: readonly string[];
};
type AskingOf = Asking & { readonly containerId: string };

/** Why the newest run of the list clears nothing now. */
function notCleared(state: State, list: Checklist, asking: AskingOf): Refusal {
  const newest = [...state.checklists.values()].findLast(({ body }) => body.checklist.id === list.id);
  const fault =
    newest && clearanceFault(state, newest.entryId, { step: list.step, batchId: null, ...asking });
  return fault ?? { code: 'no-clearance', details: { clearance: newest?.entryId ?? '' } };
}

export function readinessOf(state: State, containerId: string, asking: Asking): Readiness {
  const list = treatmentList(state);
  const contents = treatingFault(state, containerId);
  const because = treatmentRuleFault(state);
  const clearance = list ? clearanceOfList(state, list, { batchId: null, containerId, ...asking }) : null;
  return {
    list,
    clearance,
    contents: [
      ...(contents ? [contents] : []),
      ...(because ? [{ code: 'treatment-not-allowed' as const, details: { because } }] : []),
    ],
    cleared: clearance || !list ? null : notCleared(state, list, { containerId, ...asking }),
  };
}

/** Containers that hold something and are here, those with no treatment running first. */
export const treatable = (state: State): readonly ContainerState[] =>
  [...state.containers.values()]
    .filter(
      ({ contents, closedAt, goneSince }) => contents.length > 0 && closedAt === null && goneSince === null,
    )
    .sort(
      (a, b) =>
        Number(runningTreatment(state, a.body.containerId) !== null) -
        Number(runningTreatment(state, b.body.containerId) !== null),
    );
