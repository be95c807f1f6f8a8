/**
 * Reads a backup that anybody may have made up, and checks all of it before a byte goes anywhere: nothing is written, shown or run
 * here. What comes back whole is what it was when it was made, as far as hashes can tell.
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import { type Break, type Chains, chainsOf, type Gap, type Link, linkOf } from '../../ledger/chains';
import type { Entry } from '../../ledger/entries/entry';
import { filesNamed } from '../../ledger/photos-named';
import { hashOf } from '../../ledger/seal';
import { type Head, laterKind, wrongInItself } from '../../ledger/verify';
import type { Without } from '../marker';
import { keptType } from '../picture-type';
import {
  mostArchiveBytes,
  mostCounter,
  mostEntries,
  mostFileBytes,
  mostFiles,
  mostManifestBytes,
  mostTextBytes,
} from './limits';
import { canonicalValue, linesIn } from './lines';
import { expectPassphrase, isLocked, unlock } from './lock';
import { type BackupFile, latestVersion, Manifest, nameOf, names, sealText } from './manifest';
import { type TellBackup, untold } from './progress';
import { type BackupRefusal, NotTaken, refuse } from './refusal';
import { piecesOf, unpack } from './unpack';
import { type Directory, directoryOf, type Packed } from './zip-directory';

/** A backup that was found whole. Its entries and files are read from it again when they are wanted: it can be larger than memory. */
export type Backup = {
  readonly manifest: Manifest;
  /** Those that were mended last, the others in the order of the record. */
  readonly entries: () => Iterable<Entry>;
  readonly links: readonly Link[];
  readonly heads: readonly Head[];
  /** What was missing or damaged when it was made, and still cannot be read. */
  readonly gaps: readonly Gap[];
  readonly breaks: readonly Break[];
  readonly damaged: number;
  /** What somebody had decided to go on without, where it was made. */
  readonly without: readonly Without[];
  readonly files: readonly BackupFile[];
  readonly file: (file: BackupFile) => Promise<Uint8Array<ArrayBuffer>>;
  /** Named by an entry, and not in the backup: it was not on the device that made it. */
  readonly filesMissing: readonly string[];
};

export type BackupRead =
  | { readonly ok: true; readonly backup: Backup }
  | { readonly ok: false; readonly refusal: BackupRefusal };

const zipBegins = [0x50, 0x4b, 0x03, 0x04];

async function beginsAsZip(file: Blob): Promise<boolean> {
  const start = new Uint8Array(await file.slice(0, zipBegins.length).arrayBuffer());
  return zipBegins.every((byte, at) => start[at] === byte);
}

const inside = (directory: Directory, name: string): Packed =>
  directory.files.get(name) ?? refuse({ code: 'missing-file', name });

async function manifestIn(file: Blob, directory: Directory): Promise<Manifest> {
  const packed = directory.files.get(names.manifest);
  if (!packed) return refuse({ code: 'another-archive' });
  const bytes = await unpack(file, packed, mostManifestBytes, null);
  const [line = '', more] = linesIn(names.manifest, bytes, mostManifestBytes);
  const read = canonicalValue(line, mostManifestBytes);
  if ('wrong' in read) return refuse({ code: 'manifest-wrong', detail: read.wrong });
  const said = (typeof read.value === 'object' && read.value !== null ? read.value : {}) as Partial<Manifest>;
  if (said.format !== 'leesbook-backup') return refuse({ code: 'another-archive' });
  if (typeof said.v === 'number' && said.v > latestVersion)
    return refuse({ code: 'newer-version', v: said.v });
  const parsed = Manifest.safeParse(read.value);
  if (!parsed.success || more !== undefined) {
    const issue = parsed.error?.issues[0];
    const detail = issue ? `${issue.path.join('.') || 'all of it'}: ${issue.message}` : 'more than one line';
    return refuse({ code: 'manifest-wrong', detail });
  }
  const { contentHash, ...rest } = read.value as Manifest;
  if (hashOf(rest) !== contentHash) return refuse({ code: 'part-differs', name: names.manifest });
  return parsed.data;
}

/** Exactly the files that the manifest lists, each of the size it says. */
function expectFiles(directory: Directory, manifest: Manifest): void {
  const { readMe, entries, damaged, files } = manifest;
  if (files.length > mostFiles) refuse({ code: 'too-large', what: 'files', most: mostFiles });
  const wanted = new Map<string, number | null>([
    [names.readMe, readMe.bytes],
    [names.entries, entries.bytes],
    ...(damaged ? ([[names.damaged, damaged.bytes]] as const) : []),
    [names.manifest, null],
    ...files.map((file) => [nameOf(file), file.bytes] as const),
  ]);
  for (const name of directory.files.keys()) if (!wanted.has(name)) refuse({ code: 'unexpected-file', name });
  for (const [name, bytes] of wanted)
    if (inside(directory, name).bytes !== (bytes ?? inside(directory, name).bytes))
      refuse({ code: 'part-differs', name });
  const named = new Set(files.map(({ sha256: hash }) => hash));
  if (named.size !== files.length) refuse({ code: 'manifest-wrong', detail: 'a file is listed twice' });
}

/** Every byte before the seal is as it was. */
async function expectSeal(file: Blob, { comment, commentAt }: Directory, tell: TellBackup): Promise<void> {
  if (comment === '') refuse({ code: 'packed-again' });
  const hash = sha256.create();
  let done = 0;
  for await (const piece of piecesOf(file, 0, commentAt)) {
    hash.update(piece);
    done += piece.length;
    tell({ stage: 'reading', done, of: commentAt });
  }
  if (comment !== sealText(bytesToHex(hash.digest()))) refuse({ code: 'not-as-made' });
}

type Lines = { readonly bytes: Uint8Array; readonly lines: number };

async function linesOf(
  file: Blob,
  directory: Directory,
  name: string,
  said: Manifest['entries'],
): Promise<Lines> {
  if (said.count > mostEntries) refuse({ code: 'too-large', what: name, most: mostEntries });
  const bytes = await unpack(file, inside(directory, name), mostTextBytes, said.sha256);
  return { bytes, lines: said.count };
}

/** Gathers what is told of each entry while all of them go by once. */
type Seen = { readonly links: Link[]; readonly ids: Set<string>; readonly named: Set<string> };

function see(seen: Seen, entry: Entry): void {
  if (entry.counter > mostCounter)
    refuse({ code: 'too-large', what: `entry ${entry.counter}`, most: mostCounter });
  if (seen.ids.has(entry.id)) refuse({ code: 'twice', id: entry.id });
  seen.ids.add(entry.id);
  seen.links.push(linkOf(entry));
  for (const { hash } of filesNamed(entry.body)) seen.named.add(hash);
}

function checkEntries({ bytes, lines }: Lines, seen: Seen, tell: TellBackup): void {
  let line = 0;
  for (const text of linesIn(names.entries, bytes)) {
    line += 1;
    const read = canonicalValue(text);
    if ('wrong' in read) refuse({ code: 'line-unreadable', name: names.entries, line, detail: read.wrong });
    const { value } = read as { readonly value: unknown };
    const why = wrongInItself(value);
    if (laterKind(value, why) !== null) refuse({ code: 'newer-entries', line });
    if (why) refuse({ code: 'entry-wrong', line, id: idIn(value), why });
    const entry = value as Entry;
    see(seen, entry);
    if (line % 500 === 0) tell({ stage: 'checking-entries', done: line, of: Math.max(1, lines) });
  }
  if (line !== lines) refuse({ code: 'part-differs', name: names.entries });
}

const idIn = (value: unknown): string | null => {
  const id = (value as { readonly id?: unknown } | null)?.id;
  return typeof id === 'string' ? id.slice(0, 64) : null;
};

/** What could not be read when the backup was made may be readable now: a later version knows more kinds of entries. */
function mendedIn({ bytes, lines }: Lines, seen: Seen): readonly Entry[] {
  const mended: Entry[] = [];
  let line = 0;
  for (const text of linesIn(names.damaged, bytes, mostTextBytes)) {
    line += 1;
    const read = canonicalValue(text);
    if (!('value' in read) || wrongInItself(read.value)) continue;
    const entry = read.value as Entry;
    see(seen, entry);
    mended.push(entry);
  }
  if (line !== lines) refuse({ code: 'part-differs', name: names.damaged });
  return mended;
}

/** The end of each chain is where the manifest says; behind it only what was damaged then and is readable now. */
function expectHeads({ heads }: Manifest, found: readonly Head[], mended: boolean): void {
  const ends = new Map(found.map((head) => [head.device, head]));
  const asSaid = heads.every(({ device, counter, hash }) => {
    const end = ends.get(device);
    return end && (end.counter === counter ? end.hash === hash : mended && end.counter > counter);
  });
  if (!asSaid || (!mended && heads.length !== found.length)) refuse({ code: 'heads-differ', found });
}

const inOrder = (a: Gap, b: Gap): number =>
  a.device === b.device ? a.from - b.from : a.device < b.device ? -1 : 1;

/** Those told do not lie over each other: of all that begin no later the last holds the whole of a gap. Both are gone through once. */
function expectGapsTold(told: readonly Gap[], gaps: readonly Gap[]): void {
  const sorted = told.toSorted(inOrder);
  let at = 0;
  for (const gap of gaps.toSorted(inOrder)) {
    for (let next = sorted[at + 1]; next && inOrder(next, gap) <= 0; next = sorted[at + 1]) at += 1;
    const one = sorted[at];
    if (one?.device !== gap.device || one.from > gap.from || gap.to > one.to)
      refuse({ code: 'entries-missing', ...gap });
  }
}

/** The chains hold, and nothing lacks, but for what the manifest says. */
function expectChains(manifest: Manifest, links: readonly Link[], mended: boolean): Chains {
  const chains = chainsOf(links);
  const { heads, gaps, breaks, second } = chains;
  if (second) refuse({ code: 'twice', id: second.id });
  expectHeads(manifest, heads, mended);
  expectGapsTold(manifest.gaps, gaps);
  // What was mended may not fit what stands beside it: then that one broke the chain before.
  if (mended) return chains;
  const breaksTold = new Set(manifest.breaks.map(({ device, counter }) => `${device}/${counter}`));
  for (const { device, counter } of breaks)
    if (!breaksTold.has(`${device}/${counter}`)) refuse({ code: 'chain-broken', device, counter });
  return chains;
}

async function checkFiles(
  files: readonly BackupFile[],
  read: (file: BackupFile) => Promise<Uint8Array>,
  tell: TellBackup,
): Promise<void> {
  let done = 0;
  for (const file of files) {
    if (keptType(await read(file)) !== file.type)
      refuse({ code: 'file-of-another-kind', name: nameOf(file) });
    done += 1;
    tell({ stage: 'checking-files', done, of: files.length });
  }
}

function* entriesIn(text: Uint8Array, mended: readonly Entry[]): Generator<Entry> {
  for (const line of linesIn(names.entries, text)) yield JSON.parse(line) as Entry;
  yield* mended;
}

async function checked(file: Blob, tell: TellBackup): Promise<Backup> {
  if (!(await beginsAsZip(file))) refuse({ code: 'not-a-backup' });
  if (file.size > mostArchiveBytes) refuse({ code: 'too-large', what: 'archive', most: mostArchiveBytes });
  const directory = await directoryOf(file);
  const manifest = await manifestIn(file, directory);
  expectFiles(directory, manifest);
  await expectSeal(file, directory, tell);
  await unpack(file, inside(directory, names.readMe), mostManifestBytes, manifest.readMe.sha256);
  const seen: Seen = { links: [], ids: new Set(), named: new Set() };
  const entries = await linesOf(file, directory, names.entries, manifest.entries);
  checkEntries(entries, seen, tell);
  const damaged = manifest.damaged && (await linesOf(file, directory, names.damaged, manifest.damaged));
  const mended = damaged ? mendedIn(damaged, seen) : [];
  const { heads, gaps, breaks } = expectChains(manifest, seen.links, mended.length > 0);
  const read = (wanted: BackupFile): Promise<Uint8Array<ArrayBuffer>> =>
    unpack(file, inside(directory, nameOf(wanted)), mostFileBytes, wanted.sha256);
  await checkFiles(manifest.files, read, tell);
  const there = new Set(manifest.files.map(({ sha256: hash }) => hash));
  return {
    manifest,
    entries: () => entriesIn(entries.bytes, mended),
    links: seen.links,
    heads,
    gaps,
    breaks,
    damaged: (damaged?.lines ?? 0) - mended.length,
    without: manifest.v === 2 ? manifest.without : [],
    files: manifest.files,
    file: read,
    filesMissing: [...seen.named].filter((hash) => !there.has(hash)),
  };
}

/** What engines say when there is no room for an array or a text. */
const noRoom = /allocation|array length|string length|out of memory|too large/i;

function refusalOf(error: unknown): BackupRefusal {
  if (error instanceof NotTaken) return error.refusal;
  if (error instanceof RangeError && noRoom.test(error.message)) return { code: 'no-room' };
  // A file that went away, or a card that was pulled out.
  if (error instanceof DOMException) return { code: 'not-handed-over' };
  throw error;
}

/**
 * @param passphrase where the file is locked with one
 * @returns all of it checked, or why it is not taken; the same file gives the same answer
 */
export async function readBackup(
  given: Blob | Uint8Array<ArrayBuffer>,
  passphrase?: string,
  tell: TellBackup = untold,
): Promise<BackupRead> {
  const file = given instanceof Blob ? given : new Blob([given]);
  try {
    if (file.size === 0) return refuse({ code: 'empty' });
    if (await isLocked(file)) {
      await expectPassphrase(file);
      if (passphrase === undefined) return refuse({ code: 'passphrase-needed' });
      return { ok: true, backup: await checked(await unlock(file, passphrase, tell), tell) };
    }
    return { ok: true, backup: await checked(file, tell) };
  } catch (error) {
    return { ok: false, refusal: refusalOf(error) };
  }
}
