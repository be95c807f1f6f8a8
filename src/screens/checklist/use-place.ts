/** Where the phone is, as a list that needs a place takes it. */
import type { State } from '../../ledger/state';
import type { Checklist } from '../../safety/checklist-schema';
import type { Context } from '../../safety/run-schema';
import { useShell } from '../shell';

export function stationPlace(state: State, stationId: string | null): Context['place'] {
  const body = state.stations.get(stationId ?? '')?.body;
  return body && { id: body.stationId, name: body.name, kind: body.station.is };
}

/** The same station, described as the same kind of place. */
export const isSamePlace = (one: Context['place'], other: Context['place']): boolean =>
  one?.id === other?.id && one?.kind === other?.kind;

/**
 * A list that may be gone through anywhere holds anywhere: it takes no place. The walk round does: ten seconds to the
 * eyewash are counted from where the acid is.
 */
export function usePlace({ station: asked, step }: Pick<Checklist, 'station' | 'step'>) {
  const needed = asked === true || step === 'readiness';
  const { state, station, chooseStation } = useShell();
  const placeOf = (id: string | null) => (needed ? stationPlace(state.value, id) : undefined);
  /** @returns the place chosen, where it is written down */
  function choose(stationId: string | null): Context['place'] {
    chooseStation(stationId);
    return placeOf(stationId);
  }
  return { place: placeOf(station.value), choose };
}
