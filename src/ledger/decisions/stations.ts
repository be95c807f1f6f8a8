/** Decisions on the places where steps are done. */
import type { Context, IntentionOf } from '../intention';
import { type Decided, refused, written } from '../refusal';
import type { State } from '../state';
import { stated } from './stated';

/** The place is kept as it is described now, so that what was worked out for it can be worked out again. */
export function logVentilationCheck(
  state: State,
  intention: IntentionOf<'log-ventilation-check'>,
  { newId }: Context,
): Decided {
  const { stationId } = intention;
  const station = state.stations.get(stationId)?.body.station;
  if (!station)
    return refused({ code: 'unknown', details: { to: 'station', id: stationId }, field: 'stationId' });
  return written({ kind: 'ventilation-checked', v: 1, checkId: newId(), station, ...stated(intention) });
}
