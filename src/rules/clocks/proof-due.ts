/** Until when the proof that waste was received or disposed of should be back; from the day it was handed over. */
import { type TimeLimit, timeLimit } from './time-limit';

export type ProofDue =
  | { readonly state: 'received'; readonly on: string }
  | ({ readonly state: 'awaited' } & TimeLimit);

/**
 * @param receivedOn the day on which the proof came; null while it has not
 * @param days that the workshop's authority, contract or law gives; each step (ask, report) is one call
 */
export const proofDue = (
  handedOverOn: string,
  receivedOn: string | null,
  days: number,
  today: string,
): ProofDue =>
  receivedOn === null
    ? { state: 'awaited', ...timeLimit(handedOverOn, { count: days, unit: 'days' }, today) }
    : { state: 'received', on: receivedOn };
