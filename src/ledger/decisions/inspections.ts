/** Decisions on walks along the containers, and on what they found. */
import type { IntentionOf } from '../intention';
import { type Decided, refused, written } from '../refusal';
import type { State } from '../state';
import { stated } from './stated';

/** A walk ends once, however often the last answer was tapped. */
export function finishWalk(state: State, intention: IntentionOf<'finish-walk'>): Decided {
  const { walkId } = intention;
  if (state.walks.get(walkId)?.finished)
    return refused({ code: 'already-written', details: { id: walkId }, field: 'walkId' });
  return written({ kind: 'walk-finished', v: 1, ...stated(intention) });
}

export function closeFinding(state: State, intention: IntentionOf<'close-finding'>): Decided {
  const { findingId } = intention;
  const closed = state.findings.get(findingId)?.closed;
  if (closed)
    return refused({
      code: 'finding-closed',
      details: { findingId, at: closed.at },
      field: 'findingId',
    });
  return written({ kind: 'finding-closed', v: 1, ...stated(intention) });
}
