/** What is shown of a transfer that is refused because two things must not meet. */
import type { Filling } from '../../ledger/decisions/containers';
import type { ContainerOpened } from '../../ledger/entries/containers';
import { contentsSide, vesselSide } from '../../ledger/meeting-sides';
import type { Refusal } from '../../ledger/refusal';
import type { State } from '../../ledger/state';
import { type Meeting, meetings } from '../../safety/must-not-meet/meetings';

export type ApartRefusal = Extract<Refusal, { readonly code: 'must-not-meet' | 'material-does-not-hold' }>;

/** Refused for what would happen, not for how much or for how it is written. */
export const isApart = (refusal: Refusal | null | undefined): refusal is ApartRefusal =>
  refusal?.code === 'must-not-meet' || refusal?.code === 'material-does-not-hold';

export type Refused = {
  readonly refusal: ApartRefusal;
  /** All that would meet, worst first. */
  readonly found: readonly Meeting[];
  /** That which it was refused for. */
  readonly worst: Meeting | undefined;
};

/** The emergency card for when it has been done all the same. */
export const cardOf = ({ worst }: Refused): string => worst?.card ?? 'spill';

/** The card at once, with a way on to the container in the record. */
export const cardThen = (card: string, containerId: string): string => `sos/${card}/then/${containerId}`;

/** @param into the container, also one that is only described yet */
export function refusedFor(
  state: State,
  refusal: ApartRefusal,
  { side }: Pick<Filling, 'side'>,
  into: Pick<ContainerOpened, 'containerId' | 'material' | 'otherMaterial'>,
): Refused {
  const there = [...contentsSide(state, into.containerId), ...vesselSide(into)];
  const found = meetings(there, side);
  const { by } = refusal.details;
  return { refusal, found, worst: found.find((meeting) => meeting.by === by) ?? found[0] };
}
