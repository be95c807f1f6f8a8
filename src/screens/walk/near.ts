/** When the walk is near enough to be told of before what is only going on: as `ledger/due` has it. */
import { toldFrom } from '../../ledger/due';
import type { WalkDue } from '../../ledger/walks';

export const isWalkNear = ({ daysLeft }: WalkDue): boolean => daysLeft <= toldFrom.walk;

/** Share of the days between two walks that is left, 0 to 1. */
export const shareOfWalk = ({ daysLeft, days }: WalkDue): number =>
  days === 0 ? 0 : Math.min(1, Math.max(0, daysLeft / days));
