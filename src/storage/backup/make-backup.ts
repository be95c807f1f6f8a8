/**
 * Makes a backup of a record, in whatever state it is: what is whole goes in as entries, what is damaged as it lies there. It is a
 * picture of the moment in which it was begun; what is written meanwhile is not in it. Memory holds a piece at a time.
 */
import { utf8ToBytes } from '@noble/hashes/utils.js';
import { chainsOf, gapLength, type Link, linkOf } from '../../ledger/chains';
import type { Entry } from '../../ledger/entries/entry';
import { filesNamed, hashesIn } from '../../ledger/photos-named';
import { canonicalText, hashOf } from '../../ledger/seal';
import { type Head, wrongInItself } from '../../ledger/verify';
import type { RecordName } from '../database';
import { failureOf, type StoreFailure } from '../failure';
import type { Without } from '../marker';
import { keptType } from '../picture-type';
import { Archive, type Part } from './archive';
import { longestLine } from './limits';
import { lock } from './lock';
import { type BackupFile, type Manifest, nameOf, names, type UnsealedManifest } from './manifest';
import { type TellBackup, untold } from './progress';
import { readBackup } from './read-backup';
import { readMe } from './read-me';
import { type BackupRefusal, NotTaken } from './refusal';
import {
  countersNow,
  entriesThere,
  fileHashesThere,
  fileThere,
  openWhatIsThere,
  type Told,
} from './what-is-there';

export type BackupWanted = {
  readonly record: RecordName;
  /** UTC with milliseconds. */
  readonly madeAt: string;
  readonly appVersion: string;
  /** Null: anybody who has the file can read it. */
  readonly passphrase: string | null;
  /** What the record goes on without, as its marker tells. */
  readonly without: readonly Without[];
};

export type MadeBackup = {
  readonly file: Blob;
  readonly locked: boolean;
  readonly entries: number;
  readonly damaged: number;
  /** Entries that the browser itself could not give any more. */
  readonly unreadable: number;
  readonly files: number;
  /** Named by an entry and not in it: on another device, or damaged. */
  readonly filesMissing: number;
  readonly heads: readonly Head[];
  /** Not there between others; those that are damaged among them. */
  readonly missing: number;
  /** Whether the record goes on without something. */
  readonly without: boolean;
};

export type BackupMade =
  | { readonly ok: true; readonly backup: MadeBackup }
  | { readonly ok: false; readonly failure: StoreFailure }
  /** What was made did not stand the reading of it. */
  | { readonly ok: false; readonly refusal: BackupRefusal };

type There = Extract<Awaited<ReturnType<typeof openWhatIsThere>>, { ok: true }>['value'];

/** What passed by while the entries were packed. */
type Passed = {
  readonly links: Link[];
  readonly damaged: string[];
  readonly named: Set<string>;
  /** Any hash in any text: also what cannot be read any more may name a photo. */
  readonly hinted: Set<string>;
  readonly told: Told;
};

/** What lies there as a line, whatever it is: what JSON cannot say is left out of it. */
function anyLine(raw: unknown): string {
  try {
    return canonicalText(raw);
  } catch {
    return (
      JSON.stringify(raw, (_key, value) => (typeof value === 'bigint' ? String(value) : value)) ?? 'null'
    );
  }
}

const isLater = (raw: unknown, counters: ReadonlyMap<string, number>): boolean => {
  const { device, counter } = (raw ?? {}) as Partial<Entry>;
  return typeof device === 'string' && typeof counter === 'number' && counter > (counters.get(device) ?? 0);
};

function pass(raw: unknown, part: Part, passed: Passed): void {
  hashesIn(raw, passed.hinted);
  const line = anyLine(raw);
  if (line.length > longestLine || wrongInItself(raw)) {
    passed.damaged.push(line);
    return;
  }
  const entry = raw as Entry;
  passed.links.push(linkOf(entry));
  for (const { hash } of filesNamed(entry.body)) passed.named.add(hash);
  part.add(utf8ToBytes(`${line}\n`));
}

async function packEntries(database: There, archive: Archive, tell: TellBackup) {
  const passed: Passed = {
    links: [],
    damaged: [],
    named: new Set(),
    hinted: new Set(),
    told: { unreadable: 0 },
  };
  const [counters, count] = [await countersNow(database), await database.count('entries')];
  const part = archive.part(names.entries);
  let done = 0;
  for await (const found of entriesThere(database, passed.told)) {
    for (const raw of found) if (!isLater(raw, counters)) pass(raw, part, passed);
    done += found.length;
    tell({ stage: 'packing-entries', done: Math.min(done, count), of: Math.max(1, count) });
  }
  return { passed, entries: { count: passed.links.length, ...part.end() } };
}

function packDamaged(archive: Archive, lines: readonly string[]): Manifest['damaged'] {
  if (lines.length === 0) return null;
  const part = archive.part(names.damaged);
  for (const line of lines) part.add(utf8ToBytes(`${line}\n`));
  return { count: lines.length, ...part.end() };
}

async function packFiles(database: There, archive: Archive, { hinted }: Passed, tell: TellBackup) {
  const there = await fileHashesThere(database);
  const wanted = [...there].filter((hash) => hinted.has(hash));
  const files: BackupFile[] = [];
  for (const [done, hash] of wanted.entries()) {
    tell({ stage: 'packing-files', done, of: wanted.length });
    const bytes = await fileThere(database, hash);
    const type = bytes && keptType(bytes);
    if (!bytes || !type) continue;
    const file = { sha256: hash, bytes: bytes.length, type };
    archive.laid(nameOf(file), bytes);
    files.push(file);
  }
  return files;
}

async function packed(database: There, wanted: BackupWanted, tell: TellBackup) {
  const archive = new Archive(wanted.madeAt);
  const about = archive.whole(names.readMe, utf8ToBytes(readMe));
  const { passed, entries } = await packEntries(database, archive, tell);
  const damaged = packDamaged(archive, passed.damaged);
  const files = await packFiles(database, archive, passed, tell);
  const { heads, gaps, breaks } = chainsOf(passed.links);
  // Where the phone left off is its own affair.
  const without = wanted.without.filter(({ what }) => what !== 'head');
  const told: Omit<Extract<UnsealedManifest, { v: 1 }>, 'v'> = {
    format: 'leesbook-backup',
    madeBy: { name: 'Leesbook', version: wanted.appVersion },
    madeAt: wanted.madeAt,
    record: wanted.record,
    heads: [...heads],
    gaps: [...gaps],
    breaks: [...breaks],
    readMe: about,
    entries,
    damaged,
    files,
  };
  const unsealed: UnsealedManifest = without.length === 0 ? { ...told, v: 1 } : { ...told, v: 2, without };
  const manifest: Manifest = { ...unsealed, contentHash: hashOf(unsealed) };
  archive.whole(names.manifest, utf8ToBytes(`${canonicalText(manifest)}\n`));
  return { file: archive.end(), manifest, passed };
}

/** A file for which the phone has no room is made all the same: only its reading fails. */
const noRoom = { ok: false, refusal: { code: 'no-room' } } as const;

async function made(database: There, wanted: BackupWanted, tell: TellBackup): Promise<BackupMade> {
  const { file, manifest, passed } = await packed(database, wanted, tell);
  // What cannot be read again is no backup: it is read before anybody is told that there is one.
  const again = await readBackup(file, undefined, tell);
  if (!again.ok) return again.refusal.code === 'not-handed-over' ? noRoom : again;
  const { passphrase } = wanted;
  return {
    ok: true,
    backup: {
      file: passphrase === null ? file : await lock(file, passphrase, tell),
      locked: passphrase !== null,
      entries: manifest.entries.count,
      damaged: manifest.damaged?.count ?? 0,
      unreadable: passed.told.unreadable,
      files: manifest.files.length,
      filesMissing: again.backup.filesMissing.length,
      heads: manifest.heads,
      missing: again.backup.gaps.reduce((sum, gap) => sum + gapLength(gap), 0),
      without: again.backup.without.length > 0,
    },
  };
}

/** Works on a record that is sound, damaged, of another version, or that this app may only read. Writes nothing into it. */
export async function makeBackup(wanted: BackupWanted, tell: TellBackup = untold): Promise<BackupMade> {
  const opened = await openWhatIsThere(wanted.record);
  if (!opened.ok) return opened;
  try {
    return await made(opened.value, wanted, tell);
  } catch (error) {
    if (error instanceof NotTaken) return { ok: false, refusal: error.refusal };
    if (!(error instanceof DOMException)) throw error;
    return error.name === 'NotReadableError' ? noRoom : { ok: false, failure: failureOf(error) };
  } finally {
    opened.value.close();
  }
}
