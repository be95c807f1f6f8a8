/**
 * The opening of a long record, kept beside it so that a start reads only what is recent or still matters. It is thrown away
 * when anything is in doubt, and then made anew from the record.
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import { subDays } from 'date-fns';
import { applyAll, foldAll } from '../ledger/fold';
import { openingOf, stateFrom } from '../ledger/opening';
import { openingFrom, openingText } from '../ledger/opening-text';
import type { State } from '../ledger/state';
import type { Head } from '../ledger/verify';
import { catchUp } from './append';
import type { Database } from './database';
import { headsMissing, headsOnDisk } from './device-heads';
import { done, failed, failureOf, type StoreResult } from './failure';
import { isNoted } from './opening-note';
import { openingRead, quickHash, takeEarly } from './read-early';
import { type Corrupted, type OpenRecord, readAll } from './record';

/** As it is kept: a text as bytes, what these come to, and the last entry of each device that it was made of. */
export type StoredOpening = {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly sha256: string;
  readonly heads: readonly Head[];
};

/** What is at hand of a record, and what of it could not be read. */
export type AtHand = { readonly state: State; readonly corrupted: readonly Corrupted[] };

/** The code that works openings out: another may work them out otherwise. */
const by = String(import.meta.env.VITE_LEDGER);

/** The month that is counted, with the one before it: of these nothing is put away. Status: reasoned. */
const keptDays = 62;

/** What is told so late of what befell a container has the whole record read again. Status: reasoned. */
const lateDays = 31;

/** A record of fewer entries is read as a whole at every start. Status: reasoned. */
export const longRecord = 4000;

/** So many entries may come before an opening is made anew: they are read one by one at a start. Status: reasoned. */
const manySince = 1000;

/** The quick one is ten times as fast. */
const hashOf = async (bytes: Uint8Array<ArrayBuffer>): Promise<string> =>
  globalThis.crypto?.subtle ? quickHash(bytes) : bytesToHex(sha256(bytes));

/** Entries on the disk by the counters of their devices: costs the same however many they are. */
export async function countOf(database: Database): Promise<number> {
  return (await headsOnDisk(database)).reduce((sum, { counter }) => sum + counter, 0);
}

export async function dropOpening({ database }: Pick<OpenRecord, 'database'>): Promise<void> {
  await database.delete('openings', 'last');
}

/** The kept opening, where it is whole, of this version, and of this record; anything else is thrown away. */
async function keptOpening({ name, database }: OpenRecord) {
  const early = await takeEarly(database.name);
  // Thrown away meanwhile it is not gone on from, either.
  if ((await database.getKey('openings', 'last')) === undefined) return null;
  // Another window may have made and noted one since it was read.
  const isLast = early && isNoted(name, early.sha256);
  const read = isLast ? early : await openingRead(await database.get('openings', 'last'), hashOf);
  const holds = read && isNoted(name, read.sha256) && (await headsMissing(database, read.heads)).length === 0;
  const opening = holds ? openingFrom(read.json, by) : null;
  if (read && opening) return { opening, heads: read.heads };
  await dropOpening({ database });
  return null;
}

/**
 * What is at hand by the kept opening and what came since; null where there is none to go on from, or something reached behind
 * it, which then is thrown away. What is read counts as handed to the caller.
 */
export async function readAtHand(record: OpenRecord): Promise<StoreResult<AtHand | null>> {
  try {
    const kept = await keptOpening(record);
    if (!kept) return done(null);
    record.seen.clear();
    for (const { device, counter } of kept.heads) record.seen.set(device, counter);
    const since = await catchUp(record);
    if (!since.ok) return since;
    const state = foldAll(stateFrom(kept.opening), since.value.entries);
    if (!state.earlier?.reachedBehind) return done({ state, corrupted: since.value.corrupted });
    record.seen.clear();
    await dropOpening(record);
    return done(null);
  } catch (error) {
    return failed(failureOf(error));
  }
}

/** The whole record, all of it at hand. */
export async function readWhole(record: OpenRecord): Promise<StoreResult<AtHand>> {
  const all = await readAll(record);
  if (!all.ok) return all;
  const { entries, corrupted } = all.value;
  return done({ state: applyAll(entries), corrupted });
}

/** Whether the next start would be quicker with another opening. */
export const wantsOpening = ({ log, earlier }: State): boolean =>
  log.length - (earlier?.places.length ?? 0) >= (earlier ? manySince : longRecord);

function headsOf(state: State, before: readonly Head[]): readonly Head[] {
  const heads = new Map(before.map((head) => [head.device, head]));
  for (const { device, counter, hash } of state.log)
    if (counter > (heads.get(device)?.counter ?? 0)) heads.set(device, { device, counter, hash });
  return [...heads.values()];
}

/** Whoever changes what lies behind the ends of the chains gives the device another name: it was not made of that. */
async function keep({ database, device }: OpenRecord, opening: StoredOpening): Promise<string | null> {
  const transaction = database.transaction(['meta', 'openings'], 'readwrite');
  const head = await transaction.objectStore('meta').get('head');
  const isOurs = head?.device === device;
  if (isOurs) await transaction.objectStore('openings').put(opening, 'last');
  await transaction.done;
  return isOurs ? opening.sha256 : null;
}

/**
 * Makes the opening anew, from the one there is or from the whole record, and keeps it. Takes long for a long record: to be
 * called in a worker. A record with an entry that cannot be read has none.
 * @param now UTC with milliseconds
 * @returns its hash, for `noteOpening`, which a worker cannot call; null where none was kept
 */
export async function makeOpening(record: OpenRecord, now: string): Promise<StoreResult<string | null>> {
  try {
    const before = (await record.database.get('openings', 'last'))?.heads ?? [];
    const near = await readAtHand(record);
    if (!near.ok) return near;
    const read = near.value ? done(near.value) : await readWhole(record);
    if (!read.ok) return read;
    const { state, corrupted } = read.value;
    if (corrupted.length > 0 || !wantsOpening({ ...state, earlier: null })) return done(null);
    const ago = (days: number): string => subDays(new Date(now), days).toISOString();
    const text = openingText(openingOf(state, { from: ago(keptDays), until: ago(lateDays) }), by);
    const bytes = new TextEncoder().encode(text);
    const heads = headsOf(state, near.value ? before : []);
    return done(await keep(record, { bytes, sha256: await hashOf(bytes), heads }));
  } catch (error) {
    return failed(failureOf(error));
  }
}
