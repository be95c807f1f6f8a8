/** What a clock belongs to: the clearance whose second person it waits for, who that is, the list of the next look. */
import type { Checklist } from '../safety/checklist-schema';
import type { ChecklistState, ClockState, State } from './state';
import { runningStep } from './step-offers';
import { workshopLists } from './workshop-lists';

/** Both were written at once, for the same person and time. */
const belong = (told: ChecklistState, { at, body }: ClockState): boolean =>
  body.of === 'check-in' &&
  at === told.at &&
  body.due === told.body.second?.at &&
  body.name === told.body.second.name &&
  body.batchId === told.body.batchId;

/** The clock that waits for the second person of a list; null where none was to ring. */
export const checkInOf = (state: State, told: ChecklistState): ClockState | null =>
  [...state.clocks.values()].find((clock) => belong(told, clock)) ?? null;

/** The list that named who rings; null when it was not begun by one. */
export const listOfCheckIn = (state: State, clock: ClockState): ChecklistState | null =>
  [...state.checklists.values()].find((told) => belong(told, clock)) ?? null;

/** Telephone of somebody of the workshop, by name; null when nobody here is called so, or no number was given. */
export function phoneOf(state: State, name: string | undefined): string | null {
  const found = [...state.people.values()].find(({ body, leftAt }) => leftAt === null && body.name === name);
  return found?.body.phone ?? null;
}

/** The list that is gone through at a look at what runs in the batch; null where no step that has one runs. */
export function listOfLook(state: State, batchId: string | null): Checklist | null {
  const lists = [...workshopLists(state).values()].filter(({ moment }) => moment === 'running');
  return lists.find(({ step }) => runningStep(state, batchId, step) !== null) ?? null;
}

/** The steps that run in a batch, by their names. */
export const stepsRunning = (state: State, batchId: string | null): readonly string[] =>
  [...state.steps.values()]
    .filter(({ body, endedAt }) => body.batchId === batchId && endedAt === null)
    .map(({ body }) => body.step);
