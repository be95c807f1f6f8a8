/** What of a container is flagged: it stays visible in the paper, and can be mended before. */
import { type Flag, flags } from '../../ledger/flags';
import type { State } from '../../ledger/state';
import { treatmentOf } from '../../ledger/treatment';
import { thingsBehind } from './entries-behind';
import { streamsIn } from './origins';

/** What is wrong or doubtful by the record about a container, its wastes and the steps they came from. */
export function flagsBehind(state: State, containerId: string): readonly Flag[] {
  const { streams, steps } = thingsBehind(state, containerId);
  const container = state.containers.get(containerId);
  const inIt = new Set(container ? streamsIn(state, container).map(({ body }) => body.streamId) : []);
  const entryIds = new Set([container?.entryId]);
  const behind = treatmentOf(state, containerId)?.behind ?? [];
  const treatments = new Set(behind.map(({ body }) => body.treatmentId));
  return flags(state).filter(({ about }) => {
    // What was treated elsewhere is still what was treated.
    if (about.treatmentId !== undefined && treatments.has(about.treatmentId)) return true;
    if (about.containerId !== undefined) return about.containerId === containerId;
    if (about.stepId !== undefined) return steps.has(about.stepId);
    if (about.streamId !== undefined) return inIt.has(about.streamId);
    return (
      about.entryId !== undefined &&
      (entryIds.has(about.entryId) || isOfStream(state, streams, about.entryId))
    );
  });
}

const isOfStream = (state: State, streams: ReadonlySet<string>, entryId: string): boolean =>
  [...streams].some((id) => state.streams.get(id)?.entryId === entryId);
