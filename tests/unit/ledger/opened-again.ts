/** Openings as they come back from where they were kept, and what they are to tell. */
import { type Flag, flags } from '../../../src/ledger/flags';
import { openingOf, stateFrom } from '../../../src/ledger/opening';
import { openingFrom, openingText } from '../../../src/ledger/opening-text';
import type { State } from '../../../src/ledger/state';

export function reopened(state: State, from: string, until: string): State {
  const opening = openingFrom(JSON.parse(openingText(openingOf(state, { from, until }), 'test')), 'test');
  if (!opening) throw new Error('an opening that was just kept is one');
  return stateFrom(opening);
}

export const dayBefore = (now: string, days: number): string =>
  new Date(Date.parse(now) - days * 86_400_000).toISOString();

/** What is wrong with what is over is told in its history alone. */
export const flagsAtHand = (whole: State, state: State): readonly Flag[] => {
  const entries = new Set(state.log.map(({ id }) => id));
  const isIn = ({ containers, streams, steps, treatments, handOvers }: State, id: string): boolean =>
    [containers, streams, steps, treatments, handOvers].some((map) => map.has(id));
  return flags(whole).filter(
    ({ about: { entryId, ...things } }) =>
      (entryId === undefined || entries.has(entryId)) &&
      Object.values(things).every((id) => isIn(state, id) || !isIn(whole, id)),
  );
};
