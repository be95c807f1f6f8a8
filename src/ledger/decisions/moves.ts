/** Decisions on what is taken out of a container, or moved into another. */
import { asHeld, isNothing, nothing, plus, readableDifference } from '../amounts';
import { comingOutOf, dilutedBy, dilutedPart } from '../dilution';
import type { Body } from '../entries/body';
import type { Amount } from '../entries/containers';
import type { IntentionOf } from '../intention';
import { contentsSide } from '../meeting-sides';
import { type Decided, type Refusal, refused, written } from '../refusal';
import type { ContainerState, State } from '../state';
import { wasteKinds } from '../waste-kinds';
import { wholeOf } from '../whole-of';
import { fillingFault } from './containers';
import { stated } from './stated';

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

/** Why what is in a container may not be moved into another; null when it may, as far as the ledger can tell. */
function movingFault(state: State, fromId: string, toId: string, amounts: readonly Amount[]): Refusal | null {
  if (toId === fromId)
    return { code: 'same-container', details: { containerId: toId }, field: 'toContainerId' };
  const added = amounts.map(asHeld).reduce(plus, nothing);
  const side = contentsSide(state, fromId);
  const coming = comingOutOf(state, fromId, amounts);
  return (
    spreadingFault(state, fromId, toId) ??
    fillingFault(state, toId, { added, side, field: 'toContainerId', coming })
  );
}

const goneFault = ({ body, goneSince }: ContainerState): Refusal | null =>
  goneSince === null
    ? null
    : {
        code: 'container-gone',
        details: { containerId: body.containerId, since: goneSince },
        field: 'fromContainerId',
      };

/** Where nobody knows what is in it, nobody knows how much either: whatever comes out of it is taken as told. */
function tooMuchFault({ body, holds, doubtfulSince }: ContainerState, amount: Amount): Refusal | null {
  const more = readableDifference(asHeld(amount), holds);
  if (isNothing(more) || doubtfulSince !== null) return null;
  const [volume, mass] = [holds.volume.toFixed(), holds.mass.toFixed()];
  return {
    code: 'more-than-held',
    details: { containerId: body.containerId, volume, mass },
    field: 'amount',
  };
}

/** Somebody's doubt goes with what it is about. */
function doubtToo(source: ContainerState | undefined, toContainerId: string): Body[] {
  if (!source || source.doubtfulSince === null) return [];
  const told = source.marks.findLast(({ body }) => body.mark === 'contents-doubtful')?.body;
  const { doubt, note } = told ?? {};
  return [
    {
      kind: 'container-marked',
      v: 1,
      containerId: toContainerId,
      mark: 'contents-doubtful',
      ...(doubt === undefined ? {} : { doubt }),
      ...(note === undefined ? {} : { note }),
    },
  ];
}

/**
 * A planned move. Taking out of the shelf is never refused: it is how an overfull or doubtful container is put right.
 * Contents that are doubtful, or that no logged waste accounts for, are not spread to another container.
 */
export function moveContents(state: State, intention: IntentionOf<'move-contents'>): Decided {
  const { fromContainerId, toContainerId, amount } = intention;
  const body = { kind: 'contents-moved', v: 1, ...stated(intention) } as const;
  const source = state.containers.get(fromContainerId);
  const fault = source && (tooMuchFault(source, amount) ?? goneFault(source));
  if (fault) return refused(fault);
  if (toContainerId === null) return written(body);
  const moving = movingFault(state, fromContainerId, toContainerId, [amount]);
  return moving ? refused(moving) : written(body, ...doubtToo(source, toContainerId));
}

/** What was moved already, with the codes that it made disappear: written down, and flagged. A doubt goes with it here too. */
export function logMove(state: State, intention: IntentionOf<'log-move-happened'>): Decided {
  const { fromContainerId, toContainerId, amount } = intention;
  const body = { kind: 'contents-moved', v: 1, ...stated(intention) } as const;
  if (toContainerId === null) return written(body);
  const diluted = dilutedBy(state, toContainerId, comingOutOf(state, fromContainerId, [amount]));
  const source = state.containers.get(fromContainerId);
  return written({ ...body, ...dilutedPart(diluted) }, ...doubtToo(source, toContainerId));
}

/** Everything is moved over at once, and the container is empty from then on. */
export function moveAll(state: State, intention: IntentionOf<'move-all'>): Decided {
  const { fromContainerId, toContainerId, note } = intention;
  const source = state.containers.get(fromContainerId);
  if (!source)
    return refused({
      code: 'unknown',
      details: { to: 'container', id: fromContainerId },
      field: 'fromContainerId',
    });
  const amounts = wholeOf(source);
  const fault = goneFault(source) ?? movingFault(state, fromContainerId, toContainerId, amounts);
  if (fault) return refused(fault);
  return written(
    ...amounts.map(
      (amount): Body => ({
        kind: 'contents-moved',
        v: 1,
        fromContainerId,
        toContainerId,
        amount,
        purpose: 'transfer',
        ...(note === undefined ? {} : { note }),
      }),
    ),
    { kind: 'container-marked', v: 1, containerId: fromContainerId, mark: 'emptied' },
    ...doubtToo(source, toContainerId),
  );
}
