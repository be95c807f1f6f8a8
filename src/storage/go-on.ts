/**
 * Going on with a record that is not whole, because somebody has decided so. Nothing that is there is taken away, and the
 * marker remembers what was given up until it comes back.
 */
import { type DeviceHead, openDatabase, type RecordName } from './database';
import { type HeadOnDisk, headsOnDisk } from './device-heads';
import { done, failed, failureOf, type StoreResult } from './failure';
import { noteWithout, readMarker, type Without } from './marker';
import { entriesTold, missingBefore, type Trouble } from './trouble';

/** A device that has written nothing yet. What it will write sorts behind all that is there. */
function freshHead(device: string, there: readonly HeadOnDisk[]): DeviceHead {
  const times = there.flatMap(({ writtenAt }) => writtenAt ?? []).sort();
  return { device, counter: 0, hash: null, writtenAt: times.at(-1) ?? null };
}

/** @param entries by the marker; null where it could not be read */
function withoutOf(one: Trouble, entries: number | null, at: string): readonly Without[] {
  switch (one.code) {
    case 'gone':
      return [{ what: 'record', at, entries }];
    case 'shorter':
      return [{ what: 'lost', at, entries: one.entries, heads: [...one.missing] }];
    case 'damaged':
      return one.wrong.map((wrong) => {
        if (wrong.what === 'head') return { what: 'head', at };
        const gap = missingBefore(wrong);
        if (gap) return { what: 'missing', at, ...gap };
        const { id, hash, device, counter } = wrong;
        return { what: 'entry', at, id, hash, device, counter };
      });
    case 'later-version':
      return [];
  }
}

/** Where the end of a chain is in doubt this device goes on under a new name: what was lost may come back from a backup. */
const needsNewDevice = (trouble: readonly Trouble[]): boolean =>
  trouble.some(
    (one) =>
      one.code === 'gone' ||
      one.code === 'shorter' ||
      (one.code === 'damaged' && one.wrong.some(({ what }) => what === 'head')),
  );

/**
 * From now on the record is what is on the disk; where there is none, one is begun. Open it again afterwards.
 * @returns `store-failed` of localStorage where the decision could not be kept
 */
export async function goOnWithout(
  name: RecordName,
  trouble: readonly Trouble[],
  { newId, now }: { readonly newId: () => string; readonly now: string },
): Promise<StoreResult<null>> {
  const isGone = trouble.some(({ code }) => code === 'gone');
  const opened = await openDatabase(name, () => undefined, isGone ? 'make' : 'only-if-there');
  if (!opened.ok) return opened;
  const database = opened.value;
  try {
    const there = await headsOnDisk(database);
    if (needsNewDevice(trouble)) {
      const transaction = database.transaction('meta', 'readwrite', { durability: 'strict' });
      await Promise.all([transaction.store.put(freshHead(newId(), there), 'head'), transaction.done]);
    }
    const marker = readMarker(name);
    const entries = marker.state === 'there' ? entriesTold(marker.marker) : null;
    const without = trouble.flatMap((one) => withoutOf(one, entries, now));
    const kept = noteWithout(name, without, there);
    if (kept) return done(null);
    return failed({ code: 'store-failed', name: 'localStorage', message: 'the decision was not kept' });
  } catch (error) {
    return failed(failureOf(error));
  } finally {
    database.close();
  }
}
