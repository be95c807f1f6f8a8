/** Containers as they stood at a moment that has passed: by the record as it is known now, corrections included. */

import { isNothing, nothing } from '../../ledger/amounts';
import { codeOfContainer } from '../../ledger/put-away';
import { sinceMarked } from '../../ledger/since-marked';
import type { ContainerState, Held, State } from '../../ledger/state';
import { type Asked, amountText, heldText } from '../disposal/asked';
import { vesselWords } from '../disposal/data-words';
import { streamText } from '../disposal/origins';
import { unbroken } from '../words';
import type { RegisterData } from './register-data';
import { registerWords as w } from './register-words';

type Standing = RegisterData['opening'][number];

export type AtMoment = {
  readonly holds: Held;
  /** What came in since it was last empty: wastes, and containers that something was poured over from. */
  readonly streamIds: readonly string[];
  readonly fromIds: readonly string[];
};

/** After everything that happened before the moment. */
export function atMoment({ movements }: ContainerState, moment: string): AtMoment {
  const [streamIds, fromIds] = [new Set<string>(), new Set<string>()];
  let holds: Held = nothing;
  for (const { at, way, after, streamId, otherId, purpose } of movements) {
    if (at >= moment) break;
    if (purpose === 'determined' || isNothing(holds)) {
      streamIds.clear();
      fromIds.clear();
    }
    if (way === 'in' && streamId !== null) streamIds.add(streamId);
    if (way === 'in' && otherId !== null) fromIds.add(otherId);
    holds = after;
  }
  if (isNothing(holds)) return { holds, streamIds: [], fromIds: [] };
  return { holds, streamIds: [...streamIds], fromIds: [...fromIds] };
}

export const wastesText = (state: State, { streamIds, fromIds }: AtMoment): string[] => [
  ...streamIds.map((id) => streamText(state, id)),
  ...fromIds.map((id) => w.pouredFrom(unbroken(codeOfContainer(state, id) ?? '?'))),
];

const isHere = ({ at, marks }: ContainerState, moment: string): boolean =>
  at < moment &&
  sinceMarked(
    marks.filter((mark) => mark.at < moment),
    'gone',
    'came-back',
  ) === null;

/** Every container that was here then, empty ones too. */
export function standingAt({ state, sign }: Asked, moment: string): Standing[] {
  return [...state.containers.values()]
    .filter((container) => isHere(container, moment))
    .map((container) => {
      const { containerId, code, vessel, capacity } = container.body;
      const then = atMoment(container, moment);
      return {
        containerId,
        code: unbroken(code),
        vessel: `${vesselWords[vessel]}, ${amountText(capacity, sign)}`,
        holds: isNothing(then.holds) ? w.empty : heldText(then.holds, sign),
        wastes: wastesText(state, then),
      };
    });
}
