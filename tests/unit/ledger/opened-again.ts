/** Openings as they come back from where they were kept. */
import { openingOf, stateFrom } from '../../../src/ledger/opening';
import { openingFrom, openingText } from '../../../src/ledger/opening-text';
import type { State } from '../../../src/ledger/state';

export function reopened(state: State, from: string, until: string): State {
  const opening = openingFrom(openingText(openingOf(state, { from, until }), 'test'), 'test');
  if (!opening) throw new Error('an opening that was just kept is one');
  return stateFrom(opening);
}

export const dayBefore = (now: string, days: number): string =>
  new Date(Date.parse(now) - days * 86_400_000).toISOString();
