/** What somebody had decided to go on without, and a backup brought back since, in whole or in part: it is no longer named. */
import { type Gap, gapLength, isWithin } from '../ledger/chains';
import { wrongInItself } from '../ledger/verify';
import type { Database } from './database';
import { headsMissing } from './device-heads';
import type { Without } from './marker';

type Lost = Extract<Without, { what: 'lost' }>;

/** Those of these places in a chain where nothing stands, side by side as one. */
async function notThere(database: Database, { device, from, to }: Gap): Promise<readonly Gap[]> {
  const range = IDBKeyRange.bound([device, from], [device, to]);
  const index = database.transaction('entries').store.index('by-device');
  const gaps: Gap[] = [];
  let next = from;
  for (let there = await index.openKeyCursor(range); there; there = await there.continue()) {
    const [, counter] = there.key;
    if (counter > next) gaps.push({ device, from: next, to: counter - 1 });
    next = counter + 1;
  }
  if (next <= to) gaps.push({ device, from: next, to });
  return gaps;
}

async function leftOfGap(database: Database, one: Extract<Without, { what: 'missing' }>) {
  const gaps = await notThere(database, one);
  return gaps.map((gap): Without => ({ ...one, ...gap }));
}

/**
 * Of each chain by itself: how many were lost is known of all together, so as many are looked for in each. What is missing
 * before one that is there again is missing between others.
 */
async function leftOfEnd(
  database: Database,
  lost: Lost,
  known: readonly Without[],
): Promise<readonly Without[]> {
  const { at, entries, heads } = lost;
  // Another stands in the place of the last one, or nobody knows which it was.
  if (entries === 0 || heads.length === 0)
    return heads.length > 0 && (await headsMissing(database, heads)).length === 0 ? [] : [lost];
  const left: Without[] = [];
  for (const head of heads) {
    const { device, counter } = head;
    const gaps = await notThere(database, { device, from: Math.max(1, counter - entries + 1), to: counter });
    for (const gap of gaps)
      if (gap.to === counter) left.push({ what: 'lost', at, entries: gapLength(gap), heads: [head] });
      else if (!known.some((one) => one.what === 'missing' && isWithin(gap, one)))
        left.push({ what: 'missing', at, ...gap });
    if (gaps.at(-1)?.to !== counter && (await headsMissing(database, [head])).length > 0)
      left.push({ what: 'lost', at, entries: 0, heads: [head] });
  }
  const isSame = left.reduce((sum, one) => sum + (one.what === 'lost' ? one.entries : 0), 0) === entries;
  return isSame && left.length === heads.length ? [lost] : left;
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

async function leftOf(
  database: Database,
  one: Without,
  known: readonly Without[],
): Promise<readonly Without[]> {
  switch (one.what) {
    case 'missing':
      return leftOfGap(database, one);
    case 'lost':
      return leftOfEnd(database, one, known);
    case 'entry':
      return (await isEntryBack(database, one)) ? [] : [one];
    case 'head':
    case 'record':
      return [one];
  }
}

/** One thing of which something is there again, and what of it still is not. */
export type CameBack = { readonly one: Without; readonly left: readonly Without[] };

/** Of `without`, what is there again. The note of a last entry is nothing by itself: it goes with the end that is back. */
export async function cameBack(
  database: Database,
  without: readonly Without[],
): Promise<readonly CameBack[]> {
  const all: CameBack[] = [];
  for (const one of without) all.push({ one, left: await leftOf(database, one, without) });
  const back = all.filter(({ one, left }) => JSON.stringify(left) !== JSON.stringify([one]));
  const isLostAt =
    (at: string) =>
    (one: Without): boolean =>
      one.what === 'lost' && one.at === at;
  const isEndBack = (at: string): boolean =>
    back.some(({ one }) => isLostAt(at)(one)) && !all.some(({ left }) => left.some(isLostAt(at)));
  const heads = without.filter(({ what, at }) => what === 'head' && isEndBack(at));
  return [...back, ...heads.map((one) => ({ one, left: [] }))];
}
