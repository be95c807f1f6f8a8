/** A hand-over as its pages show it: how each container of it stands, and by when its proof is due. */

import { awaited, type Due, dues } from '../../ledger/due';
import { codeOfContainer } from '../../ledger/put-away';
import type { HandedOverPart, HandOverState, State } from '../../ledger/state';
import { codesText } from '../amounts';

export type Standing = 'awaited' | 'proved' | 'back' | 'elsewhere';

/** `elsewhere`: it left, or came back, some other way since. */
export function standingOf(state: State, handOver: HandOverState, part: HandedOverPart): Standing {
  const { containerId, proofAt, backAt } = part;
  if (backAt !== null && (proofAt === null || backAt > proofAt)) return 'back';
  if (proofAt !== null) return 'proved';
  return awaited(state, handOver).includes(containerId) ? 'awaited' : 'elsewhere';
}

/** Containers of it that are away with it now, proved or not: only these can come back. */
export const away = (state: State, { body, parts }: HandOverState): readonly string[] =>
  parts.flatMap(({ containerId }) =>
    state.containers.get(containerId)?.handOverId === body.handOverId ? [containerId] : [],
  );

export const codesOf = (state: State, ids: readonly string[]): string =>
  codesText(ids.map((id) => codeOfContainer(state, id) ?? '?'));

/** By when its proof has to be there; undefined where all is proved, or no such rule was entered. */
export const proofDueOf = (state: State, handOverId: string, now: string, zone: string): Due | undefined =>
  dues(state, now, zone).find((due) => due.handOverId === handOverId);

/** Those whose proof is awaited first, then the others; the newest first among both. */
export function inOrder(state: State): readonly HandOverState[] {
  const newest = [...state.handOvers.values()].toReversed();
  const open = (handOver: HandOverState): boolean => awaited(state, handOver).length > 0;
  return [...newest.filter(open), ...newest.filter((handOver) => !open(handOver))];
}
