/** Words of the record and its settings. */
import type { Wrong } from '../../ledger/verify';
import { countText } from '../amounts';

export const recordWords = {
  title: 'Record',
  noWorkshop: 'No workshop entered yet',
  parts: { here: 'This workshop', phone: 'This phone', book: 'This book' },
  rows: {
    workshop: 'Workshop',
    people: 'People',
    rules: 'Local rules',
    bases: 'Bases and their purity',
    reading: 'How it reads',
    history: 'History',
    demo: 'Invented workshop',
    about: 'About this book',
  },
  second: {
    workshop: 'Address, emergency number, contacts',
    people: (present: number, holder: string | undefined) =>
      `${present} here${holder === undefined ? '; nobody holds the phone' : `; ${holder} holds the phone`}`,
    rules: (entered: number, all: number) => `${entered} of ${all} entered`,
    lists: (all: number, own: number) =>
      own === 0 ? `${all}, as they came` : `${all}, ${own} with changes of ours`,
    bases: (stated: number, all: number) => `${stated} of ${all} stated`,
    reading: (sign: string, theme: string) => `${sign}, ${theme}`,
    history: 'Every entry, what was corrected, what was withdrawn',
    demo: 'Try things without harm',
    inDemo: 'You are in it now',
    about: 'Version, cautions, sources',
  },
  notEntered: 'Not entered',
  dateAhead: 'That day is still to come.',
  dateMissing: 'Choose the day.',
} as const;

const entriesText = (count: string): string => (count === '1' ? '1 entry' : `${count} entries`);

export const wholeWords = {
  checking: 'Checking every entry',
  whole: (count: string) => `Whole, ${entriesText(count)}`,
  wholeSecond: 'Each entry is as it was written, and follows the one before.',
  entries: (count: string) => entriesText(count),
  lookedAtSoon: 'All of them are looked at after each start. Tap to have them looked at now.',
  without: (things: number) =>
    things === 1 ? 'Goes on without one thing' : `Goes on without ${things} things`,
  withDamaged: (entries: number) =>
    entries === 1 ? 'Goes on with a damaged entry' : `Goes on with ${entries} damaged entries`,
  here: (count: string) => `${entriesText(count)} ${count === '1' ? 'is' : 'are'} here.`,
  othersAsWritten: 'But for what was damaged, each is as it was written.',
  othersNotLooked: 'They have not been looked at since the start.',
  withoutWay: 'Tap: what was lost or damaged.',
  empty: 'Nothing is written down yet',
  wrong: (at: number) => `Entry ${at} is not as it was written`,
  why: {
    schema: 'It does not have the shape of an entry.',
    'hash-differs': 'Its own hash does not fit what it says.',
    'counter-gap': 'Entries before it are missing.',
    'previous-does-not-match': 'It does not follow the entry before it.',
  } satisfies Record<Wrong['code'], string>,
  wrongSecond:
    'A backup mends it: bring one in under Restore or join. Until then do not clear this browser, and rest no figure on it. If there is no backup, make one of what is here, and write down the figures that you need.',
  unreadable: (count: number) =>
    count === 1 ? '1 entry could not be read' : `${countText(count)} entries could not be read`,
  unreadableSecond: 'It is kept as it is and left out of every figure.',
} as const;

export const workshopWords = {
  title: 'Workshop',
  second: 'It stands on labels, papers and the emergency card.',
  name: 'Name of the workshop',
  address: 'Address',
  addressHint: 'As you would say it to an ambulance.',
  emergencyNumber: 'Emergency number',
  emergencyHint: 'The one that is on your wall.',
  notDiallable: 'Digits are missing: this number is dialled from the emergency card.',
  more: 'More, when you have it',
  moreHint: 'Each of these may stay empty. Papers then say “not determined”.',
  mapReference: 'Map reference',
  mapHint: 'Grid reference, or how to find the door.',
  noSignal: 'Where to phone with no signal',
  generatorNumber: 'Generator number',
  generatorHint: 'If your authority gave you one.',
  authority: 'Authority',
  authorityContact: 'How to reach the authority',
  collector: 'Licensed collector',
  collectorContact: 'How to reach the collector',
  collectorLicence: 'Licence of the collector',
  counter: 'Hazardous-waste counter',
  counterHint: 'Where small amounts may be taken.',
  nameToContact: 'Write its name too.',
  contactToName: 'Write how to reach it too.',
  keep: 'Keep the workshop',
} as const;

export const peopleWords = {
  title: 'People',
  second: 'Who works here, and who holds the phone now.',
  none: 'Nobody is entered yet.',
  holds: 'Who holds the phone now?',
  holdsHint: 'Their name stands under everything that is written from now on.',
  here: 'Here',
  left: 'Left',
  leftSince: (day: string) => `left ${day}`,
  noPhone: 'no phone number',
  add: 'Add a person',
  newTitle: 'A new person',
  name: 'Name',
  phone: 'Phone',
  keep: 'Keep this person',
  leaves: 'Has left',
  leavesSecond: 'Their entries stay under their name.',
  back: 'Is back',
  backSecond: 'Keeps name and phone as they stand above.',
  gone: 'This person is not in the record.',
} as const;

export const ruleFormWords = {
  title: 'Local rules',
  second: 'What your authority or collector has said. Nothing here is law by itself.',
  saidBy: 'Who said so',
  saidByHint: 'Office and person.',
  saidOn: 'When',
  document: 'Which document',
  documentHint: 'Letter, permit or page.',
  keep: 'Keep this rule',
  said: (by: string, day: string) => `${by} said so, ${day}`,
  unknown: 'Not entered yet',
  gone: 'There is no such rule.',
  again: 'A later statement replaces this one; both stay in the history.',
  whoTitle: 'Who says so',
  whomTitle: 'Whom to ask',
  authority: 'Authority',
  collector: 'Collector',
  generatorNumber: 'Generator number',
  lawsHint: 'Codes, classes and labels are looked at by these. Several may apply.',
  categoryHint: 'For example: small quantity generator.',
  startsTitle: 'Starting points',
  startsSecond:
    'What laws say in general. Yours may be stricter: ask. Taking one over fills the lines; you keep it.',
  startValue: (value: string, unit: string) => `Take over ${value}\u202f${unit}`,
  startTaken: (value: string, unit: string) => `${value}\u202f${unit} taken over`,
  startSecond: (
    law: string,
    point: {
      readonly forWhom: string;
      readonly note?: string;
      readonly cite: string;
      readonly source: { readonly status: string };
    },
  ) =>
    [
      `${law}, ${point.forWhom}.`,
      `${point.cite}${point.source.status === 'verified' ? '' : ' (from memory, not checked against its source)'}.`,
      point.note ?? '',
    ]
      .filter((part) => part !== '')
      .join(' '),
  asStands: (cite: string) => `taken over from ${cite}`,
} as const;

export const dischargeFormWords = {
  onlyAuthorised:
    'Only where your authority has allowed a discharge. It is what figures are held against, nothing more.',
  mostOf: (metal: string) => `${metal}, at most`,
  emptyLine: 'Left empty: no limit for it.',
  firstMetal: 'Which metal?',
  nextMetal: 'Another metal',
  choose: 'Choose',
  noMetal: 'Choose a metal and write its limit.',
  lowest: 'Lowest pH',
  highest: 'Highest pH',
  wrongWay: 'The lowest pH must be below the highest.',
  phIs: (low: string, high: string) => `pH ${low} to ${high}`,
} as const;

export const baseWords = {
  title: 'Bases and their purity',
  second: 'Read it on the bag or its data sheet. It changes how much to buy.',
  stated: (by: string | undefined) => (by === undefined ? 'as stated' : by),
  taken: (low: string, high: string) => `Not stated: ${low} to ${high} % is reckoned with`,
  purity: 'Purity, by mass',
  basicity: 'Or basicity factor, g CaO a gram',
  basicityHint: 'After ASTM C400, where the supplier or a laboratory states it.',
  onlyOne: 'Either the purity or the basicity factor: leave one empty.',
  saidBy: 'Who or what says so',
  saidByHint: 'For example: as on the bag.',
  keep: 'Keep this purity',
  gone: 'There is no such base.',
} as const;

export const readingWords = {
  title: 'How it reads',
  sign: 'Decimal sign',
  point: 'Point, as in 2.50',
  comma: 'Comma, as in 2,50',
  signHint: 'Both are understood when you type.',
  aloud: 'Checklists',
  aloudHint: 'English words, by the voice of this phone.',
  noVoice: 'This phone has no voice to read with.',
  silent: 'Silent',
  readAloud: 'Read aloud',
  readAloudSecond: 'The question, what to look at, the answers',
  theme: 'Page',
  light: 'Light',
  lightSecond: 'Best in daylight',
  dark: 'Dark',
  darkSecond: 'Best at night',
  phone: 'As the phone is set',
  phoneSecond: 'Changes when the phone does',
  shortPoint: 'decimal point',
  shortComma: 'decimal comma',
} as const;

export const demoWords = {
  title: 'Invented workshop',
  second: 'A shed, two people and three batches that do not exist.',
  apart: 'It is a record of its own. Nothing in it reaches your workshop, and no figure in it is yours.',
  enter: 'Go into it',
  enterSecond: 'A ribbon stays on every page while you are there',
  entering: 'Laying it out',
  leave: 'Back to my workshop',
  leaveSecond: 'The invented one stays as you leave it',
  remove: 'Remove it',
  removeSecond: 'With everything written in it',
  confirmTitle: 'Remove the invented workshop?',
  confirm: 'Everything written in it goes, for good. Your own record is not touched.',
  removeYes: 'Remove it',
  removeNo: 'Leave it',
  removed: 'The invented workshop is gone',
  removedWords: 'Nothing of it is left on this phone.',
  toRecord: 'To my record',
  notRemoved: 'It is not removed yet',
  notRemovedWords: 'Another window still has it open. Close that window, then remove it again.',
  removeAgain: 'Remove it again',
} as const;

export const aboutWords = {
  title: 'About this book',
  version: 'Version',
  what: 'The waste and safety book of a small workshop that recovers silver and palladium from scrapped ceramic capacitors with nitric acid.',
  notTitle: 'What it is not',
  not: [
    'Not a permit, and not a promise that something may be done.',
    'Not a measurement: a figure is no better than the evidence under it.',
    'Not a replacement for a safety data sheet, training, or a second person.',
    'Not a copy in a safe place: what is on this phone only goes with this phone.',
  ],
  where: 'What you write stays on this phone. It is sent nowhere.',
  lost: 'If the record is lost or damaged, Leesbook notices by a marker that it keeps beside it, and says so. Whoever clears all data of this browser takes both: then nothing can be known, and only a backup elsewhere helps.',
  sources: 'Sources of the published values',
  licences: 'Licences',
  licencesSecond: 'What of others is in this app',
} as const;

export const licencesWords = {
  title: 'Licences',
  second: (count: number) => `${count} works of others are in this app`,
  own: 'Leesbook itself stands under the MIT licence. Its workings, words and drawings are its own; what follows was made by others and is used as they allow.',
} as const;
