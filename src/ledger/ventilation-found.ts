/** What was worked out of a charge and a place. */
import type { VentilationChecked } from './entries/stations';
import type { State, Told } from './state';

/**
 * The newest check of a batch at a station that still speaks of it: none from before `since`, nor from before the place
 * was last described. Null where there is none.
 */
export function ventilationFound(
  state: State,
  of: { readonly batchId: string | null; readonly stationId: string | undefined; readonly since: string },
): Told<VentilationChecked> | null {
  const described = state.stations.get(of.stationId ?? '')?.at;
  if (described === undefined) return null;
  const found = [...state.ventilationChecks.values()].findLast(
    ({ body, at }) =>
      body.batchId === of.batchId && body.stationId === of.stationId && at >= of.since && at >= described,
  );
  return found ?? null;
}
