/** What was written since the last backup that was noted: found through an index, so the cost does not grow with the record. */
import type { Entry } from '../../ledger/entries/entry';
import { filesNamed } from '../../ledger/photos-named';
import type { SinceBackup } from '../../ledger/would-be-lost';
import type { Database } from '../database';
import { headsOnDisk } from '../device-heads';
import { type BackupNoted, readMarker, type Without } from '../marker';
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

/** Of the places in it those whose entries somebody has given up: nothing lies there. */
const givenUpIn = ({ device, after, last }: Stretch, without: readonly Without[]): number =>
  without.reduce(
    (sum, one) =>
      one.what === 'missing' && one.device === device
        ? sum + Math.max(0, Math.min(last, one.to) - Math.max(after + 1, one.from) + 1)
        : sum,
    0,
  );

async function sinceNoted(
  database: Database,
  noted: BackupNoted | null,
  without: readonly Without[],
): Promise<SinceBackup> {
  const open = stretches(await headsOnDisk(database), noted);
  const entries = open.reduce((sum, one) => sum + one.last - one.after - givenUpIn(one, without), 0);
  const hashes = new Set<string>();
  const firsts: string[] = [];
  for (const { device, after, last } of open) {
    const range = IDBKeyRange.bound([device, after + 1], [device, last]);
    const first: Partial<Entry> | undefined = await database.getFromIndex('entries', 'by-device', range);
    if (typeof first?.writtenAt === 'string') firsts.push(first.writtenAt);
    if (entries > mostLookedThrough) continue;
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
    const marker = found.state === 'there' ? found.marker : null;
    return await sinceNoted(database, marker?.lastBackup ?? null, marker?.without ?? []);
  } catch (error) {
    if (error instanceof DOMException) return null;
    throw error;
  }
}
