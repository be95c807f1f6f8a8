/** Hoods whose reading has to be taken again, or soon. */
import { type ReadingDue, readingDue } from '../safety/ventilation/reading-due';
import type { State, StationState } from './state';

export type HoodDue = { readonly station: StationState; readonly due: ReadingDue };

/** What holds for a while still comes last, and of that what ends first comes first. */
const rank = ({ due }: HoodDue): string => (due.why === 'soon' ? due.by : '');

/** Of the stations in use. @param on the day, "2026-11-29" */
export const hoodsDue = (state: State, on: string): readonly HoodDue[] =>
  [...state.stations.values()]
    .flatMap((station) => {
      const due = station.givenUpAt === null ? readingDue(station.body.station, on) : null;
      return due ? [{ station, due }] : [];
    })
    .sort((a, b) => (rank(a) < rank(b) ? -1 : rank(a) > rank(b) ? 1 : 0));
