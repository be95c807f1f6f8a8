/** What the record has to say to a test for silver: whether it may go on, its clock, and where its waste may go. */
import type { Item } from '../safety/checklist-item';
import type { Checklist } from '../safety/checklist-schema';
import { ceilingMinutes } from '../safety/silver-check';
import type { StreamKind } from '../safety/stream-kind';
import { answeredLater, askedLater, laterIntention, listBehind } from './asked-later';
import type { ChecklistFinished } from './entries/checklists';
import type { IntentionOf } from './intention';
import type { ClockState, ContainerState, State, StepState, Told } from './state';
import { type Asking, clearanceOfList, runningStep } from './step-offers';
import { workshopLists } from './workshop-lists';

/** Steps of the test, each behind a list of its own. */
export type TestStep = 'chloride-test' | 'ammonia-test';

export type Gate =
  | { readonly open: true; readonly step: StepState }
  /** `clearance` holds already and has begun nothing yet. */
  | { readonly open: false; readonly list: Checklist; readonly clearance: Told<ChecklistFinished> | null };

const listFor = (state: State, step: TestStep): Checklist | undefined =>
  [...workshopLists(state).values()].find((list) => list.step === step);

/**
 * Open while the step runs in the batch: it was begun on a clearance, or written down as happened without one, which stays
 * flagged. Null where no list is known for it.
 */
export function gateOf(state: State, step: TestStep, asking: Asking): Gate | null {
  const running = runningStep(state, asking.batchId, step);
  if (running) return { open: true, step: running };
  const list = listFor(state, step);
  return list ? { open: false, list, clearance: clearanceOfList(state, list, asking) } : null;
}

/** The question of a list for the minutes that the ammonia stood. */
const asksMinutes = (item: Item): item is Extract<Item, { kind: 'reading' }> =>
  item.kind === 'reading' && item.when === 'during' && item.unit === 'min';

/**
 * The minutes that the ammonia stood, as the answer to the list behind its step, which asks for them; null where no list stands
 * behind it, or it is answered.
 * @param minutes whole @param from when the ammonia went in
 */
export function minutesAnswer(
  state: State,
  step: StepState,
  { minutes, from, at }: { readonly minutes: number; readonly from: string; readonly at: string },
): IntentionOf<'answer-checklist-later'> | null {
  const asked = askedLater(state, listBehind(step));
  const item = asked?.open.find(asksMinutes);
  if (!asked || !item) return null;
  const result = answeredLater(asked, item, { kind: 'reading', written: String(minutes) }, from, at);
  return result.ok ? laterIntention(asked.told.entryId, result.value) : null;
}

/** Minutes from the first drop of ammonia to the acid, as the list of this workshop asks for; the published ceiling where it does not. */
export function destroyWithin(state: State): number {
  const asked = listFor(state, 'ammonia-test')?.items.flatMap((item) =>
    asksMinutes(item) && item.max !== undefined ? [Number(item.max)] : [],
  );
  return Math.min(ceilingMinutes, ...(asked ?? []));
}

/** The clock of a test, by the batch and the moment it is due, the last one started; null where none was, or it was withdrawn. */
export const ammoniaClock = (state: State, batchId: string, due: string | null): ClockState | null =>
  [...state.clocks.values()].findLast(
    ({ body }) => body.of === 'ammonia-silver' && body.batchId === batchId && body.due === due,
  ) ?? null;

/** Whether all that is in the container is untreated waste of this kind, and more of it may go in. */
export const holdsOnly = (
  state: State,
  { contents, closedAt, doubtfulSince, heldSince, leavingSince, goneSince, damagedSince }: ContainerState,
  kind: StreamKind,
): boolean =>
  [closedAt, doubtfulSince, heldSince, leavingSince, goneSince, damagedSince].every(
    (since) => since === null,
  ) &&
  contents.length > 0 &&
  contents.every(
    ({ streamId, treatedBy }) =>
      treatedBy.length === 0 && streamId !== null && state.streams.get(streamId)?.body.stream === kind,
  );
