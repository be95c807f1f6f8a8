/** Decisions on containers and what goes into them. */
import type { Matter } from '../../safety/must-not-meet/matter';
import { meetings, refusedMeeting } from '../../safety/must-not-meet/meetings';
import { asHeld, placedAmount, plus } from '../amounts';
import { comingOfWaste, dilutedBy, dilutedPart, type Part } from '../dilution';
import type { BodyOf } from '../entries/body';
import { capacityOf, fillLimit, takesUp } from '../fill';
import type { Context, IntentionOf } from '../intention';
import { contentsSide, streamSide, vesselSide, type Waste } from '../meeting-sides';
import { type Decided, type Refusal, refused, written } from '../refusal';
import type { ContainerState, Held, State } from '../state';
import { runningTreatment } from '../treatment';
import { wasteKinds } from '../waste-kinds';
import { codesOf, nextCode, takenCode } from './codes';
import { stated } from './stated';

export function openContainer(
  state: State,
  intention: IntentionOf<'open-container'>,
  { newId }: Context,
): Decided {
  const { code, doubt, level, ...container } = stated(intention);
  const taken = codesOf(state, 'container');
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
  /** What is in it, to see whether mixing would dilute a code away; absent where nobody knows. */
  readonly coming?: Part | undefined;
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
export function standingFault(container: ContainerState, field: string): Refusal | null {
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
  const diluted = filling.coming && dilutedBy(state, containerId, filling.coming);
  return diluted ? { code: 'would-dilute', details: { containerId, ...diluted }, field } : null;
}

/** What was put in already, with the codes that it made disappear: written down, and flagged. */
export function placedAsTold(
  state: State,
  placement: Omit<BodyOf<'stream-placed'>, 'kind' | 'v' | 'diluted'>,
  waste: Waste | undefined,
): BodyOf<'stream-placed'> {
  const { containerId, amount } = placement;
  const diluted = waste && dilutedBy(state, containerId, comingOfWaste(state, waste, amount));
  return { kind: 'stream-placed', v: 1, ...placement, ...dilutedPart(diluted) };
}

export const logPlacement = (state: State, intention: IntentionOf<'log-placement-happened'>): Decided =>
  written(placedAsTold(state, stated(intention), state.streams.get(intention.streamId)?.body));

/** A planned placement. More than the stream has is no refusal: the measured volume may be the better one. */
export function placeStream(state: State, intention: IntentionOf<'place-stream'>): Decided {
  const { streamId, containerId, amount } = intention;
  const stream = state.streams.get(streamId);
  const added = (stream && placedAmount(amount, stream.body)) ?? asHeld(amount);
  const side = streamSide(state, streamId);
  const coming = stream && comingOfWaste(state, stream.body, amount);
  const fault = fillingFault(state, containerId, { added, side, field: 'containerId', coming });
  return fault ? refused(fault) : written({ kind: 'stream-placed', v: 1, ...stated(intention) });
}
