/** Words of a record that is not whole, and of keeping one. */
import Decimal from 'decimal.js';
import type { Wrong } from '../../ledger/verify';
import { formatNumber } from '../../quantities/format';
import type { Installing } from '../../storage/installing';
import type { Persistence, Room } from '../../storage/persist';
import { countText } from '../amounts';

const entries = (count: number): string => (count === 1 ? '1 entry' : `${countText(count)} entries`);

export const notWholeWords = {
  /** On every page, while anything is wrong. */
  strip: 'The record is not whole',
  stripGone: 'The record is gone',
  stripSecond: 'Nothing is written into it. Tap: what is wrong, and what to do.',
  stripSecondAtWork: 'Nothing is written into it. Under Record stands what is wrong, and what to do.',
  outdated: 'The record was changed in another window',
  outdatedSecond:
    'A backup was brought in, or what is lost was given up. This page does not know it yet, and writes nothing. What you typed stays.',
  loadAnew: 'Load it anew',
  notKept: 'What you type is not kept over a reload',
  notKeptSecond:
    'This browser blocks the place for it, or it is full. Finish this form before you leave the page.',
  elsewhere: {
    typed: 'This form is open in another window',
    dropped: 'This form was finished in another window',
  },
  elsewhereSecond: {
    typed: 'Something else was typed there. What is typed last, here or there, is what stays over a reload.',
    dropped: 'It was written down there, or begun again. Look there before you keep it here as well.',
  },
  takeOver: { typed: 'Show what stands there', dropped: 'Empty it here' },
  goneTitle: 'The record is gone',
  title: 'The record is not whole',
  laterTitle: 'A newer Leesbook wrote here',
  wholeTitle: 'Nothing is wrong with the record',
  wholeSecond: 'As far as it was looked at.',
  kept: 'What is there is kept as it is. Nothing is written until you decide. What you typed into a form stays there.',
  markerTitle: 'What is known of it',
  markerHad: (count: number, when: string | null) =>
    `It had ${entries(count)}${when === null ? '' : `, the last written ${when}`}`,
  markerSecond: 'By the marker that is kept apart from it.',
  markerUnreadable: 'How many entries it had is not known',
  markerUnreadableSecond: 'The marker beside it cannot be read any more.',
  backup: (when: string, count: number) => `Last backup ${when}, with ${entries(count)}`,
  backupSince: (count: number) =>
    `${entries(count)} after it ${count === 1 ? 'is' : 'are'} in no backup noted here.`,
  backupAll: 'Nothing was written after it.',
  noBackup: 'No backup was noted on this phone',
  noBackupSecond: 'One may lie elsewhere: on a computer, in a mail, on another phone.',
  wrongTitle: 'What is wrong',
  gone: 'No entry is there any more',
  goneSecond: 'The browser lost or cleared its database. This app did not.',
  shorter: (count: number) => `${entries(count)} at the end ${count === 1 ? 'is' : 'are'} missing`,
  shorterSecond: 'At the least. The record goes less far than the marker tells.',
  another: 'The last entry is not the one that was written',
  anotherSecond: 'Another stands in its place.',
  head: 'Where this phone left off is not known',
  headSecond: {
    missing: 'The note of its last entry is missing.',
    'not-its-last-entry': 'The note of its last entry and the entries do not fit.',
  },
  missing: (count: number, before: string) =>
    `${entries(count)} before ${before} ${count === 1 ? 'is' : 'are'} missing`,
  missingSecond: 'What stands behind them is as it was written.',
  damaged: (entry: string) => `${entry} is damaged`,
  why: {
    schema: 'It does not have the shape of an entry.',
    'hash-differs': 'Its own hash does not fit what it says.',
    'counter-gap': 'Entries before it are missing.',
    'previous-does-not-match': 'It does not follow the entry before it.',
  } satisfies Record<Wrong['code'], string>,
  more: (count: number) => `And ${countText(count)} more`,
  later: (count: number) => `${entries(count)} of a newer Leesbook`,
  laterSecond:
    'Nothing is lost. Go online and open Leesbook again, then take the new version: it can read them.',
  restore: 'Restore a backup',
  restoreSecond: 'Shows first what it would do',
  takeOut: 'Take out what is here',
  takeOutSecond: 'A file with all that is left',
  goOn: 'Go on as it is',
  goOnSecond: 'With what can still be read, damaged or not; without what is missing',
  begin: 'Begin a new record',
  beginSecond: 'When no backup can be found',
  withoutHeading: 'The record goes on as it is',
  withoutRestoreSecond: 'A backup that turns up later can bring it back',
  withoutTitle: 'Lost or damaged',
  withoutSecond: 'Somebody decided to go on all the same. It stays here until a backup brings it back.',
  doubtTitle: 'Figures may rest on a damaged entry',
  doubtSecond:
    'Somebody decided to go on with what can be read of it. Tap: which, and what can bring it back.',
  doubt: 'What can be read of a damaged entry is in the figures. They may be wrong by it.',
  without: {
    record: (count: number | null) =>
      count === null ? 'A whole record of unknown length' : `A whole record of ${entries(count)}`,
    lost: (count: number) =>
      count === 0
        ? 'The last entry, as it was'
        : `${entries(count)} that ${count === 1 ? 'was' : 'were'} lost`,
    missing: (count: number) => `${entries(count)} that ${count === 1 ? 'is' : 'are'} missing`,
    entry: (at: number | null) => (at === null ? 'An entry that is damaged' : `Entry ${at}, damaged`),
    head: 'The note of the last entry of this phone',
  },
  historyLacksSecond: 'Somebody decided to go on without. Tap: what is known of it.',
  historyLacks: (first: string, more: number) =>
    more === 0 ? `Not all is here: ${first}` : `Not all is here: ${first}, and ${more} more`,
  withoutWhen: (when: string) => `Decided ${when}`,
} as const;

export const goOnWords = {
  goOnTitle: 'Go on with the record as it is?',
  beginTitle: 'Begin a new record?',
  given: 'What comes of it',
  record: (count: number) =>
    `${count === 1 ? 'The one entry' : `All ${countText(count)} entries`} of the record before, and every photo in it.`,
  recordUnknown: 'All entries of the record before, and every photo in it.',
  recordMeans:
    'The new record knows of no container, no batch and no proof of what left. What stands on the shelf must be entered again, as found.',
  lost: (count: number) =>
    count === 0
      ? 'The last entry, as it was written.'
      : `${count === 1 ? 'The entry' : `At the least ${entries(count)}`} at the end. A container may hold more, or less, than the record then says.`,
  missing: (count: number) =>
    `${count === 1 ? 'One entry' : entries(count)} missing between others. A container may hold more, or less, than the record then says.`,
  counted: (count: number) =>
    `${count === 1 ? 'One damaged entry counts in the figures as it stands now' : `${countText(count)} damaged entries count in the figures as they stand now`}, and nobody knows what was changed in ${count === 1 ? 'it' : 'them'}. A figure may be wrong by it.`,
  leftOut: (count: number) =>
    `${count === 1 ? 'One damaged entry that cannot be read is' : `${countText(count)} damaged entries that cannot be read are`} left out of every figure. A container may hold more, or less, than the record then says.`,
  untold: (count: number) =>
    `${count === 1 ? 'One more is damaged and is' : `${countText(count)} more are damaged and are`} not given up with this: the next look at the record names ${count === 1 ? 'it' : 'them'}, and it stays unwritten again until you decide.`,
  head: 'The end of the chain of this phone. It goes on as a new device, so that what was lost may still come back from a backup.',
  stays:
    'Nothing is deleted. A backup that turns up later can still be restored into it. What was given up stays noted until it comes back.',
  first: 'First look for a backup: on a computer, in a mail, on another phone.',
  no: 'No, back to what can be done',
  read: 'I have read what comes of it',
  sureTitle: 'It is written down for ever',
  sure: 'From now on the record counts from here.',
  goOn: 'Go on as it is',
  begin: 'Begin a new record',
  nothing: 'There is nothing to decide.',
} as const;

const megabytes = (count: number | null): string => `${formatNumber(new Decimal(count ?? 0), 0)}\u202fMB`;

export const keepingWords = {
  title: 'Keeping the record',
  second: 'It lies on this phone only. What helps it to stay there.',
  keeping: {
    kept: 'Kept on this phone',
    'asked-in-vain': 'The browser may throw the record away',
    'cannot-ask': 'The browser does not say whether it keeps the record',
    unknown: 'Kept on this phone?',
  } satisfies Record<Persistence | 'unknown', string>,
  keepingSecond: {
    kept: 'The browser has promised not to clear it when space runs short.',
    'asked-in-vain': 'When the phone is full. Put Leesbook on the home screen, then ask again.',
    'cannot-ask': 'Put Leesbook on the home screen; do not clear this browser.',
    unknown: 'Asking the browser',
  } satisfies Record<Persistence | 'unknown', string>,
  ask: 'Ask the browser to keep it',
  /** On Today, once something is worth keeping: the browser may then put its own question. */
  askSecond:
    'There is something in it now. When the phone is full, a browser clears what it has not promised to keep. It may ask you first.',
  spaceTitle: 'Room',
  space: {
    enough: (left) => `About ${megabytes(left)} are left`,
    little: (left) => `Little room: about ${megabytes(left)} are left`,
    'hardly-any': (left) => `Hardly any room: about ${megabytes(left)} are left`,
    full: () => 'The phone was full at the last try',
    'not-told': () => 'How much room is left, the browser does not say',
  } satisfies Record<Room, (left: number | null) => string>,
  spaceSecond: (used: number) => `Leesbook takes about ${megabytes(used)}, app and record together.`,
  spaceToday: 'Photos need it most. Tap: how to make room.',
  spaceUnknown: 'Nor what Leesbook takes.',
  estimate:
    'By the browser’s own word, for this app alone; some browsers name no true figure. When no room is left nothing is written, and the form says so and stays as it is.',
  makeRoom: [
    'Make a backup first, and keep it off this phone.',
    'Photos take most: some 0.3\u202fMB each. An entry takes next to nothing: as long as any room is left, keep writing, and leave out photos that nobody needs.',
    'Delete pictures, films and apps that the phone can spare. Never clear the data of this browser.',
  ],
  installTitle: 'On the home screen',
  install: {
    installed: { title: 'Leesbook is on the home screen', second: 'A browser keeps what is there longest.' },
    'clears-unused': {
      title: 'This browser clears what is not used',
      second:
        'After seven days of browsing without a tap here, the record too. Put Leesbook on the home screen.',
    },
    offers: { title: 'Install Leesbook', second: 'It then has an icon, and the browser keeps it longer.' },
    'by-menu': { title: 'On the home screen', second: 'How it comes there, and why' },
  } satisfies Record<Installing, { readonly title: string; readonly second: string }>,
  installNow: 'Install it now',
  clears:
    'This browser deletes all that a page has kept, after seven days of browsing without a tap on that page. What is on the home screen is spared.',
  toHomeScreen: [
    'Tap Share, the square with an arrow, below or above the page.',
    'Choose “Add to Home Screen”, then “Add”.',
    'From now on open Leesbook from the home screen only.',
  ],
  toDock: ['In the menu File choose “Add to Dock”.', 'From now on open Leesbook from the dock only.'],
  beginsEmpty:
    'There it begins empty: it does not see what this browser holds. Make a backup here first, and restore it there.',
  byMenu:
    'Open the menu of the browser and choose “Install” or “Add to Home screen”, where it has one. A browser keeps longest what is there, and is readier to promise it.',
  backup: 'A backup',
  backupSecond: 'What no promise of a browser replaces',
  noticeTitle: 'If the record is lost or damaged',
  notice:
    'A small marker is kept apart from the record: how many entries it has and how they end. If the record is gone, shorter or damaged, Leesbook says so, begins nothing over it, and offers to restore a backup.',
  noticeNot:
    'Both lie in this browser. Whoever clears all its data takes the marker along: then nobody can tell that there was a record. Only a backup elsewhere outlives that.',
  markerBlocked: 'The marker of the record is not kept',
  markerBlockedSecond:
    'This browser blocks the place where it would lie. A record that vanishes would not be missed: make backups.',
  photoRoom: {
    little: (left: number | null) =>
      `Little room is left, about ${megabytes(left)}. A photo takes some 0.3\u202fMB.`,
    'hardly-any': (left: number | null) =>
      `Hardly any room is left, about ${megabytes(left)}. A photo may not fit; what you write needs next to nothing.`,
    full: () => 'The phone was full at the last try. Make room before you take a photo.',
  },
} as const;
