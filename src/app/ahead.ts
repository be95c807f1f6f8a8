/** What a start waits for longest, asked for before anything of the first page is worked out. */
import { databaseName } from '../storage/database-name';
import { readEarly } from '../storage/read-early';

export const rest = import('./begin');
// It is awaited later, and must not count as unheard until then.
rest.catch(() => undefined);

/** Where nothing was ever noted there is no record either, and none is looked for: that alone would show as one. */
function wasHere(): boolean {
  try {
    return localStorage.length > 0;
  } catch {
    return false;
  }
}

if (wasHere()) readEarly(databaseName('real'));
