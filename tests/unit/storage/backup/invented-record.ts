/** An invented record in an invented store: a few people, a container with a photo, a PDF, two devices where wanted. */
import type { Body } from '../../../../src/ledger/entries/body';
import type { Entry } from '../../../../src/ledger/entries/entry';
import { append, type Stamp } from '../../../../src/storage/append';
import type { BackupWanted, MadeBackup } from '../../../../src/storage/backup/make-backup';
import { makeBackup } from '../../../../src/storage/backup/make-backup';
import { type Backup, readBackup } from '../../../../src/storage/backup/read-backup';
import type { RecordName } from '../../../../src/storage/database';
import { databaseName } from '../../../../src/storage/database-name';
import { keepPhoto } from '../../../../src/storage/photos';
import { type OpenRecord, openRecord } from '../../../../src/storage/record';

let ids = 0;
export const newId = () => `0190b3b0-0000-7000-8000-${(++ids).toString(16).padStart(12, '0')}`;
export const monday = '2026-03-02T08:00:00.000Z';
export const stamp: Stamp = { now: monday, zone: 'Europe/Paris', who: null, newId };

const open: OpenRecord[] = [];

export async function opened(name: RecordName = 'real'): Promise<OpenRecord> {
  const result = await openRecord(name, { newId, onClosed: () => undefined });
  if (!result.ok) throw new Error(result.failure.code);
  open.push(result.value);
  return result.value;
}

/** Every record is closed, every database gone: another phone. */
export async function anotherPhone(): Promise<void> {
  for (const record of open.splice(0)) record.close();
  for (const name of ['real', 'demo'] as const)
    await new Promise<void>((resolve, reject) => {
      const request = indexedDB.deleteDatabase(databaseName(name));
      request.onsuccess = () => resolve();
      request.onerror = () => reject(request.error);
    });
}

export const workshop: Body = {
  kind: 'workshop-described',
  v: 1,
  name: 'Weir Yard',
  address: 'Weir Yard 6, Ostermill',
  mapReference: '4471 0926',
  emergencyNumber: '112',
};

export const person = (name: string): Body => ({ kind: 'person-added', v: 1, personId: newId(), name });

export async function says(record: OpenRecord, ...bodies: readonly Body[]): Promise<readonly Entry[]> {
  const result = await append(record, stamp, () => ({ ok: true, bodies }));
  if (!('written' in result)) throw new Error(JSON.stringify(result));
  return result.written;
}

/** A JPEG as far as the store looks at it. */
export const picture = (last: number) => new Uint8Array([0xff, 0xd8, 0xff, 0xe0, last, 0xff, 0xd9]);
export const pdf = new TextEncoder().encode('%PDF-1.7\nnothing in it\n%%EOF\n');

export async function marked(record: OpenRecord, bytes = picture(1)): Promise<Body> {
  const kept = await keepPhoto(record, bytes, monday);
  if (!kept.ok) throw new Error(kept.failure.code);
  return {
    kind: 'container-marked',
    v: 1,
    containerId: '0190b3b0-0000-7000-8000-00000000c007',
    mark: 'contents-doubtful',
    photos: [{ hash: kept.value, type: 'image/jpeg', bytes: bytes.length }],
  };
}

export const wanted = {
  record: 'real',
  madeAt: monday,
  appVersion: '0.1.0',
  passphrase: null,
  without: [],
} as const;

export async function backedUp(
  passphrase: string | null = null,
  without: BackupWanted['without'] = [],
): Promise<MadeBackup> {
  const made = await makeBackup({ ...wanted, passphrase, without });
  if (!made.ok) throw new Error(JSON.stringify(made));
  return made.backup;
}

export async function read(file: Blob, passphrase?: string): Promise<Backup> {
  const result = await readBackup(file, passphrase);
  if (!result.ok) throw new Error(JSON.stringify(result.refusal));
  return result.backup;
}

/** What lies in the store, by id. */
export const entriesIn = (record: OpenRecord): Promise<readonly unknown[]> =>
  record.database.getAll('entries');
