/**
 * A mark beside the record that there is one: how far it goes, when it was written and backed up last. It lies in
 * localStorage, apart from the database, so that a database that is gone, emptied or cut short is noticed. It is as long as
 * there are devices, never as long as the record, and no figure is ever made of it.
 */
import * as z from 'zod/mini';
import { Hash, Id } from '../ledger/entries/identity';
import { Instant } from '../ledger/entries/moments';
import type { Head } from '../ledger/verify';
import type { RecordName } from './database';
import { parsed, withStorage } from './local';

const Count = z.int().check(z.minimum(0));
const Place = z.int().check(z.minimum(1));
const HeadKept = z.strictObject({ device: Id, counter: Place, hash: Hash });

const BackupNoted = z.strictObject({ at: Instant, entries: Count, heads: z.array(HeadKept) });

const text = z.nullable(z.string());

/** What somebody decided, having read what is wrong, to go on without. It stays here until it comes back. */
export const Without = z.discriminatedUnion('what', [
  z.strictObject({
    what: z.literal('entry'),
    at: Instant,
    id: text,
    hash: text,
    device: text,
    counter: z.nullable(z.number()),
  }),
  /** Entries `from` to `to` of a device, behind which others stand. */
  z.strictObject({ what: z.literal('missing'), at: Instant, device: Id, from: Place, to: Place }),
  /** The end of the chains, of which the marker told and the database did not: so many entries at the least. */
  z.strictObject({ what: z.literal('lost'), at: Instant, entries: Count, heads: z.array(HeadKept) }),
  z.strictObject({ what: z.literal('head'), at: Instant }),
  /** The whole record; the one that was begun then is another. `entries` is null where the marker could not be read. */
  z.strictObject({ what: z.literal('record'), at: Instant, entries: z.nullable(Count) }),
]);
export type Without = z.infer<typeof Without>;

const Marker = z.strictObject({
  v: z.literal(1),
  /** How many entries the record holds, as the last counters of its devices add up to. */
  entries: Count,
  heads: z.array(HeadKept),
  /** When the last of them was written, by its own word. */
  writtenAt: z.nullable(Instant),
  lastBackup: z.nullable(BackupNoted),
  without: z.array(Without),
});
export type Marker = z.infer<typeof Marker>;
export type BackupNoted = z.infer<typeof BackupNoted>;

/** `unreadable`: there was a record, and nobody can say of how many entries. `blocked`: nothing can be known. */
export type MarkerRead =
  | { readonly state: 'there'; readonly marker: Marker }
  | { readonly state: 'none' | 'unreadable' | 'blocked' };

export const markerKey = (record: RecordName): string => `leesbook:marker:${record}`;
const beforeOf = (record: RecordName): string => `${markerKey(record)}:before`;

const fresh: Marker = { v: 1, entries: 0, heads: [], writtenAt: null, lastBackup: null, without: [] };

function read(storage: Storage, record: RecordName): MarkerRead {
  const kept = storage.getItem(markerKey(record));
  if (kept === null) return { state: 'none' };
  const fits = Marker.safeParse(parsed(kept));
  return fits.success ? { state: 'there', marker: fits.data } : { state: 'unreadable' };
}

export function readMarker(record: RecordName): MarkerRead {
  const found = withStorage((storage) => read(storage, record));
  return 'state' in found ? found : { state: 'blocked' };
}

/** Whether there must be a record with something in it. */
export const tellsOfEntries = (found: MarkerRead): boolean =>
  found.state === 'unreadable' || (found.state === 'there' && found.marker.entries > 0);

const Texts = z.array(z.string());

/** Markers that were set aside, the oldest first, each as it stood. */
function setAsideIn(storage: Storage, record: RecordName): readonly string[] {
  const kept = storage.getItem(beforeOf(record));
  if (kept === null) return [];
  const texts = Texts.safeParse(parsed(kept));
  return texts.success ? texts.data : [kept];
}

export function markersBefore(record: RecordName): readonly string[] {
  const found = withStorage((storage) => setAsideIn(storage, record));
  return 'ok' in found ? [] : found;
}

function setAside(storage: Storage, record: RecordName): void {
  const kept = storage.getItem(markerKey(record));
  if (kept === null) return;
  storage.setItem(beforeOf(record), JSON.stringify([...setAsideIn(storage, record), kept]));
}

const write = (storage: Storage, record: RecordName, marker: Marker): void =>
  storage.setItem(markerKey(record), JSON.stringify(marker));

/** Changes what stands there now: another tab may have written meanwhile. One that cannot be read is kept aside. */
function change(record: RecordName, how: (marker: Marker) => Marker): boolean {
  const kept = withStorage((storage) => {
    const found = read(storage, record);
    if (found.state === 'unreadable') setAside(storage, record);
    write(storage, record, how(found.state === 'there' ? found.marker : fresh));
    return { ok: true } as const;
  });
  return kept.ok;
}

const total = (heads: readonly Head[]): number => heads.reduce((sum, { counter }) => sum + counter, 0);

/** The farther end of each chain. */
function farthest(known: readonly Head[], more: readonly Head[]): Head[] {
  const heads = new Map(known.map((head) => [head.device, head]));
  for (const { device, counter, hash } of more)
    if (counter > (heads.get(device)?.counter ?? 0)) heads.set(device, { device, counter, hash });
  return [...heads.values()];
}

/** Entries of which the marker tells and chains that end at `heads` do not have: so many at the least. */
export function shortOf(found: MarkerRead, heads: readonly Head[]): number {
  const ends = new Map(heads.map(({ device, counter }) => [device, counter]));
  const known = found.state === 'there' ? found.marker.heads : [];
  return known.reduce((sum, { device, counter }) => sum + Math.max(0, counter - (ends.get(device) ?? 0)), 0);
}

/** An entry, as far as the marker cares. */
type Noted = Head & { readonly writtenAt: string | null };

const latest = (times: readonly (string | null)[]): string | null =>
  times.reduce((last, time) => (last === null || (time !== null && time > last) ? time : last), null);

/**
 * Notes how far the record goes, once that is on the disk; nothing that was noted goes back by it.
 * @param heads entries written or read; only the last of each device counts
 * @returns whether it could be kept
 */
export function noteHeads(record: RecordName, heads: readonly Noted[]): boolean {
  return change(record, (marker) => {
    const farther = farthest(marker.heads, heads);
    const writtenAt = latest([marker.writtenAt, ...heads.map((head) => head.writtenAt)]);
    return { ...marker, heads: farther, entries: total(farther), writtenAt };
  });
}

/** Notes that a backup of the record was made; call it once the file was saved or handed over. */
export const noteBackup = (record: RecordName, backup: BackupNoted): boolean =>
  change(record, (marker) => ({ ...marker, lastBackup: backup }));

const reaches = ({ heads }: BackupNoted, known: BackupNoted): boolean => {
  const counters = new Map(heads.map(({ device, counter }) => [device, counter]));
  return known.heads.every(({ device, counter }) => (counters.get(device) ?? 0) >= counter);
};

/** Notes one that was just brought in, unless one is noted that holds what it does not. */
export const noteBroughtIn = (record: RecordName, backup: BackupNoted): boolean =>
  change(record, (marker) =>
    marker.lastBackup === null || reaches(backup, marker.lastBackup)
      ? { ...marker, lastBackup: backup }
      : marker,
  );

/**
 * Goes on with what is there: the marker of before is set aside, never thrown away, and the new one remembers what
 * somebody decided to go on without.
 * @param heads the ends of the chains as they lie on the disk
 */
export function noteWithout(
  record: RecordName,
  without: readonly Without[],
  heads: readonly Noted[],
): boolean {
  const kept = withStorage((storage) => {
    const found = read(storage, record);
    setAside(storage, record);
    const before = found.state === 'there' ? found.marker : fresh;
    write(storage, record, {
      ...before,
      heads: farthest([], heads),
      entries: total(heads),
      writtenAt: latest(heads.map(({ writtenAt }) => writtenAt)),
      // A backup of another record says nothing of this one.
      lastBackup: without.some(({ what }) => what === 'record') ? null : before.lastBackup,
      without: [...before.without, ...without],
    });
    return { ok: true } as const;
  });
  return kept.ok;
}

const isEqual = (a: Without, b: Without): boolean => JSON.stringify(a) === JSON.stringify(b);
const sameThing = (a: Without, b: Without): boolean => isEqual({ ...a, at: '' }, { ...b, at: '' });

/** Notes what a record goes on without since a backup was brought in; what is noted already is not noted twice. */
export const noteAlsoWithout = (record: RecordName, more: readonly Without[]): boolean =>
  change(record, (marker) => {
    const fresh = more.filter((one) => !marker.without.some((known) => sameThing(one, known)));
    return { ...marker, without: [...marker.without, ...fresh] };
  });

/** Names no longer what is there again, and of each thing only what is `left` of it; the marker of before is set aside. */
export function noteCameBack(
  record: RecordName,
  back: readonly { readonly one: Without; readonly left: readonly Without[] }[],
): void {
  if (back.length === 0) return;
  withStorage((storage) => setAside(storage, record));
  change(record, (marker) => {
    const backOf = (one: Without) => back.find((known) => isEqual(one, known.one));
    const stays = marker.without.filter((one) => !backOf(one));
    const isNamed = (left: Without): boolean => stays.some((known) => sameThing(known, left));
    const without = marker.without.flatMap(
      (one) => backOf(one)?.left.filter((left) => !isNamed(left)) ?? [one],
    );
    return { ...marker, without };
  });
}

/** For the invented record only, which goes without a trace. */
export function forgetMarker(record: RecordName): void {
  withStorage((storage) => {
    storage.removeItem(markerKey(record));
    storage.removeItem(beforeOf(record));
  });
}
