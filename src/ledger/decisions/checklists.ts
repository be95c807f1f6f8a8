/** Decisions on lists that were gone through. */
import { faultOf } from '../../safety/own-lists';
import type { Context, IntentionOf } from '../intention';
import { type Decided, refused, written } from '../refusal';
import type { State } from '../state';
import { workshopLists } from '../workshop-lists';
import { stated } from './stated';

/**
 * A run is written down once, however often the last answer was tapped. Somebody who rings at a stated time is waited
 * for from then on.
 */
export function finishChecklist(
  state: State,
  intention: IntentionOf<'finish-checklist'>,
  { newId }: Context,
): Decided {
  const { runId, second, batchId, outcome } = intention;
  const again = [...state.checklists.values()].some(({ body }) => body.runId === runId);
  if (again) return refused({ code: 'already-written', details: { id: runId }, field: 'runId' });
  const waited = outcome === 'cleared' && second?.at !== undefined && second.at > intention.finishedAt;
  return written(
    { kind: 'checklist-finished', v: 1, ...stated(intention) },
    ...(waited && second?.at !== undefined
      ? [
          {
            kind: 'clock-started' as const,
            v: 1 as const,
            clockId: newId(),
            of: 'check-in' as const,
            due: second.at,
            batchId,
            name: second.name,
          },
        ]
      : []),
  );
}

/** Ours can be neither dropped nor robbed of their stops; what is made wider says why. */
export function changeList(state: State, intention: IntentionOf<'change-list'>): Decided {
  const { change } = intention;
  const list = workshopLists(state).get(change.list);
  if (!list)
    return refused({ code: 'unknown', details: { to: 'list', id: change.list }, field: 'change.list' });
  const fault = faultOf(list, change);
  if (fault) return refused({ code: 'list-change-not-in-order', details: { fault }, field: 'change' });
  return written({ kind: 'list-changed', v: 1, ...stated(intention) });
}
