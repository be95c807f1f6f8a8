/** Decisions on treatments. What has happened is written down; only the beginning can be a plan. */
import { mustNotBeMadeAlkaline } from '../../safety/must-not-meet';
import { clearanceFault } from '../clearance';
import type { Context, IntentionOf } from '../intention';
import { type Decided, type Refusal, refused, written } from '../refusal';
import type { State } from '../state';
import { allowedNow, runningTreatment, treatmentRuleFault, treatmentStep } from '../treatment';
import { wasteKinds } from '../waste-kinds';
import { stated } from './stated';

/** Why no base may be put on what the container holds, whoever allows it; null when nothing known forbids it. */
export function treatingFault(state: State, containerId: string): Refusal | null {
  const field = 'containerId';
  const container = state.containers.get(containerId);
  if (!container) return { code: 'unknown', details: { to: 'container', id: containerId }, field };
  const { kinds, unaccounted } = wasteKinds(state, containerId);
  const forbidden = mustNotBeMadeAlkaline(kinds);
  if (forbidden) {
    const { rule, there } = forbidden;
    return { code: 'must-not-be-treated', details: { containerId, rule: rule.id, there }, field };
  }
  const { closedAt, doubtfulSince, contents } = container;
  if (doubtfulSince !== null)
    return { code: 'contents-doubtful', details: { containerId, since: doubtfulSince }, field };
  if (unaccounted) return { code: 'contents-unaccounted', details: { containerId }, field };
  if (closedAt !== null) return { code: 'container-closed', details: { containerId, at: closedAt }, field };
  if (contents.length === 0) return { code: 'nothing-to-treat', details: { containerId }, field };
  const running = runningTreatment(state, containerId)?.body.treatmentId;
  if (running !== undefined)
    return { code: 'treatment-running', details: { containerId, treatmentId: running }, field };
  return null;
}

/** A plan: only where the local rules allow it, on contents that are known, on a clearance that holds now. */
export function beginTreatment(
  state: State,
  intention: IntentionOf<'begin-treatment'>,
  { now: at, newId, who }: Context,
): Decided {
  const { containerId, clearance } = intention;
  const because = treatmentRuleFault(state);
  const fault =
    treatingFault(state, containerId) ??
    (because ? { code: 'treatment-not-allowed' as const, details: { because } } : null) ??
    clearanceFault(state, clearance, { step: treatmentStep, batchId: null, who, at });
  if (fault) return refused(fault);
  const allowed = allowedNow(state);
  return written({ kind: 'treatment-begun', v: 1, treatmentId: newId(), allowed, ...stated(intention) });
}

/** What was begun already, however it was begun. */
export const logTreatment = (
  state: State,
  intention: IntentionOf<'log-treatment-happened'>,
  { newId }: Context,
): Decided =>
  written({
    kind: 'treatment-begun',
    v: 1,
    treatmentId: newId(),
    allowed: allowedNow(state),
    ...stated(intention),
  });

export function endTreatment(state: State, intention: IntentionOf<'end-treatment'>): Decided {
  const { treatmentId } = intention;
  const ended = state.treatments.get(treatmentId)?.ended;
  if (ended)
    return refused({
      code: 'treatment-ended',
      details: { treatmentId, at: ended.at },
      field: 'treatmentId',
    });
  return written({ kind: 'treatment-ended', v: 1, ...stated(intention) });
}
