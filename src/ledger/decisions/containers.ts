/** Decisions on containers and what goes into them. */
import { mustNotMeet } from '../../safety/must-not-meet';
import type { StreamKind } from '../../safety/stream-kind';
import { asHeld, isNothing, placedAmount, plus, readableDifference } from '../amounts';
import { capacityOf, fillLimit, takesUp } from '../fill';
import type { Context, IntentionOf } from '../intention';
import { type Decided, type Refusal, refused, written } from '../refusal';
import type { Held, State } from '../state';
import { runningTreatment } from '../treatment';
import { kindsOfStream, wasteKinds } from '../waste-kinds';
import { nextCode, takenCode } from './codes';
import { stated } from './stated';

export function openContainer(
  state: State,
  intention: IntentionOf<'open-container'>,
  { newId }: Context,
): Decided {
  const { code, ...container } = stated(intention);
  const taken = [...state.containers.values()].map(({ body }) => body.code);
  const fault = code === undefined ? null : takenCode(code, taken);
  if (fault) return refused(fault);
  const given = code ?? nextCode('C', taken);
  return written({ kind: 'container-opened', v: 1, containerId: newId(), code: given, ...container });
}

/** What is to go into a container: how much, and what it is. `field` is where a form says so. */
export type Filling = {
  readonly added: Held;
  readonly streams: readonly StreamKind[];
  readonly field: string;
};

/** Why nothing more may be put into the container, or not this; null when it may, as far as the ledger can tell. */
export function fillingFault(state: State, containerId: string, filling: Filling): Refusal | null {
  const { added, streams, field } = filling;
  const container = state.containers.get(containerId);
  if (!container) return { code: 'unknown', details: { to: 'container', id: containerId }, field };
  const { closedAt, doubtfulSince, holds } = container;
  if (closedAt !== null) return { code: 'container-closed', details: { containerId, at: closedAt }, field };
  if (doubtfulSince !== null)
    return { code: 'contents-doubtful', details: { containerId, since: doubtfulSince }, field };
  const there = wasteKinds(state, containerId);
  if (there.unaccounted) return { code: 'contents-unaccounted', details: { containerId }, field };
  const running = runningTreatment(state, containerId)?.body.treatmentId;
  if (running !== undefined)
    return { code: 'treatment-running', details: { containerId, treatmentId: running }, field };
  const meeting = mustNotMeet(there.kinds, streams);
  if (meeting) {
    const { rule, added: poured } = meeting;
    const details = { containerId, rule: rule.id, there: meeting.there, added: poured };
    return { code: 'must-not-meet', details, field };
  }
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
  const streams = kindsOfStream(state, streamId);
  const fault = fillingFault(state, containerId, { added, streams, field: 'containerId' });
  return fault ? refused(fault) : written({ kind: 'stream-placed', v: 1, ...stated(intention) });
}

/**
 * A planned move. Taking out of the shelf is never refused: it is how an overfull or doubtful container is put right.
 * Doubtful contents are not spread to another container.
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
  if (toContainerId === null) return written(body);
  if (toContainerId === fromContainerId)
    return refused({
      code: 'same-container',
      details: { containerId: toContainerId },
      field: 'toContainerId',
    });
  const source = state.containers.get(fromContainerId);
  const since = source?.doubtfulSince ?? null;
  if (since !== null)
    return refused({
      code: 'contents-doubtful',
      details: { containerId: fromContainerId, since },
      field: 'fromContainerId',
    });
  const streams = wasteKinds(state, fromContainerId).kinds;
  const fault = fillingFault(state, toContainerId, {
    added: asHeld(amount),
    streams,
    field: 'toContainerId',
  });
  return fault ? refused(fault) : written(body);
}
