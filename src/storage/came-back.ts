/** What somebody had decided to go on without, and a backup brought back since: it is no longer named. */
import { wrongInItself } from '../ledger/verify';
import type { Database } from './database';
import { headsMissing } from './device-heads';
import type { Without } from './marker';

type Lost = Extract<Without, { what: 'lost' }>;

/** All of them in their places. */
async function isAllThere(database: Database, device: string, from: number, to: number): Promise<boolean> {
  const range = IDBKeyRange.bound([device, from], [device, to]);
  return (await database.countFromIndex('entries', 'by-device', range)) === to - from + 1;
}

/** How many were lost is known of all chains together: as many are looked for in each. */
async function isEndBack(database: Database, { heads, entries }: Lost): Promise<boolean> {
  if (heads.length === 0 || (await headsMissing(database, heads)).length > 0) return false;
  for (const { device, counter } of heads)
    if (!(await isAllThere(database, device, Math.max(1, counter - entries + 1), counter))) return false;
  return true;
}

/** Whole in its place, behind the one that it names, and not also there as it was when it was given up. */
async function isEntryBack(database: Database, one: Extract<Without, { what: 'entry' }>): Promise<boolean> {
  const { id, device, counter } = one;
  if (device === null || counter === null) return false;
  const asItWas = id === null ? undefined : await database.get('entries', id);
  if (asItWas !== undefined && wrongInItself(asItWas)) return false;
  const there = await database.getFromIndex('entries', 'by-device', [device, counter]);
  if (there === undefined || wrongInItself(there)) return false;
  const before = await database.getFromIndex('entries', 'by-device', [device, counter - 1]);
  return before === undefined || before.hash === there.previous;
}

async function isBack(database: Database, one: Without): Promise<boolean> {
  switch (one.what) {
    case 'missing':
      return isAllThere(database, one.device, one.from, one.to);
    case 'lost':
      return isEndBack(database, one);
    case 'entry':
      return isEntryBack(database, one);
    case 'head':
    case 'record':
      return false;
  }
}

/** Those of `without` that are there again. The note of a last entry is nothing by itself: it goes with the end that is back. */
export async function cameBack(database: Database, without: readonly Without[]): Promise<readonly Without[]> {
  const back: Without[] = [];
  for (const one of without) if (await isBack(database, one)) back.push(one);
  const ends = new Set(back.flatMap(({ what, at }) => (what === 'lost' ? [at] : [])));
  return [...back, ...without.filter(({ what, at }) => what === 'head' && ends.has(at))];
}
