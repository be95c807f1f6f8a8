/**
 * What bringing a backup into the record on this device would do, entry by entry, before anything is done. The same for an empty
 * record, a damaged one, and one that another device has gone on with: entries are a set that only grows, so that joining
 * is adding what is not there. Nothing is written here.
 */
import { chainsOf, type Gap, gapLength, type Link, linkOf } from '../../ledger/chains';
import { type CodeTwice, codesTwice, isOfCodes } from '../../ledger/codes-twice';
import type { Entry } from '../../ledger/entries/entry';
import { compareEntries } from '../../ledger/order';
import { type Head, laterKind, wrongInItself } from '../../ledger/verify';
import type { RecordName } from '../database';
import { done, failed, failureOf, type StoreResult } from '../failure';
import type { BackupFile } from './manifest';
import { type TellBackup, untold } from './progress';
import type { Backup } from './read-backup';
import { entriesThere, fileHashesThere, fileThere, openWhatIsThere } from './what-is-there';

/**
 * Two entries that cannot both be true, each whole in itself: under one id, at one place of a device's chain, or one that does not
 * go on from the one that is here. Somebody changed one of them, or two phones wrote as one device.
 */
export type Conflict = {
  readonly why: 'same-id' | 'same-place' | 'does-not-follow';
  readonly id: string;
  readonly device: string;
  readonly counter: number;
};

export type Lacks = {
  readonly gaps: readonly Gap[];
  /** Entries that do not name the one before them, which therefore was changed or is not the one that was written. */
  readonly unfit: readonly Link[];
};

/** Entries, at the least. */
export const lackingIn = ({ gaps, unfit }: Lacks): number =>
  gaps.reduce((sum, gap) => sum + gapLength(gap), unfit.length);

export type RestorePlan = {
  /** Of another record than the one that is open: the invented workshop, or the real one. */
  readonly otherRecord: boolean;
  /** Entries here before. */
  readonly here: number;
  readonly fresh: number;
  readonly alreadyHere: number;
  /** Damaged here and whole in the backup: that one takes its place. */
  readonly mended: number;
  readonly conflicts: readonly Conflict[];
  /** Of things here and things in the backup: both stay, and one of the codes has to be corrected. */
  readonly codesTwice: readonly CodeTwice[];
  /** What the backup lacks in its middle and nothing here has: the record would go on without it. */
  readonly lacks: Lacks;
  readonly files: { readonly fresh: number; readonly alreadyHere: number; readonly mended: number };
};

/** The plan, and by name what it is made of. */
export type Planned = {
  readonly plan: RestorePlan;
  /** The ends of the chains after it. */
  readonly heads: readonly Head[];
  /** Ids of entries of the backup to add. */
  readonly add: ReadonlySet<string>;
  /** Keys of damaged entries here that give way. */
  readonly giveWay: readonly string[];
  /** Something comes in before what is here of its device: pages that are open would not look for it there. */
  readonly isBehind: boolean;
  /** Files to write, of which these lie here already, damaged. */
  readonly files: readonly BackupFile[];
  readonly filesMended: ReadonlySet<string>;
};

const placeText = (device: unknown, counter: unknown): string => `${String(device)}/${String(counter)}`;
const placeOf = ({ device, counter }: Link): string => placeText(device, counter);

type Raw = Partial<Entry> & { readonly id: string };

/** What is on the device, as far as the backup touches on it. */
type Here = {
  readonly byPlace: Map<string, Link>;
  readonly alreadyHere: Set<string>;
  readonly giveWay: Map<string, Link>;
  readonly clashes: { readonly why: Conflict['why']; readonly own: Link; readonly theirs: Link }[];
  /** Those that give codes, or change what does. */
  readonly ofCodes: Entry[];
  count: number;
};

type Theirs = { readonly byId: ReadonlyMap<string, Link>; readonly byPlace: ReadonlyMap<string, Link> };

const theirsIn = ({ links }: Backup): Theirs => ({
  byId: new Map(links.map((link) => [link.id, link])),
  byPlace: new Map(links.map((link) => [placeOf(link), link])),
});

/** Of a later version it is whole, though nobody here knows what it says. */
function isDamaged(raw: Raw): boolean {
  const wrong = wrongInItself(raw);
  return wrong !== null && laterKind(raw, wrong) === null;
}

const isOfCodesHere = (raw: Raw): raw is Entry => isOfCodes(raw) && wrongInItself(raw) === null;

function meet(raw: Raw, theirs: Theirs, here: Here): void {
  here.count += 1;
  if (isOfCodesHere(raw)) here.ofCodes.push(raw);
  const sameId = theirs.byId.get(raw.id);
  const samePlace = theirs.byPlace.get(placeText(raw.device, raw.counter));
  const met = sameId ?? samePlace;
  if (met && isDamaged(raw)) {
    here.giveWay.set(raw.id, met);
    return;
  }
  if (met && sameId?.hash !== raw.hash)
    here.clashes.push({ why: sameId ? 'same-id' : 'same-place', own: linkOf(raw as Entry), theirs: met });
  else if (sameId) here.alreadyHere.add(raw.id);
  if (typeof raw.hash === 'string')
    here.byPlace.set(placeText(raw.device, raw.counter), linkOf(raw as Entry));
}

/**
 * Of two entries at one place the one counts that the next entry here names as the one before it: what stands here then was
 * changed and sealed anew.
 */
function vouchedFor({ own, theirs }: Here['clashes'][number], here: Here): boolean {
  const next = here.byPlace.get(placeText(own.device, own.counter + 1));
  return placeOf(own) === placeOf(theirs) && next?.previous === theirs.hash;
}

const conflictAt = (why: Conflict['why'], { id, device, counter }: Link): Conflict => ({
  why,
  id,
  device,
  counter,
});

/** Entries that would be added beside one that is here, and that do not hold together with it. */
function notFollowing(added: readonly Link[], here: Here, backup: Backup): readonly Conflict[] {
  const known = new Set(backup.breaks.map(({ device, counter }) => placeText(device, counter)));
  return added.flatMap((link) => {
    const before = here.byPlace.get(placeText(link.device, link.counter - 1));
    const after = here.byPlace.get(placeText(link.device, link.counter + 1));
    const broken =
      (before && before.hash !== link.previous && !known.has(placeOf(link))) ||
      (after && after.previous !== link.hash && !known.has(placeOf(after)));
    return broken ? [conflictAt('does-not-follow', link)] : [];
  });
}

/** Only where what would be brought in stands behind it: what lacks here already is told without any backup. */
function lacksAfter(added: readonly Link[], here: Here): Lacks {
  const brought = new Map(added.map((link) => [placeOf(link), link]));
  const { gaps, breaks } = chainsOf(new Map([...here.byPlace, ...brought]).values());
  return {
    gaps: gaps.filter(({ device, to }) => brought.has(placeText(device, to + 1))),
    unfit: breaks.flatMap(({ device, counter }) => brought.get(placeText(device, counter)) ?? []),
  };
}

function isBehind(added: readonly Link[], { byPlace }: Here): boolean {
  const ends = new Map<string, number>();
  for (const { device, counter } of byPlace.values())
    ends.set(device, Math.max(counter, ends.get(device) ?? 0));
  return added.some(({ device, counter }) => counter < (ends.get(device) ?? 0));
}

/** What is twice here already is told without any backup. */
function codesTwiceAfter(here: Here, backup: Backup, add: ReadonlySet<string>): readonly CodeTwice[] {
  if (here.ofCodes.length === 0) return [];
  const all = [...here.ofCodes];
  for (const entry of backup.entries()) if (add.has(entry.id) && isOfCodes(entry)) all.push(entry);
  const before = codesTwice(here.ofCodes.toSorted(compareEntries));
  const after = codesTwice(all.sort(compareEntries));
  return [...after].flatMap(([key, one]) => (before.has(key) ? [] : one));
}

async function filesFor(
  database: Parameters<typeof fileThere>[0] | null,
  backup: Backup,
  tell: TellBackup,
): Promise<Pick<Planned, 'files' | 'filesMended'>> {
  const there = database ? await fileHashesThere(database) : new Set<string>();
  const files: BackupFile[] = [];
  const filesMended = new Set<string>();
  for (const [at, file] of backup.files.entries()) {
    tell({ stage: 'comparing-files', done: at, of: backup.files.length });
    const isThere = there.has(file.sha256);
    if (database && isThere && (await fileThere(database, file.sha256))) continue;
    if (isThere) filesMended.add(file.sha256);
    files.push(file);
  }
  return { files, filesMended };
}

async function planned(
  database: Parameters<typeof fileThere>[0] | null,
  record: RecordName,
  backup: Backup,
  tell: TellBackup,
): Promise<Planned> {
  const theirs = theirsIn(backup);
  const here: Here = {
    byPlace: new Map(),
    alreadyHere: new Set(),
    giveWay: new Map(),
    clashes: [],
    ofCodes: [],
    count: 0,
  };
  if (database) {
    const of = Math.max(1, await database.count('entries'));
    for await (const found of entriesThere(database, { unreadable: 0 })) {
      for (const raw of found) meet(raw as Raw, theirs, here);
      tell({ stage: 'comparing-entries', done: Math.min(here.count, of), of });
    }
  }
  const mendedByChain = here.clashes.filter((clash) => vouchedFor(clash, here));
  for (const { own, theirs: instead } of mendedByChain) {
    here.byPlace.delete(placeOf(own));
    here.giveWay.set(own.id, instead);
  }
  const mends = new Set([...here.giveWay.values()].map(({ id }) => id));
  const clashes = here.clashes.filter((clash) => !mendedByChain.includes(clash));
  const clashing = new Set(clashes.map(({ theirs: { id } }) => id));
  const added = backup.links.filter(({ id }) => !here.alreadyHere.has(id) && !clashing.has(id));
  const { files, filesMended } = await filesFor(database, backup, tell);
  const conflicts = [
    ...clashes.map(({ why, theirs: link }) => conflictAt(why, link)),
    ...notFollowing(added, here, backup),
  ];
  const add = new Set(added.map(({ id }) => id));
  const plan: RestorePlan = {
    otherRecord: backup.manifest.record !== record,
    here: here.count,
    fresh: added.length - mends.size,
    alreadyHere: here.alreadyHere.size,
    mended: mends.size,
    conflicts,
    codesTwice: codesTwiceAfter(here, backup, add),
    lacks: lacksAfter(added, here),
    files: {
      fresh: files.length - filesMended.size,
      alreadyHere: backup.files.length - files.length,
      mended: filesMended.size,
    },
  };
  return {
    plan,
    heads: chainsOf([...here.byPlace.values(), ...added]).heads,
    add,
    giveWay: [...here.giveWay.keys()],
    isBehind: here.giveWay.size > 0 || isBehind(added, here),
    files,
    filesMended,
  };
}

/** Where there is no record, everything is new. */
export async function planRestore(
  record: RecordName,
  backup: Backup,
  tell: TellBackup = untold,
): Promise<StoreResult<Planned>> {
  const opened = await openWhatIsThere(record);
  if (!opened.ok && opened.failure.code !== 'vanished') return opened;
  const database = opened.ok ? opened.value : null;
  try {
    return done(await planned(database, record, backup, tell));
  } catch (error) {
    return failed(failureOf(error));
  } finally {
    database?.close();
  }
}
