/** What a list asks while its step runs and after it, and what of that is still to be asked. */
import type { Item } from '../safety/checklist-item';
import { answeredAs, type Outcome, stillToAsk } from '../safety/checklist-run';
import type { Checklist } from '../safety/checklist-schema';
import { inThisRun } from '../safety/in-this-run';
import type { Answered, Context, Given } from '../safety/run-schema';
import { answerOf } from './finished-run';
import type { IntentionOf } from './intention';
import type { ChecklistState, State, StepState } from './state';
import { workshopLists } from './workshop-lists';

/** The list that stands behind a step: that of its clearance, or the one gone through late; null when there is none. */
export const listBehind = ({ body, lateLists }: StepState): string | null =>
  body.clearance ?? lateLists.at(-1) ?? null;

type Asked = { readonly told: ChecklistState; readonly list: Checklist; readonly open: readonly Item[] };

const contextOf = ({ who, body }: ChecklistState) => ({ person: who ?? '', batchId: body.batchId });

/** Null where the list is not in the record, or has stopped before the step: nothing runs then. A late one finds it running. */
export function askedLater(state: State, entryId: string | null): Asked | null {
  const told = state.checklists.get(entryId ?? '');
  const list = told && workshopLists(state).get(told.body.checklist.id);
  if (!told || !list || (told.body.outcome === 'stopped' && !told.body.late)) return null;
  const later = told.later.map(({ body }) => ({
    item: body.answer.item,
    stopped: body.answer.stopped === true,
  }));
  return { told, list, open: stillToAsk({ list, context: contextOf(told) }, later) };
}

/** Where it is answered: its step or its treatment. */
export const treatmentOn = (state: State, entryId: string) =>
  [...state.treatments.values()].find(({ body }) => body.clearance === entryId) ?? null;

/** An answer to one of them. @param opened when the question appeared @param bounds limits that the app knows by now */
export function answeredLater(
  { told, list }: Asked,
  item: Item,
  given: Given,
  opened: string,
  at: string,
  bounds: NonNullable<Context['bounds']> = {},
): Outcome<Answered> {
  const context = { ...contextOf(told), bounds };
  return answeredAs({ list, context }, inThisRun(item, context), given, opened, at);
}

export const laterIntention = (
  entryId: string,
  answered: Answered,
): IntentionOf<'answer-checklist-later'> => ({
  do: 'answer-checklist-later',
  checklist: entryId,
  answer: answerOf(answered),
});
