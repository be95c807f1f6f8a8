/** Words of checking the book: what is found, and what the hashes prove and do not prove. */
import type { Unsound } from '../../storage/soundness';
import { countText } from '../amounts';
import { wholeWords } from './words';

export const verifyWords = {
  title: 'Check the book',
  second: 'Every entry and photo, or against a paper; what that proves',
  check: 'Check every entry now',
  checkSecond: 'All that lies on this phone, read anew',
  checking: 'Checking',
  howFar: (done: string, of: string) => `${done} of ${of} entries and photos`,
  stop: 'Stop checking',
  stopped: 'Stopped. Nothing is said of the book.',
  whole: (entries: string) => (entries === '1' ? 'Whole: 1 entry' : `Whole: ${entries} entries`),
  wholeSecond:
    'Each is as it was written, none is missing, and each follows the one before it on its device.',
  empty: 'Nothing is written down yet',
  photos: (count: string) =>
    count === '1' ? '1 photo or file, as it was kept' : `${count} photos and files, as they were kept`,
  noPhotos: 'No photo or file is kept',
  photosElsewhere: (count: number) =>
    count === 1
      ? '1 photo or file that an entry names is not on this phone'
      : `${countText(count)} photos or files that entries name are not on this phone`,
  photosElsewhereSecond: 'They may lie on the device that wrote the entry, or in a backup.',
  heads: 'Where each device stands',
  headsSecond:
    'The last hash stands for all entries before it. Note it somewhere else: a paper that is handed over bears one.',
  head: (device: string, count: string) => `${device}: ${count} written`,
  thisDevice: 'This phone',
  notWhole: (count: number) => (count === 1 ? '1 thing is wrong' : `${countText(count)} things are wrong`),
  notWholeSecond: wholeWords.wrongSecond,
  moreWrong: (count: number) => `and ${countText(count)} more`,
  wrongEntry: (counter: number | null, device: string) =>
    counter === null ? `An entry of ${device}` : `Entry ${countText(counter)} of ${device}`,
  headWhy: {
    missing: 'This phone does not know any more which entry it wrote last.',
    'not-its-last-entry':
      'The last entry of this phone is not the one that it wrote last: entries are missing at the end.',
  } satisfies Record<Extract<Unsound, { what: 'head' }>['why'], string>,
  wrongPhoto: 'A photo or file is not as it was kept',
  notLoaded:
    'A part of Leesbook that checks the book is not on this phone yet. Open Leesbook once with a network, then try again.',
  // Against a paper
  paper: 'Against a paper',
  paperSecond:
    'At the foot of every page stands “Entry … of the record, SHA-256 …”. Type those sixteen letters and digits.',
  hash: 'Hash on the paper',
  hashHint: (least: number) => `Digits and the letters a to f; at least ${least}. Gaps do not matter.`,
  tooShort: (least: number) => `At least ${least} of them, or many entries would fit.`,
  notHash: 'A hash has only digits and the letters a to f. Look at each one again.',
  look: 'Look for it',
  looking: 'Looking through the whole book',
  stopLooking: 'Stop looking',
  contains: (nth: string) => `This book contains that entry: number ${nth}`,
  containsWhole:
    'If the check says “whole” as well, nothing up to it was changed, taken out or put in another order since the paper was made.',
  isPaper: 'That is the hash of a paper that this book made',
  isPaperSecond:
    'Not of an entry. To check the book, take the hash that stands after “Entry … of the record”.',
  containsNot: 'This book does not contain that entry',
  containsNotWhy:
    'Look at each digit again. If it is typed rightly, the paper is of another book, or that entry is not as it was when the paper was made.',
  // What it proves
  proves: 'What this proves',
  provesSays:
    'A hash is worked out of every letter of an entry and of the hash before it. So the last one stands for all that was written before.',
  provesList: [
    'Since a hash was noted somewhere else (on a paper handed over, in a backup, with the collector), no entry up to it was changed, taken out, slipped in or put in another order.',
    'What was corrected or withdrawn still stands here as it was first written.',
    'A photo or a filed paper is the one that its entry names.',
  ],
  provesNot: 'What it does not prove',
  provesNotList: [
    'That what was written is true.',
    'Who really typed it. A name is the person who was chosen on the phone.',
    'When. The hour is the clock of the phone, which can be set.',
    'That everything that happened was written down.',
    'Anything, as long as no hash has left the phone: whoever holds it could write the whole book anew, with hashes that fit. Hand over a paper or keep a backup elsewhere, and it is fixed up to there.',
  ],
} as const;
