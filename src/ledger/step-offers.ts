/** What may be started or gone on with on a batch: the likely one first, and whether a clearance of it holds. */
import { type Checklist, isWalk } from '../safety/checklist-schema';
import { clearanceUntil } from '../safety/clearance';
import { clearanceFault, isUsed } from './clearance';
import type { ChecklistFinished } from './entries/checklists';
import type { State, StepState, Told } from './state';
import { treatmentStep } from './treatment';
import { lastWalk } from './walks';
import { workshopLists } from './workshop-lists';

export type StepOffer = {
  readonly list: Checklist;
  /** The clearance that holds now and has begun nothing yet; null when the list must be gone through. */
  readonly clearance: Told<ChecklistFinished> | null;
  /** The step that runs, for a list that lets it go on. */
  readonly running: StepState | null;
};

export type Asking = {
  readonly batchId: string | null;
  /** For a list that is gone through for one container. */
  readonly containerId?: string | undefined;
  readonly stationId?: string | null | undefined;
  readonly who: string | null;
  readonly at: string;
  /** For the list of a treatment: the bases that are to go in. */
  readonly bases?: readonly string[] | undefined;
};

/** Lists that concern the whole place, for every batch. */
const ofThePlace: ReadonlySet<Checklist['step']> = new Set<Checklist['step']>(['readiness', 'inspection']);

/** The batch that a list is gone through for: none where it concerns the whole place, or a container that may hold several. */
export const batchOf = ({ step }: Checklist, batchId: string | null): string | null =>
  ofThePlace.has(step) || step === treatmentStep ? null : batchId;

/** Whether finishing the list begins nothing: it was a look, or the step runs already. */
export const isLook = ({ step, moment }: Checklist): boolean => ofThePlace.has(step) || moment === 'running';

/** The list that is gone through to start a step of this kind. */
export const startList = (state: State, kind: string): Checklist | undefined =>
  [...workshopLists(state).values()].find(({ step, moment }) => step === kind && moment === 'start');

/** The newest finished run of this very list that holds for this batch and person. */
export function clearanceOfList(
  state: State,
  list: Checklist,
  asking: Asking,
): Told<ChecklistFinished> | null {
  const batchId = batchOf(list, asking.batchId);
  const held = [...state.checklists.values()].findLast(
    ({ entryId, body }) =>
      body.checklist.id === list.id &&
      clearanceFault(state, entryId, { ...asking, step: list.step, batchId }) === null,
  );
  return held && (isLook(list) || !isUsed(state, held.entryId)) ? held : null;
}

/** Whether a list that others require is in date: gone through by this person, or walked by anyone. */
function isInDate(state: State, list: Checklist, asking: Asking): boolean {
  // A list that others require is of the whole place, never of one container.
  if (!isWalk(list)) return clearanceOfList(state, list, { ...asking, containerId: undefined }) !== null;
  const walked = lastWalk(state)?.at;
  return walked !== undefined && clearanceUntil(list, walked) >= asking.at;
}

/** The lists that must be in date before this one, and are not. */
export const requiredBefore = (state: State, list: Checklist, asking: Asking): readonly Checklist[] =>
  list.requires.flatMap((id) => {
    const wanted = workshopLists(state).get(id);
    return wanted && !isInDate(state, wanted, asking) ? [wanted] : [];
  });

/** The step of this kind that runs in the batch; null when none does. */
export function runningStep(state: State, batchId: string | null, step: string): StepState | null {
  const running = [...state.steps.values()].findLast(
    ({ body, endedAt }) => body.batchId === batchId && body.step === step && endedAt === null,
  );
  return running ?? null;
}

/**
 * In the order of the work, beginning after the last step of the batch and coming round to the ones before it; a step
 * that runs and has a list for going on comes first.
 */
export function stepOffers(state: State, asking: Asking): readonly StepOffer[] {
  const steps = [...workshopLists(state).values()].filter(({ step }) => !ofThePlace.has(step));
  const starts = steps.filter(({ moment }) => moment === 'start');
  const last = state.batches.get(asking.batchId ?? '')?.steps.at(-1);
  const done = last === undefined ? undefined : state.steps.get(last)?.body.step;
  const after = starts.findIndex(({ step }) => step === done) + 1;
  const offer = (list: Checklist, running: StepState | null): StepOffer => ({
    list,
    // A treatment is of a container, which is chosen first.
    clearance: list.step === treatmentStep ? null : clearanceOfList(state, list, asking),
    running,
  });
  const goOn = steps.flatMap((list) => {
    const running = list.moment === 'running' ? runningStep(state, asking.batchId, list.step) : null;
    return running ? [offer(list, running)] : [];
  });
  return [...goOn, ...[...starts.slice(after), ...starts.slice(0, after)].map((list) => offer(list, null))];
}
