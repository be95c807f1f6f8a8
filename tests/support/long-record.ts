/** What a state knows that does not hold all of its record. */
import type { Earlier } from '../../src/ledger/state';

/** Nothing of before `from` is at hand, but for what is said otherwise. */
export const notAllHere = (told: Partial<Earlier> = {}): Earlier => ({
  entries: 9000,
  places: [],
  last: undefined,
  from: '2026-06-01T00:00:00.000Z',
  unknown: new Set(),
  putAway: () => [],
  named: new Map(),
  inPart: new Set(),
  reachedBehind: false,
  ...told,
});
