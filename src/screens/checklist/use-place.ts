/** Where the phone is, as a list that needs a place takes it. */
import type { State } from '../../ledger/state';
import type { Checklist } from '../../safety/checklist-schema';
import type { Context } from '../../safety/run-schema';
import { dayField } from '../../safety/stated-time';
import { hoodAmiss } from '../../safety/ventilation/in-list';
import { useShell } from '../shell';

type Place = Context['place'];

/** A station in use, and why it cannot be counted on today. @param on the day, "2026-11-29" */
export function stationPlace(state: State, stationId: string | null, on: string): Place {
  const known = state.stations.get(stationId ?? '');
  if (!known || known.givenUpAt !== null) return undefined;
  const { name, station } = known.body;
  const amiss = hoodAmiss(station, on);
  return { id: known.body.stationId, name, kind: station.is, ...(amiss ? { amiss } : {}) };
}

/** The same station, described as the same kind of place, with the same amiss. */
export const isSamePlace = (one: Place, other: Place): boolean =>
  one?.id === other?.id && one?.kind === other?.kind && one?.amiss?.says === other?.amiss?.says;

/**
 * A list that may be gone through anywhere holds anywhere: it takes no place. The walk round does: ten seconds to the
 * eyewash are counted from where the acid is.
 */
export function usePlace({ station: asked, step }: Pick<Checklist, 'station' | 'step'>) {
  const needed = asked === true || step === 'readiness';
  const { state, station, chooseStation, now } = useShell();
  const placeOf = (id: string | null): Place =>
    needed ? stationPlace(state.value, id, dayField(now.value)) : undefined;
  /** @returns the place chosen, where it is written down */
  function choose(stationId: string | null): Place {
    chooseStation(stationId);
    return placeOf(stationId);
  }
  return { place: placeOf(station.value), choose };
}
