/** Adding to the record, and keeping two tabs in step. */
import type { IDBPTransaction } from 'idb';
import type { Body } from '../ledger/entries/body';
import type { Entry } from '../ledger/entries/entry';
import { filesNamed, hashesIn } from '../ledger/photos-named';
import { seal } from '../ledger/seal';
import { onComingBack } from './coming-back';
import type { Database, DeviceHead, Shape } from './database';
import { endOf, headOfDevice } from './device-heads';
import { done, failed, failureOf, type StoreFailure, type StoreResult } from './failure';
import { markerKey } from './marker';
import { oneWriter, whileWriting } from './one-writer';
import { type Corrupted, markSeen, type OpenRecord, type Reading, reading } from './record';

/** What goes onto the envelopes. Times are UTC with milliseconds; `happenedAt` is `now` unless the person said otherwise. */
export type Stamp = {
  readonly now: string;
  readonly happenedAt?: string;
  readonly zone: string;
  readonly who: string | null;
  readonly newId: () => string;
};

/** `named`: photos that entries name already which the bodies are about, however long ago they were written. */
export type Proposal<R> =
  | { readonly ok: true; readonly bodies: readonly Body[]; readonly named?: ReadonlySet<string> }
  | { readonly ok: false; readonly refusal: R };

/** `fresh` are entries of other tabs or devices that the caller did not know and must fold first. */
export type Appended<R> =
  | {
      readonly ok: true;
      readonly fresh: readonly Entry[];
      readonly written: readonly Entry[];
      readonly corrupted: readonly Corrupted[];
    }
  | {
      readonly ok: false;
      readonly refusal: R;
      readonly fresh: readonly Entry[];
      readonly corrupted: readonly Corrupted[];
    }
  /** Nothing was written, and nothing counts as known. */
  | { readonly ok: false; readonly failure: StoreFailure };

const stores = ['entries', 'meta', 'photos'] as const;

const begin = (database: Database) => database.transaction(stores, 'readwrite', { durability: 'strict' });

type Transaction = ReturnType<typeof begin>;
type AnyTransaction = IDBPTransaction<Shape, typeof stores, IDBTransactionMode>;

/**
 * Reads, device by device, what lies beyond the counters seen. What is known is asked for at once, with the room between the
 * known devices, where others may be: one wait, where nothing is new.
 */
async function newerThan(transaction: AnyTransaction, seen: ReadonlyMap<string, number>): Promise<unknown[]> {
  const index = transaction.objectStore('entries').index('by-device');
  const of = (device: string): Promise<unknown[]> =>
    index.getAll(IDBKeyRange.bound([device, (seen.get(device) ?? 0) + 1], endOf(device)));
  const known = [...seen.keys()].sort();
  async function unknownBefore(until: string | undefined, after: string | undefined): Promise<unknown[]> {
    const found: unknown[] = [];
    let from = after === undefined ? undefined : endOf(after);
    for (;;) {
      const cursor = await index.openKeyCursor(from && IDBKeyRange.lowerBound(from));
      const device = cursor?.key[0];
      if (device === undefined || (until !== undefined && device >= until)) return found;
      found.push(...(await of(device)));
      from = endOf(device);
    }
  }
  const all = await Promise.all([
    ...known.map(of),
    ...[...known, undefined].map((device, i) => unknownBefore(device, known[i - 1])),
  ]);
  return all.flat();
}

/**
 * The bodies in sealed envelopes, chained to the head. Written-at never runs backwards on a device: when its clock was
 * set back, the last written-at is used again, so that an entry never sorts before one it builds on.
 */
function sealed(bodies: readonly Body[], head: DeviceHead, stamp: Stamp): readonly Entry[] {
  const { now, happenedAt = now, zone, who, newId } = stamp;
  const writtenAt = head.writtenAt !== null && head.writtenAt > now ? head.writtenAt : now;
  const entries: Entry[] = [];
  for (const body of bodies) {
    const previous = entries.at(-1)?.hash ?? head.hash;
    const counter = head.counter + entries.length + 1;
    const { device } = head;
    entries.push(seal({ id: newId(), device, counter, writtenAt, happenedAt, zone, who, previous, body }));
  }
  return entries;
}

/** All in one go, and the end of it: nothing waits that need not. A request that fails undoes the transaction. */
async function add(transaction: Transaction, head: DeviceHead, entries: readonly Entry[]): Promise<void> {
  const [store, meta] = [transaction.objectStore('entries'), transaction.objectStore('meta')];
  const last = entries.at(-1);
  const end = last && {
    device: head.device,
    counter: last.counter,
    hash: last.hash,
    writtenAt: last.writtenAt,
  };
  const asked = [
    ...entries.map((entry) => () => store.add(entry)),
    ...(end ? [() => meta.put(end, 'head')] : []),
  ];
  await Promise.all([...asked.map(async (ask) => ask()), transaction.done]);
}

/**
 * Whoever changes what lies behind the ends of the chains gives the device another name (`restore.ts`, `go-on.ts`): a page
 * that was opened under the old one does not know what came in there, and is not told by what it looks for.
 */
const isOutdated = ({ device }: OpenRecord, head: DeviceHead | undefined): boolean =>
  head !== undefined && head.device !== device;

const outdated = { ok: false, failure: { code: 'outdated' } } as const;

const headIn = async (transaction: AnyTransaction): Promise<DeviceHead | undefined> =>
  headOfDevice(await transaction.objectStore('meta').get('head'));

/** Photos that the entries name which these bodies correct, also by corrections of before. */
async function namedByCorrected(
  transaction: Transaction,
  bodies: readonly Body[],
): Promise<ReadonlySet<string>> {
  const entries = transaction.objectStore('entries');
  const named = new Set<string>();
  for (const body of bodies)
    if (body.kind === 'entry-corrected') {
      hashesIn(await entries.get(body.corrects), named);
      hashesIn(await entries.index('by-corrected').getAll(body.corrects), named);
    }
  return named;
}

/**
 * Photos that the bodies name and that are not in the store. One that is named already by what they are about may be
 * named again: it can lie on another device, and a correction must not fail for it.
 */
async function photosMissing(
  transaction: Transaction,
  bodies: readonly Body[],
  named: ReadonlySet<string> = new Set(),
): Promise<readonly string[]> {
  const missing: string[] = [];
  for (const { hash } of filesNamed(bodies))
    if (!named.has(hash) && (await transaction.objectStore('photos').getKey(hash)) === undefined)
      missing.push(hash);
  if (missing.length === 0) return missing;
  const corrected = await namedByCorrected(transaction, bodies);
  return missing.filter((hash) => !corrected.has(hash));
}

/** The entries are on the disk whether or not the other tabs hear of it: they catch up at their next append. */
function tellOtherTabs({ channel }: OpenRecord): void {
  try {
    channel?.postMessage('written');
  } catch (error) {
    if (!(error instanceof DOMException)) throw error;
  }
}

async function appendNow<R>(
  record: OpenRecord,
  stamp: Stamp,
  propose: (fresh: readonly Entry[]) => Proposal<R>,
): Promise<Appended<R>> {
  let transaction: Transaction | undefined;
  try {
    transaction = begin(record.database);
    const [head, newer] = await Promise.all([headIn(transaction), newerThan(transaction, record.seen)]);
    if (!head) throw new DOMException('the record has no device', 'NotFoundError');
    if (isOutdated(record, head)) {
      await abandon(transaction);
      return outdated;
    }
    const { entries: fresh, corrupted } = reading(newer);
    const proposal = propose(fresh);
    const missing = proposal.ok ? await photosMissing(transaction, proposal.bodies, proposal.named) : [];
    if (missing.length > 0) {
      await abandon(transaction);
      return { ok: false, failure: { code: 'photo-missing', hashes: missing } };
    }
    const written = proposal.ok ? sealed(proposal.bodies, head, stamp) : [];
    await add(transaction, head, written);
    markSeen(record, [...fresh, ...written]);
    if (!proposal.ok) return { ok: false, refusal: proposal.refusal, fresh, corrupted };
    tellOtherTabs(record);
    return { ok: true, fresh, written, corrupted };
  } catch (error) {
    await abandon(transaction);
    return { ok: false, failure: failureOf(error) };
  }
}

/**
 * One transaction: reads what the caller does not know, lets `propose` decide on it, seals what it returns and adds it.
 * The answer comes only after the transaction is on the disk. `propose` must be pure and synchronous. Nothing in it grows
 * with the record.
 */
export const append = <R>(
  record: OpenRecord,
  stamp: Stamp,
  propose: (fresh: readonly Entry[]) => Proposal<R>,
): Promise<Appended<R>> =>
  whileWriting(() => oneWriter(`leesbook-write-${record.name}`, () => appendNow(record, stamp, propose)));

/** Undoes what a failed transaction has begun and waits until it is over. */
async function abandon(transaction: Transaction | undefined): Promise<void> {
  const over = transaction?.done.catch(() => undefined);
  try {
    transaction?.abort();
  } catch (error) {
    // It was over already.
    if (!(error instanceof DOMException)) throw error;
  }
  await over;
}

/** What other tabs wrote since the caller was last given anything. */
export async function catchUp(record: OpenRecord): Promise<StoreResult<Reading>> {
  try {
    const transaction = record.database.transaction(stores);
    const head = await headIn(transaction);
    const { entries, corrupted } = reading(await newerThan(transaction, record.seen));
    await transaction.done;
    if (isOutdated(record, head)) return outdated;
    // An append may have handed some of them over in the meantime.
    const fresh = entries.filter(({ device, counter }) => counter > (record.seen.get(device) ?? 0));
    markSeen(record, fresh);
    return done({ entries: fresh, corrupted });
  } catch (error) {
    return failed(failureOf(error));
  }
}

/** Where tabs have no channel: the marker is written after each append, and the others hear of that. */
function onMarker({ name, channel }: OpenRecord, listen: () => void): () => void {
  if (channel || typeof window === 'undefined') return () => undefined;
  const heard = ({ key }: StorageEvent): void => {
    if (key === markerKey(name)) listen();
  };
  window.addEventListener('storage', heard);
  return () => window.removeEventListener('storage', heard);
}

/**
 * Hears when another tab has written, and hands over what the caller does not know yet; also when this page comes back
 * into view, thaws, or is shown again from the browser's memory.
 * @returns a function that ends the watch
 */
export function watch(record: OpenRecord, onNew: (news: StoreResult<Reading>) => void): () => void {
  const listen = (): void => {
    void catchUp(record).then((news) => {
      if (!news.ok || news.value.entries.length + news.value.corrupted.length > 0) onNew(news);
    });
  };
  record.channel?.addEventListener('message', listen);
  const stops = [onComingBack(listen), onMarker(record, listen)];
  return () => {
    record.channel?.removeEventListener('message', listen);
    for (const stop of stops) stop();
  };
}
