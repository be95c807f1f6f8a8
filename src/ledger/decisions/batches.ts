/** Decisions on batches and their steps. */
import { beginningFault } from '../clearance';
import type { Context, IntentionOf } from '../intention';
import { type Decided, refused, written } from '../refusal';
import type { State } from '../state';
import { codesOf, nextCode, takenCode } from './codes';
import { stated } from './stated';

export function openBatch(state: State, intention: IntentionOf<'open-batch'>, { newId }: Context): Decided {
  const { code, ...batch } = stated(intention);
  const taken = codesOf(state, 'batch');
  const fault = code === undefined ? null : takenCode(code, taken);
  if (fault) return refused(fault);
  const given = code ?? nextCode('B', taken);
  return written({ kind: 'batch-opened', v: 1, batchId: newId(), code: given, ...batch });
}

/** A planned step: only on a clearance that holds now, for this step, this batch and this person, and that has begun nothing yet. */
export function startStep(state: State, intention: IntentionOf<'start-step'>, context: Context): Decided {
  const { step, batchId, stationId, clearance } = intention;
  const { who, now: at, newId } = context;
  const fault = beginningFault(state, clearance, { step, batchId, stationId, who, at });
  if (fault) return refused(fault);
  return written({ kind: 'step-started', v: 1, stepId: newId(), ...stated(intention) });
}

export function endStep(state: State, intention: IntentionOf<'end-step'>): Decided {
  const { stepId } = intention;
  const endedAt = state.steps.get(stepId)?.endedAt ?? null;
  if (endedAt !== null)
    return refused({ code: 'already-ended', details: { stepId, at: endedAt }, field: 'stepId' });
  return written({ kind: 'step-ended', v: 1, ...stated(intention) });
}
