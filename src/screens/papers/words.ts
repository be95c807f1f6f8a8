import type { PaperMade } from '../../ledger/entries/papers';

/** Files that go with a paper, by what they are. */
const besides: Readonly<Record<string, { readonly says: string; readonly second: string }>> = {
  'application/zip': {
    says: 'Save tables and data',
    second: 'ZIP: the paper, its data, and tables for a spreadsheet',
  },
  'application/json': { says: 'Save the data behind it', second: 'JSON; it lies inside the PDF as well' },
};

/** Words of the papers. */
export const paperWords = {
  title: 'Papers',
  none: 'No paper made yet. A paper says what is in a container, how that is known, and what nobody knows.',
  make: 'Make papers',
  makeSecond: 'What leaves, for a collector to confirm',
  madeFor: (file: string, when: string) => `${when}. ${file}`,
  again: 'The file is not kept here, only its hash. Make it again whenever you need it.',
  makeAgain: 'Make it again',
  others: 'Other papers',
  period: (first: string, last: string) => `${first} to ${last}`,
  older: (n: number) => `${n} older`,
  kinds: {
    disposal: 'Hand-over papers',
    receipt: 'Receipts',
    labels: 'Labels',
    register: 'Registers',
    year: 'Years',
  } satisfies Readonly<Record<NonNullable<PaperMade['paper']>, string>>,
  sheet: 'Sheet',
  sheets: { A4: 'A4', Letter: 'Letter' },
  sheetSeconds: { A4: '210 × 297 mm', Letter: '8.5 × 11 in' },
  working: 'Print the whole working',
  workingSecond: 'Some pages more; it is in the data inside the file either way',
  making: 'Making the paper …',
  beginning: 'Beginning',
  stayHere: 'Stay on this page until it is made.',
  stages: {
    reading: () => 'Reading the record',
    gathering: (done: number, of: number) => `Gathering what is known: ${done} of ${of}`,
    setting: (done: number, of: number) => `Setting the text: ${done} of ${of}`,
    drawing: (done: number, of: number) => `Drawing the pages: ${done} of ${of}`,
    closing: () => 'Closing the file',
  },
  silent:
    'Nothing has moved for half a minute. You can wait, or cancel and make it of fewer containers. Nothing is lost.',
  cancel: 'Cancel',
  cancelSecond: 'Nothing is written down',
  chooseOne: 'Tick at least one container.',
  notLoaded:
    'A part of Leesbook that makes papers is not on this phone yet. Nothing is lost: open Leesbook once with a network, then make it again.',
  tooLarge:
    'This phone has not enough memory for it. Nothing is lost: close other apps, or make it of fewer containers at a time.',
  notMade: (name: string) => `The paper could not be made (${name}). Nothing is lost. Try again.`,
  // Made
  madeTitle: 'The paper is made',
  print: 'To print: open it, then print from there, at 100 %.',
  madeKeep: 'Save it or share it now: Leesbook keeps its hash, not the file.',
  madeConfirm: 'It is confirmed by nobody yet. Your authority or collector decides.',
  open: 'Open it',
  save: 'Save it',
  besides: (mime: string) => besides[mime] ?? { says: 'Save what goes with it', second: mime },
  contentHash: 'Hash of its content, SHA-256',
  fileName: 'File',
  toPapers: 'To the papers',
  // Drawing on the paper
  limit: (percent: string) => `${percent} % limit`,
  ofCapacity: (capacity: string) => `of ${capacity}`,
  levelUnknown: 'not known',
  drawingSays: (code: string, level: string) => `${code} drawn as a vessel filled to its level: ${level}`,
} as const;
