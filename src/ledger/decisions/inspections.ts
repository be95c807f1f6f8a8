/** Decisions on what a walk along the containers found. */
import type { IntentionOf } from '../intention';
import { type Decided, refused, written } from '../refusal';
import type { State } from '../state';
import { stated } from './stated';

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
