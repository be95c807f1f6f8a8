/** Decisions on what leaves, what comes back, and what is proved of it. */
import type { Context, IntentionOf } from '../intention';
import { type Decided, type Refusal, refused, written } from '../refusal';
import type { State } from '../state';
import { stated } from './stated';

/** Each container once: the same one twice in a load is a slip of the finger. */
export function logHandOver(intention: IntentionOf<'log-hand-over'>, { newId }: Context): Decided {
  const ids = intention.containers.map(({ containerId }) => containerId);
  const twice = ids.find((id, i) => ids.indexOf(id) !== i);
  if (twice !== undefined)
    return refused({ code: 'same-container', details: { containerId: twice }, field: 'containers' });
  return written({ kind: 'handed-over', v: 1, handOverId: newId(), ...stated(intention) });
}

/** A container that did not leave with that load can neither come back with it nor be proved by it. */
function notOfLoad(state: State, handOverId: string, containerIds: readonly string[]): Refusal | null {
  const parts = state.handOvers.get(handOverId)?.parts;
  const other = parts && containerIds.find((id) => parts.every(({ containerId }) => containerId !== id));
  return other === undefined
    ? null
    : { code: 'not-of-hand-over', details: { handOverId, containerId: other }, field: 'containerIds' };
}

export function logRejectedLoad(state: State, intention: IntentionOf<'log-rejected-load'>): Decided {
  const fault = notOfLoad(state, intention.handOverId, intention.containerIds);
  return fault ? refused(fault) : written({ kind: 'load-rejected', v: 1, ...stated(intention) });
}

export function fileProof(state: State, intention: IntentionOf<'file-proof'>): Decided {
  const fault = notOfLoad(state, intention.handOverId, intention.containerIds);
  return fault ? refused(fault) : written({ kind: 'proof-filed', v: 1, ...stated(intention) });
}
