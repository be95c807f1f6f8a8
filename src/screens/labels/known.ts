/** What is known of containers beyond the record of their contents: hazards and codes, with whose word they are. */
import type { State } from '../../ledger/state';
import type { LabelKnown } from '../../paperwork/labels/gather';
import { labelKnownOf } from '../../paperwork/labels/known-of';
import { type Tell, untold } from '../../paperwork/progress';

/** By container id; one that is not in the record is left out. */
export const labelsKnown = (
  state: State,
  containerIds: readonly string[],
  tell: Tell = untold,
): ReadonlyMap<string, LabelKnown> =>
  new Map(
    containerIds.flatMap((id, done) => {
      tell({ stage: 'gathering', done, of: containerIds.length });
      const container = state.containers.get(id);
      return container ? [[id, labelKnownOf(state, container)] as const] : [];
    }),
  );
