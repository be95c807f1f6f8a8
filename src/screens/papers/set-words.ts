/** Words on the way from the choice of containers to a finished set. */
import type { Scheme } from '../../ledger/entries/candidates';
import type { Look, PlaceGap } from '../../ledger/readiness';
import { capital, joined } from '../../paperwork/words';

const looks: Readonly<Record<Look, string>> = { ph: 'pH', colour: 'colour', layers: 'layers' };

const containers = (n: number): string => (n === 1 ? '1 container' : `${n} containers`);

const place: Readonly<Record<PlaceGap, string>> = {
  workshop: 'Workshop and emergency number not entered',
  'generator-number': 'Generator number not entered',
  authority: 'Authority not entered',
  collector: 'Collector not entered',
  licence: 'Collector’s licence not entered',
  laws: 'Whose laws apply not entered',
  'storage-days': 'Storage time not entered',
  'treatment-allowed': 'Whether you may treat not entered',
};

const codeOf: Readonly<Record<Scheme, string>> = {
  transport: '',
  'waste-list': 'Waste code',
  rcra: 'Waste code',
  'rcra-ldr': '',
  california: 'California',
  'eu-hp': 'Hazardous property',
  clp: 'Hazard class',
};

export const setWords = {
  title: 'Hand-over papers',
  // Choosing
  chooseSecond: 'Tick what leaves together',
  noContainers: 'Nothing is in any container.',
  allLeaving: (n: number) => `Set aside to leave (${n})`,
  all: (n: number) => `All (${n})`,
  none: 'None',
  quick: 'Tick several at once',
  what: (contents: string, amount: string) => `${contents}, ${amount}`,
  setAside: 'set aside to leave',
  alreadyGone: (n: number) => `Already gone (${n})`,
  check: (n: number) => (n === 1 ? 'Check this one' : `Check these ${n}`),
  checkNone: 'Check them',
  checkSecond: 'What is missing, and who must still say yes',
  chooseOne: 'Tick at least one container.',
  noneChosen: 'None of the containers chosen is in this record.',
  // Checking
  for: (collector: string | undefined, day: string) =>
    collector === undefined ? day : `${collector}, ${day}`,
  looking: 'Looking …',
  nothingMissing: 'Nothing missing',
  nothingMissingIn: (n: number, all: number) => `${n} of ${all} with nothing missing`,
  more: (n: number) => `${n} more`,
  tooFull: (amount: string) => `Too full: take ${amount} out`,
  empty: 'Nothing is in it',
  emptySecond: 'By the record',
  gone: 'It is gone by the record',
  goneSecond: (when: string) => `Since ${when}`,
  held: 'It is held',
  heldSecond: (when: string) => `Since ${when}. Let it go first.`,
  notClosed: 'Not closed',
  notClosedSecond: 'Close it, and say so',
  storageOver: (days: number) =>
    days === 1 ? 'Storage time over since yesterday' : `Storage time over by ${days} days`,
  storageOverSecond: (day: string) => `It had to leave by ${day}`,
  noLabel: 'No label made',
  oldLabel: 'Label older than what is in it',
  oldLabelSecond: (when: string) => `Made ${when}. Make a new one.`,
  noLabelSecond: 'The set can bring one',
  unaccounted: 'Something in it is in no log',
  unaccountedSecond: 'Say what it is, or that nobody knows',
  notDetermined: (names: string) => `${capital(names)} not determined`,
  onlyAtLeast: (names: string) => `${capital(names)}: only “at least”`,
  looks: (all: readonly Look[], heldLiquor: boolean) =>
    `${capital(joined([...all.map((look) => looks[look]), ...(heldLiquor ? ['held liquor'] : [])]))} not determined`,
  doesNotTell: (name: string) => `${name} does not tell`,
  nothingTells: 'Nothing in it tells',
  nor: (names: string) => `Nor: ${names}`,
  // Together
  apartTitle: 'Not beside each other',
  apart: (one: string, other: string) => `${capital(one)} must not meet ${other}`,
  apartSecond: (one: string, other: string) => `${one}; ${other}. Load them apart, and tell the collector.`,
  // Who must still say yes
  sayTitle: 'Who must still say yes',
  codes: (scheme: Scheme, codes: string) => [codeOf[scheme], codes].filter(Boolean).join(' '),
  saidSo: (who: string, when: string, codes: string) => `${who} said so, ${when}. ${codes}`,
  place: (gap: PlaceGap) => place[gap],
  storageDays: (days: string) => `Storage time ${days} days`,
  ruleSaid: (who: string, when: string) => `${who} said so, ${when}.`,
  and: (n: number) => `and ${n} more`,
  // Printing
  printTitle: 'How it is printed',
  labels: 'With a label for each',
  labelsSecond: 'To cut out; labels of other sizes are on the Papers page',
  // The statement
  sign: 'Sign the statement',
  signSecond: 'Or later, on the paper with a pen',
  signed: (name: string, when: string) => `Signed by ${name}, ${when}`,
  signedSecond: 'Tap to look at it or sign anew',
  signedBefore: 'Signed before something changed',
  signedBeforeSecond: 'That signature is not printed. Sign anew.',
  wholeStatement: 'Show what was measured, and what is open',
  statementTitle: 'Sign the statement',
  signHere: 'Signature of the generator',
  signHint: 'May stay empty: there is room for a pen on the paper.',
  makeIt: 'Make the set',
  makeItSecond: (pages: number) => `About ${pages} pages. Gaps stay visible.`,
  making: 'Making the set …',
  toChoice: 'Other containers',
  toCheck: 'Back to the check',
  // On the way back from where a gap was mended
  back: 'Back to the papers',
  backSecond: (n: number) => `${containers(n)} chosen. Nothing is lost.`,
  // Made
  handOver: 'Hand over now',
  handOverSecond: 'Who takes it, with both signatures',
} as const;
