/** Decisions on treatments. What has happened is written down; only the beginning can be a plan. */
import { meetings, refusedMeeting } from '../../safety/must-not-meet/meetings';
import { beginningFault } from '../clearance';
import type { Agent } from '../entries/treatments';
import type { Context, IntentionOf } from '../intention';
import { basesOf } from '../list-bounds';
import { contentsSide, vesselSide } from '../meeting-sides';
import { type Decided, type Refusal, refused, written } from '../refusal';
import type { ContainerState, State } from '../state';
import { allowedNow, runningTreatment, treatmentRuleFault, treatmentStep } from '../treatment';
import { wasteKinds } from '../waste-kinds';
import { standingFault } from './containers';
import { stated } from './stated';

/** A treatment ends with a base, whatever it begins with. */
const anyBase: Agent = 'hydrated-lime';

/** What an agent must not meet: what is in the container, or what the container is made of. */
function agentFault(state: State, { body }: ContainerState, agents: readonly Agent[]): Refusal | null {
  const { containerId } = body;
  const field = 'containerId';
  const added = [...agents, anyBase].map((thing) => ({ thing }));
  const met = refusedMeeting(meetings(contentsSide(state, containerId), added, 'treatment'));
  if (met)
    return {
      code: 'must-not-be-treated',
      details: { containerId, by: met.by, there: met.a, added: met.b },
      field,
    };
  const bare = refusedMeeting(meetings(vesselSide(body), added, 'treatment'));
  return (
    bare && {
      code: 'material-does-not-hold',
      details: { containerId, by: bare.by, material: bare.a, added: bare.b },
      field,
    }
  );
}

/**
 * Why no base may be put on what the container holds, whoever allows it; null when nothing known forbids it.
 * @param agents what else is to go in
 */
export function treatingFault(
  state: State,
  containerId: string,
  agents: readonly Agent[] = [],
): Refusal | null {
  const field = 'containerId';
  const container = state.containers.get(containerId);
  if (!container) return { code: 'unknown', details: { to: 'container', id: containerId }, field };
  const { unaccounted } = wasteKinds(state, containerId);
  const forbidden = agentFault(state, container, agents);
  if (forbidden) return forbidden;
  const standing = standingFault(container, field);
  if (standing) return standing;
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
    treatingFault(
      state,
      containerId,
      intention.stages.map(({ agent }) => agent),
    ) ??
    (because ? { code: 'treatment-not-allowed' as const, details: { because } } : null) ??
    beginningFault(state, clearance, {
      step: treatmentStep,
      batchId: null,
      containerId,
      who,
      at,
      bases: basesOf(intention),
    });
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
