/** What was written since the last backup that was noted: found through an index, so the cost does not grow with the record. */
import type { Entry } from '../../ledger/entries/entry';
import { filesNamed } from '../../ledger/photos-named';
import type { SinceBackup } from '../../ledger/would-be-lost';
import type { Database } from '../database';
import { headsOnDisk } from '../device-heads';
import { type BackupNoted, readMarker } from '../marker';
import type { OpenRecord } from '../record';

/** So many entries are looked through for photos; where there are more they press enough without. */
const mostLookedThrough = 100;

type Stretch = { readonly device: string; readonly after: number; readonly last: number };

function stretches(
  heads: Awaited<ReturnType<typeof headsOnDisk>>,
  noted: BackupNoted | null,
): readonly Stretch[] {
  const kept = new Map((noted?.heads ?? []).map(({ device, counter }) => [device, counter]));
  return heads.flatMap(({ device, counter }) => {
    const after = kept.get(device) ?? 0;
    return counter > after ? [{ device, after, last: counter }] : [];
  });
}

const named = (entries: readonly Entry[]): readonly string[] =>
  entries.flatMap((entry) => filesNamed(entry).map(({ hash }) => hash));

async function sinceNoted(database: Database, noted: BackupNoted | null): Promise<SinceBackup> {
  const open = stretches(await headsOnDisk(database), noted);
  const entries = open.reduce((sum, { after, last }) => sum + last - after, 0);
  const hashes = new Set<string>();
  const firsts: string[] = [];
  for (const { device, after, last } of open) {
    const first: Partial<Entry> | undefined = await database.getFromIndex('entries', 'by-device', [
      device,
      after + 1,
    ]);
    if (typeof first?.writtenAt === 'string') firsts.push(first.writtenAt);
    if (entries > mostLookedThrough) continue;
    const range = IDBKeyRange.bound([device, after + 1], [device, last]);
    for (const hash of named(await database.getAllFromIndex('entries', 'by-device', range))) hashes.add(hash);
  }
  return {
    lastAt: noted?.at ?? null,
    entries,
    files: entries > mostLookedThrough ? null : hashes.size,
    oldest: firsts.sort()[0] ?? null,
  };
}

/** Null where the store does not answer: then other pages say so. */
export async function sinceBackup({ name, database }: OpenRecord): Promise<SinceBackup | null> {
  const found = readMarker(name);
  try {
    return await sinceNoted(database, found.state === 'there' ? found.marker.lastBackup : null);
  } catch (error) {
    if (error instanceof DOMException) return null;
    throw error;
  }
}
