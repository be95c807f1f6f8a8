/** Words of a container's life: its states, what is done with it or said of it, and what nobody knows. */
import type { Doing, LifeName } from '../../ledger/container-life';
import type { ContainerMarked, ContentsDetermined } from '../../ledger/entries/containers';
import type { UnknownAsk } from '../../reference/unknown-contents-tables';
import type { MarkKind } from '../../ui/marks';

/** A state by its word and its shape; one that is in use is quiet. */
export const lifeStates: Readonly<
  Record<LifeName, { readonly word: string; readonly mark?: MarkKind; readonly follows?: string }>
> = {
  opened: { word: 'Opened, nothing in it yet' },
  filling: { word: 'In use' },
  full: { word: 'Full', mark: 'full', follows: 'Nothing more goes in: the fill limit is reached.' },
  closed: { word: 'Closed for good', mark: 'closed', follows: 'Nothing more goes in.' },
  held: { word: 'Held as it is', mark: 'held', follows: 'Nothing goes in, nothing is poured on.' },
  leaving: { word: 'Set aside to leave', mark: 'leaving', follows: 'Nothing more goes in.' },
  gone: { word: 'Gone', mark: 'gone' },
  emptied: { word: 'Emptied', mark: 'emptied', follows: 'It can be filled again.' },
  damaged: { word: 'Damaged', mark: 'damaged', follows: 'Nothing goes in until it is sound again.' },
  'not-determined': {
    word: 'Contents not determined',
    mark: 'unknown',
    follows: 'Nothing may be added, nothing is poured on.',
  },
};

/** `short` stands at the thumb, `second` under it in the list of all doors. */
export const doingWords: Readonly<Record<Doing, { readonly short: string; readonly second?: string }>> = {
  'put-in': { short: 'Put in' },
  'take-out': { short: 'Take out', second: 'Into another, a sample, spilt, into a treatment pot' },
  'move-all': { short: 'Move all of it over', second: 'Into a sound, empty container' },
  'say-what-it-is': { short: 'Say what it is', second: 'Who says so, and how they know' },
  'read-level': { short: 'Read the level', second: 'Set against what the record says' },
  'lab-report': { short: 'A laboratory’s report', second: 'What it found in a sample of all of it' },
  'water-lost': { short: 'Water went off', second: 'What is dissolved stays, in less liquid' },
  'change-vessel': { short: 'Change the vessel', second: 'Cap, tray, place, material, capacity, photos' },
  closed: { short: 'It is closed for good' },
  reopened: { short: 'It was opened again' },
  'contents-doubtful': { short: 'Nobody knows what is in it' },
  'contents-known': { short: 'It is known again', second: 'What was poured in is all that is in it' },
  held: { short: 'Hold it as it is', second: 'Nothing in, nothing out, until it is let go' },
  'let-go': { short: 'Let it go again' },
  leaving: { short: 'Set aside to leave', second: 'For the collector' },
  staying: { short: 'It stays after all' },
  'hand-over': { short: 'Hand it over', second: 'To whom, how much, two signatures' },
  gone: { short: 'It is gone some other way', second: 'To whom, when, with which paper' },
  'came-back': { short: 'It came back' },
  emptied: { short: 'It was emptied', second: 'Clean enough to be used again' },
  damaged: { short: 'It is damaged', second: 'Cracked, swollen, leaking' },
  mended: { short: 'It is sound again' },
  'proof-filed': { short: 'File the proof of disposal', second: 'Its number, a photo of it' },
};

export const doubtWords: Readonly<Record<NonNullable<ContainerMarked['doubt']>, string>> = {
  found: 'Found here',
  inherited: 'Taken over with the place',
  'label-gone': 'Its label is gone',
  'mixed-up': 'Mixed up with another',
  other: 'Something else',
};

export const howWords: Readonly<Record<ContentsDetermined['how'], string>> = {
  tests: 'Tests made here',
  assay: 'Analysed by a laboratory',
  papers: 'Papers that came with it',
  witness: 'Somebody saw it filled',
};

export const askWho: Readonly<Record<UnknownAsk['who'], string>> = {
  'worked-here': 'Whoever worked here',
  'previous-owner': 'The previous owner',
  collector: 'The collector',
  authority: 'The authority',
};

export const lifeWords = {
  since: (state: string, when: string) => `${state} since ${when}`,
  goneTitle: (n: number) => `Gone (${n})`,
  marked: (code: string, what: string) => `${code}: ${what.charAt(0).toLowerCase()}${what.slice(1)}`,
  note: 'What happened, or how it is known',
  keep: 'Write it down',
  saidBy: 'Who says so',
  doubt: 'How the doubt came',
  to: 'To whom it went',
  document: 'Number of the paper',
  documentHint: 'Transport paper, receipt, certificate (may stay empty)',
  stillHolds: (held: string) =>
    `By the record it still holds ${held}. If it went into another container, write that first.`,
  takeOutFirst: 'Write where it went',
  withCollector: 'A collector takes it',
  withCollectorSecond: 'Hand it over instead: how much, two signatures',
  // What is in it
  whatIs: (code: string) => `What is in ${code}?`,
  whatIsSecond: 'Nobody knows. Until somebody says so, nothing is added and nothing is poured on.',
  testAsk: 'What to test, whom to ask',
  testAskSecond: 'Tests in their order, and who may know',
  tests: 'Test, in this order',
  stopAt: 'Stop at the first that warns. A few drops each, under the hood or in the open.',
  ask: 'Ask',
  whySource: 'Why, and from where',
  call: (name: string) => `Call ${name}`,
  noContact: 'No telephone number written down.',
  describe: 'Describe the workshop',
  say: 'Say what it is',
  determineTitle: (code: string) => `${code}: what it is`,
  determineSecond: 'From then on all that is in it is this. What was written before stays in the history.',
  kind: 'Kind of waste',
  how: 'How they know',
  keepWhatItIs: 'That is what it is',
  unlogged: 'Something in it is in no log.',
  saidIs: (who: string, how: string, when: string) => `${who} said what is in it, ${when}: ${how}.`,
  // Found
  foundDoor: 'Found one: nobody knows',
  foundDoorSecond: 'Taken over, label gone, nobody remembers',
  foundTitle: 'Found: nobody knows',
  foundSecond: 'It stands on the shelf as not determined, and nothing may be added.',
  foundHow: 'How it came',
  foundLevel: 'How much stands in it',
  foundLevelHint: 'as it looks from outside (may stay empty)',
  foundNote: 'What is written on it, or told of it',
  keepFound: 'Put it on the shelf',
  // Vessel
  changeTitle: (code: string) => `${code}: change the vessel`,
  changeHint: 'Code or kind wrong? Correct the entry that opened it.',
  unchanged: 'Nothing is changed yet.',
  keepChange: 'Keep the change',
  area: 'Which area',
  areas: {
    '': 'not said',
    'near-work': 'beside the work, under our eyes',
    store: 'in the store',
  },
  // Level
  levelTitle: (code: string) => `${code}: read the level`,
  levelSecond: (held: string) => `By the record it holds ${held}.`,
  level: 'Level',
  levelHint: 'by its gauge, a dip or the scale',
  keepLevel: 'Keep the level',
  levels: 'Levels read',
  levelAgrees: 'as the record has it',
  levelNot: (held: string) => `the record had ${held}`,
  whyTitle: (gap: string, less: boolean) =>
    less ? `${gap} less than the record` : `${gap} more than the record`,
  whySecond: (level: string, held: string) => `Read ${level}; by the record ${held}. What happened?`,
  whyTaken: 'It was spilt or taken out',
  whyTakenSecond: 'Write where it went',
  whyIn: 'Something went in',
  whyInSecond: 'It was logged and is not placed yet, or nobody logged it',
  whyEntry: 'An entry is wrong',
  whyEntrySecond: 'Correct it: the entry stays, the correction stands beside it',
  whyNobody: 'Nobody knows',
  whyNobodySecond: 'Its contents are in doubt from now on',
  whyNothing: 'The last level agrees with the record.',
  entriesTitle: 'Which entry?',
  waterTitle: (code: string) => `Water that went off from ${code}`,
  waterSecond: 'Metals, acid and salts stay as they were: it is stronger now.',
  water: 'How much',
  // Damaged
  moveTitle: (code: string) => `${code} is damaged. Move all of it, now.`,
  moveWhy: (held: string) => `${held} in it. Gloves, goggles, a tray under both. Into a sound, empty one.`,
  moveInto: 'Move all of it into',
  moveOne: (code: string) => `All of it into ${code}`,
  moveNew: 'Open a new container for it',
  moveNone: 'No sound, empty container here takes it by what is known.',
  moveAlready: 'Already moved? Write it down.',
  moveSpill: 'It runs out: spill card',
  moveNothing: 'By the record nothing is in it.',
  moveGone: 'Nothing has to be moved.',
  // History and later evidence
  history: 'History of this container',
  historySecond: 'Every entry about it, newest first',
  historyTitle: (code: string) => `${code}: history`,
  wrong: 'Wrong or to be done',
  laterDoor: 'Add what was found later',
  laterDoorSecond: 'A strip, a titration, the laboratory: beside what is known',
  laterTitle: 'Found later',
  laterSecond: (name: string) => `${name}. It stands beside what was known; the better one is used.`,
  laterNothing: 'Nothing is filled in yet.',
  laterKeep: 'Keep what was found',
  // Contents ledger
  step: (step: string, when: string) => `${step}, ${when}`,
  holdsThen: (held: string) => `then ${held}`,
} as const;
