/** Words of backing up, restoring and joining. */

import { format } from 'date-fns';
import type { CodeTwice } from '../../ledger/codes-twice';
import type { WouldBeLost } from '../../ledger/would-be-lost';
import type { BackupStage } from '../../storage/backup/progress';
import type { BackupRefusal } from '../../storage/backup/refusal';
import { unbroken } from '../../ui/figure-value';
import { countText } from '../amounts';
import { failureWords } from '../words';
import type { Brought, WorkFailure } from './jobs';

const count = (n: number, one: string, many: string): string =>
  n === 1 ? `1 ${one}` : `${countText(n)} ${many}`;

export const entriesText = (n: number): string => (n === 1 ? '1 entry' : `${countText(n)} entries`);
export const filesText = (n: number): string => count(n, 'photo or file', 'photos and files');

/** Null where there is none of either. */
function told(entries: number, files: number, how: (some: string, one: boolean) => string): string | null {
  const some = [entries > 0 ? entriesText(entries) : '', files > 0 ? filesText(files) : ''].filter(Boolean);
  return some.length === 0 ? null : how(some.join(' and '), entries + files === 1);
}

export const backupWords = {
  beginning: 'Beginning …',
  stages: {
    locking: 'Locking it. Slow on purpose: it makes guessing slow, too.',
    unlocking: 'Unlocking it. Slow on purpose: it makes guessing slow, too.',
    reading: 'Reading the file',
    'checking-entries': 'Checking every entry',
    'checking-files': 'Checking every photo',
    'comparing-entries': 'Comparing with what is here',
    'comparing-files': 'Comparing photos with what is here',
    'packing-entries': 'Packing the entries',
    'packing-files': 'Packing the photos',
    'writing-files': 'Writing the photos',
    'writing-entries': 'Writing the entries, all of them or none',
  } satisfies Record<BackupStage, string>,
  stay: 'Keep this page open.',
  leave: 'Leave it',
  leaveMakeSecond: 'Nothing is lost; no backup is made',
  leaveRestoreSecond: 'Nothing here is changed',
} as const;

const sizeText = (bytes: number): string =>
  bytes < 1e6 ? `${Math.ceil(bytes / 1e3)} kB` : `${(bytes / 1e6).toFixed(1)} MB`;

const daysText = (n: number): string => count(n, 'day', 'days');

/** What lies on this phone only. */
export const lostWords = {
  title: ({ entries, presses }: WouldBeLost) =>
    presses === 'nothing' ? 'All of it is in a backup' : `${entriesText(entries)} on this phone only`,
  second: ({ presses, lastAt, files, days }: WouldBeLost): string => {
    const last =
      lastAt === null ? 'No backup was noted yet.' : `Last backup ${format(new Date(lastAt), 'd MMM yyyy')}.`;
    if (presses === 'nothing') return last;
    const more = files !== null && files > 0 ? ` and ${filesText(files)}` : '';
    const since = days > 0 ? `, the oldest ${daysText(days)} old` : '';
    return `Lost with it${more === '' ? '' : `: these${more}`}${since}. ${last}`;
  },
  unknown: 'Back up the record',
  unknownSecond: 'All entries and photos in one file',
  restore: 'Restore or join',
  restoreSecond: 'Bring in a backup, of this phone or of another',
} as const;

export const makeWords = {
  title: 'Back up the record',
  second: 'All entries and photos in one file',
  what: 'The file is a zip archive with every entry as text, every photo, and a list of hashes that shows whether all of it is as it was. Leesbook restores it; other programs open it too.',
  who: 'Who can open the file?',
  plain: 'Anybody who has it',
  plainSecond: 'Names, addresses and photos lie in it as they are.',
  locked: 'Only who knows a passphrase',
  lockedSecond: 'Without it the file shows nothing. Nobody can recover a forgotten one.',
  passphrase: 'Passphrase',
  passphraseHint:
    'Several plain words are easy to type and hard to guess. Write them down, and keep them apart from the file.',
  passphraseShort:
    'One that short is soon found by trying: a few letters in seconds. Four or more words that do not belong together are enough. It is taken all the same.',
  again: 'Passphrase once more',
  missing: 'Type a passphrase.',
  differs: 'The two are not the same. Show them, and look.',
  show: 'Show what I type',
  choose: 'Say who can open it.',
  make: 'Make the backup',
  making: 'Making the backup …',
  empty: 'Nothing is written down yet.',
  madeTitle: 'The backup is made',
  madeSecond: 'It is in no place yet where it is kept.',
  holds: (entries: number, files: number, lacks: boolean) =>
    `It holds ${entriesText(entries)}${files > 0 ? ` and ${filesText(files)}` : ''}. It was read again and is ${lacks ? 'as it was made' : 'whole'}.`,
  lacks: (n: number) => `${entriesText(n)} that the record lacks ${n === 1 ? 'is' : 'are'} not in it either.`,
  without: 'What the record goes on without is not in it either; that it lacks stays noted in it.',
  damaged: (n: number) =>
    `${entriesText(n)} could not be read or did not fit the hash: ${n === 1 ? 'it lies' : 'they lie'} in it as found, in damaged.ndjson.`,
  unreadable: (n: number) => `${entriesText(n)} the browser could not give any more: not in it.`,
  filesMissing: (n: number) =>
    `${filesText(n)} that entries name ${n === 1 ? 'is' : 'are'} not on this phone, or damaged: not in it.`,
  isLocked: 'Locked with the passphrase you typed. Other programs open it by the age format.',
  isPlain: 'Not locked: whoever gets the file can read it.',
  save: 'Save it',
  saveSecond: 'Best to a place outside this phone: a card, a computer, a mail to yourself',
  saved: (name: string) => `Saved as ${name}`,
  savedSecond: 'The file was read again where it lies now: as long as it was made.',
  notSaved: 'It was not saved. Choose another place, or share it.',
  asked: 'Is it where you want it?',
  askedSecond: 'The browser cannot tell whether a file was saved or sent. Look, and say so.',
  yes: 'Yes, it is there',
  no: 'No, once more',
  noted: 'Noted: from now on this backup counts.',
  notNoted: 'The file is kept, but this browser does not let Leesbook note it. The reminder stays.',
  fileName: (bytes: number) => `Name of the file, ${sizeText(bytes)}`,
  toRecord: 'Record',
} as const;

export const restoreWords = {
  title: 'Restore or join',
  second: 'Bring in entries and photos of a backup',
  what: 'Choose a backup of this workshop, of this phone or of another. All of it is checked, and you see what it would do. Nothing is changed before you say so.',
  joins:
    'What is here stays. A backup only adds what is missing, so the records of two phones become one: make a backup on each, and bring it into the other.',
  choose: 'Choose a backup',
  another: 'Choose another file',
  lockedTitle: 'The file is locked',
  lockedWhat: 'It opens with the passphrase that was typed when it was made. Nobody can open it without.',
  passphrase: 'Passphrase',
  show: 'Show what I type',
  unlock: 'Open it',
  reading: 'Reading the backup …',
  refused: 'Not taken. Nothing here was changed.',
  foundTitle: 'The backup is whole',
  lackingTitle: 'The file is as it was made',
  of: (workshop: string | null) => workshop ?? 'A record without a workshop',
  madeAt: (when: string, version: string) => `Made ${when}, by version ${version}`,
  holds: (entries: number, files: number) =>
    files > 0 ? `${entriesText(entries)}, ${filesText(files)}` : entriesText(entries),
  newest: (when: string) => `The last was written ${when}.`,
  ahead: 'Its last entry is written later than now',
  aheadSecond:
    'The clock of this phone or of the one that wrote it is wrong. Set it right first if it is this one.',
  damaged: (n: number) => `${entriesText(n)} of it ${n === 1 ? 'was' : 'were'} damaged when it was made`,
  damagedSecond: 'They stay in the file and are not brought in.',
  missing: (n: number) => `${entriesText(n)} ${n === 1 ? 'was' : 'were'} missing when it was made`,
  missingSecond: 'Another backup may have them.',
  filesMissing: (n: number) => `${filesText(n)} not in it`,
  filesMissingSecond: 'They were not on the phone that made it.',
  wentOnWithout: (what: string) => `Made of a record that goes on without: ${what}`,
  wentOnSince: (when: string) => `Decided ${when}, where it was made. It stays noted here as well.`,
  moreWithout: (n: number) => `And without ${n} more`,
  codeTwice: {
    container: (code: string) => `Two containers would be ${unbroken(code)}`,
    batch: (code: string) => `Two batches would be ${unbroken(code)}`,
  } satisfies Record<CodeTwice['is'], (code: string) => string>,
  codeTwiceSecond:
    'One here and one in the backup. Both stay as they are. Correct one of the codes afterwards, and its label.',
  moreCodesTwice: (n: number) => `And ${countText(n)} more codes are used twice`,
  lacks: (n: number) => `The record would go on without ${entriesText(n)}`,
  lacksSecond:
    'Lost or damaged in the backup, and not here either. A container may hold more, or less, than the record then says. Another backup may still bring it.',
  lacksSure: 'I know what lacks, and go on without it',
  would: 'What it would do',
  fresh: (n: number) => `${entriesText(n)} would come in`,
  mended: (n: number) => `${entriesText(n)} damaged here would be mended`,
  alreadyHere: (n: number) => `${entriesText(n)} of it ${n === 1 ? 'is' : 'are'} here already`,
  stays: (n: number) =>
    `${entriesText(n)} here ${n === 1 ? 'stays' : 'stay'} as ${n === 1 ? 'it is' : 'they are'}`,
  files: (n: number) => `${filesText(n)} would come in`,
  filesMended: (n: number) => `${filesText(n)} damaged here would be mended`,
  nothing: 'Nothing in it is new: all of it is here already.',
  short: (n: number) =>
    `This phone has held ${n} ${n === 1 ? 'entry' : 'entries'} more than would then be here`,
  shortSecond:
    'By the marker beside the record, at the least. Afterwards the app asks whether to go on without; until then nothing is written.',
  newName: 'This phone goes on as a device of its own',
  newNameSecond: 'So that the old one, should it be found, can be joined as well.',
  stranger: 'Nothing in it is also here',
  strangerSecond: (theirs: string | null, ours: string | null) =>
    `It may be another workshop’s${theirs !== null && ours !== null && theirs !== ours ? `: “${theirs}”, not “${ours}”` : ''}. What is joined cannot be taken apart again.`,
  strangerSure: 'I know: the two belong together',
  conflicts: 'It does not go with this record',
  conflictsSecond:
    'Two entries claim to be the same one. Somebody changed one of them, or two phones wrote as one. Nothing can be brought in; keep both files, and ask whoever looks after this app.',
  conflict: {
    'same-id': 'Same id, another content',
    'same-place': 'Same place in the chain of a device',
    'does-not-follow': 'Does not follow the entry here',
  },
  otherRecord: { real: 'It is of a real record', demo: 'It is of the invented workshop' },
  otherRecordSecond: {
    real: 'Leave the invented workshop first, then restore it.',
    demo: 'Open the invented workshop first, then restore it there.',
  },
  restore: 'Restore it',
  join: 'Join it to the record',
  bringing: 'Bringing it in …',
  notUndone: 'Once it is written it cannot be left any more.',
  doneTitle: 'It is brought in',
  came: (entries: number, files: number) =>
    told(entries, files, (some, one) => `${some} came in and ${one ? 'is' : 'are'} on the disk.`),
  wereMended: (entries: number, files: number) =>
    told(
      entries,
      files,
      (some, one) => `${some} ${one ? 'was' : 'were'} damaged and ${one ? 'is' : 'are'} mended.`,
    ),
  doneWithout: 'What the record goes on without stands under Record.',
  doneShort: (n: number) =>
    `${entriesText(n)} that this phone has held ${n === 1 ? 'is' : 'are'} still missing. Nothing is written until you have decided whether to go on without.`,
  openShort: 'See what is missing',
  open: 'Open the record',
} as const;

const notLoaded =
  'A part of Leesbook that works on backups is not on this phone yet. Open Leesbook once with a network, then try again.';

/** Null for what the person chose. */
export function workFailureWords(failure: Exclude<Brought, { ok: true }>['failure']): string | null {
  switch (failure.code) {
    case 'cancelled':
      return null;
    case 'not-loaded':
      return notLoaded;
    case 'broken':
      return `It ended in the middle (${failure.name}). Nothing here was changed. Try again, after closing other apps.`;
    case 'changed-meanwhile':
      return 'Something was written here in the meantime. Nothing was brought in. Choose the file again.';
    case 'file-changed':
      return 'The file is not there any more, or not as it was when it was looked at. Nothing was brought in. Copy it onto the phone again, then choose it.';
    case 'disk-full':
      return 'The phone is full. Nothing here was changed. Delete pictures, films and apps that it can spare, then try again.';
    case 'conflicts':
    case 'nothing-looked-at':
      return 'Choose the file again.';
    case 'vanished':
      return 'There is no record on this phone to back up.';
    default:
      return failureWords(failure as Exclude<WorkFailure, { code: 'cancelled' | 'not-loaded' | 'broken' }>);
  }
}

/** Names come out of a file that anybody may have made up: shortened, and shown as text. */
const shown = (name: string): string => (name.length > 60 ? `${name.slice(0, 60)}…` : name);

const damagedFile = 'Copy it again from where it was kept, or choose an earlier backup.';

/** Why none was made, though the record was read. */
export function refusalOfMaking(refusal: BackupRefusal): string {
  switch (refusal.code) {
    case 'no-room':
      return 'This phone has not enough room to make it. The record is as it was. Close other apps, delete pictures and films that it can spare, then try again.';
    case 'too-large':
      return `The record is too large for one file (${shown(refusal.what)}). It is as it was.`;
    default:
      return `What was made could not be read again (${refusal.code}). No backup was made, and the record is as it was. Try once more.`;
  }
}

/** Why a file is not taken, and what to do. */
export function refusalOfFile(refusal: BackupRefusal): string {
  switch (refusal.code) {
    case 'empty':
      return 'The file is empty. It was probably not copied to its end. Copy it again.';
    case 'not-a-backup':
      return 'This is no backup: neither a zip archive nor a locked one. Choose the file that ends in .zip or .zip.age.';
    case 'another-archive':
      return 'This is a zip archive, but no backup of Leesbook. Choose another file.';
    case 'broken-archive':
      return `The archive is damaged or cut short (${shown(refusal.detail)}). ${damagedFile}`;
    case 'not-as-made':
      return `The file is not as it was made: something in it was changed or damaged. ${damagedFile}`;
    case 'packed-again':
      return 'The archive was packed again by another program, so nobody can say whether it is whole. Choose the file as Leesbook made it.';
    case 'too-large':
      return `Too much is in it (${shown(refusal.what)}): no record of a workshop is so large. Choose another file.`;
    case 'unexpected-file':
      return `Something is in it that does not belong there: ${shown(refusal.name)}. Choose the file as Leesbook made it.`;
    case 'missing-file':
      return `Something is missing in it: ${shown(refusal.name)}. ${damagedFile}`;
    case 'manifest-wrong':
      return `Its list of contents is not right (${shown(refusal.detail)}). ${damagedFile}`;
    case 'newer-version':
    case 'newer-entries':
      return 'It was made by a newer Leesbook. Take the new version of Leesbook first, then choose it again.';
    case 'part-differs':
      return `${shown(refusal.name)} does not fit its hash: it was changed or damaged. ${damagedFile}`;
    case 'line-unreadable':
      return `Line ${refusal.line} of ${shown(refusal.name)} cannot be read: ${refusal.detail}. ${damagedFile}`;
    case 'entry-wrong':
      return `The entry in line ${refusal.line} is not as it was written. ${damagedFile}`;
    case 'twice':
      return `Two entries claim the same place (${shown(refusal.id)}): somebody changed the file. ${damagedFile}`;
    case 'chain-broken':
      return `Entry ${refusal.counter} of a device does not follow the one before it: somebody changed the file. ${damagedFile}`;
    case 'entries-missing':
      return `Entries ${refusal.from} to ${refusal.to} of a device are missing: somebody took them out. ${damagedFile}`;
    case 'heads-differ':
      return `Its entries do not end where its list of contents says. ${damagedFile}`;
    case 'file-of-another-kind':
      return `${shown(refusal.name)} is no photo and no PDF. Choose another backup.`;
    case 'passphrase-needed':
      return 'It is locked. Type its passphrase.';
    case 'passphrase-wrong':
      return 'The passphrase does not open it. Look at capitals and blanks, and type it again. If it is surely right, the beginning of the file is damaged.';
    case 'lock-damaged':
      return `The file is locked, and the beginning of it is damaged or cut short: no passphrase opens it. ${damagedFile}`;
    case 'lock-too-strong':
      return 'Opening it takes more memory and time than a phone has. Unlock it on a computer with the program that locked it, then choose what comes out.';
    case 'locked-otherwise':
      return 'It is locked with a key, not with a passphrase. Unlock it with the program that made it, then choose what comes out.';
    case 'locked-part-damaged':
      return `The passphrase is right, but the file is damaged or cut short. ${damagedFile}`;
    case 'no-room':
      return 'This phone has not enough memory for it. Close other apps and try again, or open it on a computer.';
    case 'not-handed-over':
      return 'The phone did not hand over the file. Copy it onto the phone first, then choose it again.';
  }
}
