/** Decisions on containers and what goes into them. */
import type { Matter } from '../../safety/must-not-meet/matter';
import { meetings, refusedMeeting } from '../../safety/must-not-meet/meetings';
import { asHeld, isNothing, placedAmount, plus, readableDifference } from '../amounts';
import { capacityOf, fillLimit, takesUp } from '../fill';
import type { Context, IntentionOf } from '../intention';
import { contentsSide, streamSide, vesselSide } from '../meeting-sides';
import { type Decided, type Refusal, refused, written } from '../refusal';
import type { ContainerState, Held, State } from '../state';
import { runningTreatment } from '../treatment';
import { wasteKinds } from '../waste-kinds';
import { nextCode, takenCode } from './codes';
import { stated } from './stated';

export function openContainer(
  state: State,
  intention: IntentionOf<'open-container'>,
  { newId }: Context,
): Decided {
  const { code, doubt, level, ...container } = stated(intention);
  const taken = [...state.containers.values()].map(({ body }) => body.code);
  const fault = code === undefined ? null : takenCode(code, taken);
  if (fault) return refused(fault);
  const given = code ?? nextCode('C', taken);
  const containerId = newId();
  return written(
    { kind: 'container-opened', v: 1, containerId, code: given, ...container },
    ...(doubt
      ? [{ kind: 'container-marked', v: 1, containerId, mark: 'contents-doubtful', ...doubt } as const]
      : []),
    ...(level ? [{ kind: 'level-read', v: 1, containerId, level } as const] : []),
  );
}

/** Somebody says what is in it and how they know: a waste is logged for it, and it is that from now on. */
export function determineContents(intention: IntentionOf<'determine-contents'>, { newId }: Context): Decided {
  const { stream, ...determined } = stated(intention);
  const streamId = newId();
  return written(
    { kind: 'stream-logged', v: 1, streamId, batchId: null, stepId: null, ...stream },
    { kind: 'contents-determined', v: 1, streamId, ...determined },
  );
}

/** What is to go into a container: how much, and what it is. `field` is where a form says so. */
export type Filling = {
  readonly added: Held;
  readonly side: readonly Matter[];
  readonly field: string;
};

/** What it must not meet in the container, or what the container is made of and does not stand. */
function meetingFault(state: State, { body }: ContainerState, { side, field }: Filling): Refusal | null {
  const { containerId } = body;
  const met = refusedMeeting(meetings(contentsSide(state, containerId), side));
  if (met)
    return {
      code: 'must-not-meet',
      details: { containerId, by: met.by, there: met.a, added: met.b },
      field,
    };
  const bare = refusedMeeting(meetings(vesselSide(body), side));
  return (
    bare && {
      code: 'material-does-not-hold',
      details: { containerId, by: bare.by, material: bare.a, added: bare.b },
      field,
    }
  );
}

/** What was marked of the container as a whole, and keeps everything out of it. */
function standingFault(container: ContainerState, field: string): Refusal | null {
  const { goneSince, damagedSince, heldSince, leavingSince, body } = container;
  const { containerId } = body;
  if (goneSince !== null)
    return { code: 'container-gone', details: { containerId, since: goneSince }, field };
  if (damagedSince !== null)
    return { code: 'container-damaged', details: { containerId, since: damagedSince }, field };
  if (heldSince !== null)
    return { code: 'container-held', details: { containerId, since: heldSince }, field };
  return leavingSince === null
    ? null
    : { code: 'container-leaving', details: { containerId, since: leavingSince }, field };
}

/** Why nothing more may be put into the container, or not this; null when it may, as far as the ledger can tell. */
export function fillingFault(state: State, containerId: string, filling: Filling): Refusal | null {
  const { added, field } = filling;
  const container = state.containers.get(containerId);
  if (!container) return { code: 'unknown', details: { to: 'container', id: containerId }, field };
  const { closedAt, doubtfulSince, holds } = container;
  const standing = standingFault(container, field);
  if (standing) return standing;
  if (closedAt !== null) return { code: 'container-closed', details: { containerId, at: closedAt }, field };
  if (doubtfulSince !== null)
    return { code: 'contents-doubtful', details: { containerId, since: doubtfulSince }, field };
  if (wasteKinds(state, containerId).unaccounted)
    return { code: 'contents-unaccounted', details: { containerId }, field };
  const running = runningTreatment(state, containerId)?.body.treatmentId;
  if (running !== undefined)
    return { code: 'treatment-running', details: { containerId, treatmentId: running }, field };
  const meeting = meetingFault(state, container, filling);
  if (meeting) return meeting;
  const wouldHold = takesUp(plus(holds, added));
  const over = (limit: ReturnType<typeof capacityOf>) => ({
    containerId,
    wouldHold: wouldHold.toFixed(),
    limit: limit.toFixed(),
  });
  const capacity = capacityOf(container);
  if (wouldHold.gt(capacity)) return { code: 'over-capacity', details: over(capacity), field: 'amount' };
  const limit = fillLimit(state, container);
  if (wouldHold.gt(limit)) return { code: 'over-fill-limit', details: over(limit), field: 'amount' };
  return null;
}

/** A planned placement. More than the stream has is no refusal: the measured volume may be the better one. */
export function placeStream(state: State, intention: IntentionOf<'place-stream'>): Decided {
  const { streamId, containerId, amount } = intention;
  const stream = state.streams.get(streamId);
  const added = (stream && placedAmount(amount, stream.body)) ?? asHeld(amount);
  const side = streamSide(state, streamId);
  const fault = fillingFault(state, containerId, { added, side, field: 'containerId' });
  return fault ? refused(fault) : written({ kind: 'stream-placed', v: 1, ...stated(intention) });
}

/**
 * Why what is in a container is not to be poured into another. Out of a damaged one it may go whatever it is, but only
 * into one that is empty: a leak is worse than a doubt, and the doubt goes with it.
 */
function spreadingFault(state: State, fromId: string, toId: string): Refusal | null {
  const source = state.containers.get(fromId);
  if (!source) return null;
  const field = 'fromContainerId';
  const { heldSince, damagedSince, doubtfulSince } = source;
  const saved = damagedSince !== null && state.containers.get(toId)?.contents.length === 0;
  if (saved) return null;
  if (heldSince !== null)
    return { code: 'container-held', details: { containerId: fromId, since: heldSince }, field };
  if (doubtfulSince !== null)
    return { code: 'contents-doubtful', details: { containerId: fromId, since: doubtfulSince }, field };
  return wasteKinds(state, fromId).unaccounted
    ? { code: 'contents-unaccounted', details: { containerId: fromId }, field }
    : null;
}

/**
 * A planned move. Taking out of the shelf is never refused: it is how an overfull or doubtful container is put right.
 * Contents that are doubtful, or that no logged waste accounts for, are not spread to another container.
 */
export function moveContents(state: State, intention: IntentionOf<'move-contents'>): Decided {
  const { fromContainerId, toContainerId, amount } = intention;
  const body = { kind: 'contents-moved', v: 1, ...stated(intention) } as const;
  const held = state.containers.get(fromContainerId)?.holds;
  const more = held && readableDifference(asHeld(amount), held);
  if (held && more && !isNothing(more))
    return refused({
      code: 'more-than-held',
      details: { containerId: fromContainerId, volume: held.volume.toFixed(), mass: held.mass.toFixed() },
      field: 'amount',
    });
  const goneSince = state.containers.get(fromContainerId)?.goneSince ?? null;
  if (goneSince !== null)
    return refused({
      code: 'container-gone',
      details: { containerId: fromContainerId, since: goneSince },
      field: 'fromContainerId',
    });
  if (toContainerId === null) return written(body);
  if (toContainerId === fromContainerId)
    return refused({
      code: 'same-container',
      details: { containerId: toContainerId },
      field: 'toContainerId',
    });
  const spread = spreadingFault(state, fromContainerId, toContainerId);
  if (spread) return refused(spread);
  const fault = fillingFault(state, toContainerId, {
    added: asHeld(amount),
    side: contentsSide(state, fromContainerId),
    field: 'toContainerId',
  });
  if (fault) return refused(fault);
  const source = state.containers.get(fromContainerId);
  if ((source?.doubtfulSince ?? null) === null) return written(body);
  const doubt = source?.marks.findLast((told) => told.body.mark === 'contents-doubtful')?.body;
  const why = doubt?.doubt === undefined ? {} : { doubt: doubt.doubt };
  return written(body, {
    kind: 'container-marked',
    v: 1,
    containerId: toContainerId,
    mark: 'contents-doubtful',
    ...why,
  });
}
