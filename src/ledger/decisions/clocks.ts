/** Decisions on clocks. */
import type { IntentionOf } from '../intention';
import { type Decided, refused, written } from '../refusal';
import type { State } from '../state';
import { stated } from './stated';

/** One tap twice stops it once. */
export function stopClock(state: State, intention: IntentionOf<'stop-clock'>): Decided {
  const { clockId } = intention;
  const stopped = state.clocks.get(clockId)?.stopped;
  if (stopped)
    return refused({ code: 'already-written', details: { id: stopped.entryId }, field: 'clockId' });
  return written({ kind: 'clock-stopped', v: 1, ...stated(intention) });
}
