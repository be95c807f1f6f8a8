/** Words of the register of a period; those of the entries themselves are in `disposal/entry-words.ts` and `entry-says.ts`. */
import { calendarDayText } from '../dates';
import { joined, notDetermined, withUnit } from '../words';
import type { Group } from './groups';
import type { RegisterLine, WasteLine } from './register-data';

export const groupWords: Readonly<Record<Group, string>> = {
  waste: 'Waste logged',
  containers: 'Containers',
  transfers: 'Put in, moved, taken out',
  treatments: 'Treatments, with doses and readings',
  inspections: 'Inspections and walks',
  checklists: 'Checklists and checks',
  'hand-overs': 'Hand-overs, rejected loads, proofs, papers',
  work: 'Batches and steps',
  changes: 'Corrections and withdrawals',
  workshop: 'Workshop, people, rules',
};

export const eventWords: Readonly<Record<WasteLine['event'], string>> = {
  arose: 'arose',
  treated: 'treated',
  left: 'left',
  'came-back': 'came back',
  proof: 'proof',
};

const days = (first: string, last: string): string =>
  first === last ? calendarDayText(first) : `${calendarDayText(first)} to ${calendarDayText(last)}`;

const numbers = (changes: readonly { readonly number: number }[]): string =>
  joined(changes.map(({ number }) => String(number)));

/** "liquid volume" for "liquid.volume" */
const wayText = (of: string): string =>
  of
    .replace(/\.\d+(?=\.|$)/g, '')
    .replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)
    .replaceAll('.', ' ');

/** "entry 12", "3 entries" */
const entries = (n: number): string => (n === 1 ? '1 entry' : `${n} entries`);

export const registerWords = {
  days,
  entries,
  title: 'Register',
  pouredFrom: (code: string) => `poured over from ${code}`,
  empty: 'empty',
  batch: (code: string) => `batch ${code}`,
  noBatch: 'of no one batch',
  withinWorkshop: 'within the workshop',
  here: 'back in the workshop',
  licence: (number: string) => `licence ${number}`,
  codeBy: (code: string, who: string) => `${code} (says ${who})`,
  agreed: (record: string, read: string) => `${record} by the record, ${read} as agreed`,
  byRecord: (amount: string) => `${amount} by the record`,
  cautions: [
    'Not confirmed until the authority that asks for it has accepted it. The law of the place says what a register must hold, and how long it is kept.',
    '“Not determined” means not measured or not said, not zero. Amounts stand as they were written.',
  ],
  proves: [
    'No entry in this file was altered after it was written: each hash fits its entry.',
    'In the chain of each device no entry is missing between the first and the last that stand here: each names the hash of the one before. Those outside the period stand by their hash.',
    'The file is as it was made, where its content hash is the one on a paper that was handed over.',
  ],
  doesNotProve: [
    'That the record does not go on before the first entry or after the last one that stand here.',
    'That what was written is true, or that everything that happened was written down.',
    'That nobody wrote it all anew: whoever holds the phone can make a whole record from nothing, with new hashes. A paper or file handed over earlier, with its hashes, shows that.',
  ],
  notDetermined: {
    generator: 'Generator number of the workshop: not entered.',
    authority: 'Authority: not entered.',
    nobody: (n: number) => `Who wrote ${entries(n)}: nobody said.`,
    doubtful: (codes: readonly string[]) => `What is in ${joined(codes)}: doubtful by somebody’s word.`,
    destination: (n: number) => `Where waste of ${entries(n)} went: not said.`,
    quantity: (n: number) => `How much waste ${entries(n)} tell of: not said.`,
    document: (n: number) => `Number of the paper with waste that left, ${entries(n)}: not said.`,
    unplaced: (n: number) =>
      `Waste that is in no container by the record: ${n === 1 ? '1 log' : `${n} logs`}.`,
    always: 'What happened and nobody wrote down.',
  },
  /** For the paper. */
  subject: (first: string, last: string) => `Register of waste, ${days(first, last)}`,
  mastheadLine: (
    { name, address, generatorNumber }: { name: string; address: string; generatorNumber: string },
    made: string,
    by: string,
  ) => `${name}, ${address}. Generator number: ${generatorNumber}. Made ${made}; by: ${by}.`,
  runningHead: (period: string, name: string, made: string) => `Register ${period}. ${name}, ${made}`,
  footCaution:
    'Not confirmed until the authority that asks for it has accepted it. It proves what its last part says, and no more.',
  footHash: (hash: string) => `Content of this register, SHA-256 ${hash}…; whole at its end.`,
  attachment:
    'Everything this register says, and the sealed entries; its hash is over the canonical JSON (RFC 8785).',
  period: 'Period',
  periodText: (first: string, last: string, zone: string) =>
    `${days(first, last)}, both days included, in the zone ${zone}`,
  authority: 'Authority',
  confirms: 'Who confirms',
  confirmsText: (authority: string) =>
    authority === notDetermined
      ? 'The authority that asks for it; which one: not determined.'
      : `The authority that asks for it: ${authority}.`,
  holds: 'What is in it',
  part: 'Part',
  lines: 'Entries',
  corrected: 'Corrected',
  withdrawn: 'Withdrawn',
  standsHere: (when: string) => `Containers here, ${when}`,
  opening: 'at the beginning',
  closing: 'at the end',
  soFar: 'when this was made',
  noContainers: 'No container was here.',
  code: 'Code',
  vessel: 'Vessel',
  held: 'Holds',
  wastes: 'What was put in since it was last empty',
  nothingIn: 'nothing',
  chronological: 'Waste in the order in which it arose, was treated and left',
  noWaste: 'No waste arose, was treated or left in the period, by the record.',
  entry: 'No.',
  day: 'Day',
  event: 'Waste',
  quantity: 'Quantity',
  nature: 'Nature',
  origin: 'Origin',
  destination: 'Destination, carried by',
  method: 'Treatment, paper',
  carried: (destination: string, mode: string) =>
    destination === mode ? destination : `${destination}; ${mode}`,
  methodPaper: (method: string, document: string) =>
    method === document ? method : `${method}; paper ${document}`,
  none: 'No entry in the period.',
  groupTitle: (name: string, n: number) => `${name}: ${entries(n)}`,
  when: 'Happened',
  writtenLater: (when: string) => `written ${when}`,
  about: 'About',
  what: 'What it says',
  amounts: 'Amounts as written',
  who: 'Who',
  hash: 'SHA-256',
  nothing: 'none',
  amount: (what: string, value: string, unit: string) => {
    const amount = unit === '1' ? value : withUnit(value, unit);
    return what === 'amount' ? amount : `${what} ${amount}`;
  },
  moreAmounts: (n: number) => `${n} more in the data`,
  changed: ({ of, was, is }: { of: string; was: string | null; is: string | null }) =>
    `${wayText(of)} ${is ?? 'nothing'} instead of ${was ?? 'nothing'}`,
  sameAgain: 'the same as written',
  changes: (number: number) => `of entry ${number}`,
  withdrawnBy: (changes: RegisterLine['changedBy']) => `Withdrawn by ${numbers(changes)}.`,
  correctedBy: (changes: RegisterLine['changedBy'], now: string) =>
    `Corrected by ${numbers(changes)}; now: ${now}.`,
  changedBefore: (changes: RegisterLine['changedBy']) =>
    `Changed by ${numbers(changes)}, which count no more: as written.`,
  notDeterminedTitle: 'What is not determined',
  chain: 'The chain of entries, and what it proves',
  device: 'Device',
  heldWhole: 'Entries here',
  byHash: 'By hash only',
  reaches: 'From, to',
  head: 'Last of the record',
  fromTo: (first: number, last: number) => `${first} to ${last}`,
  headText: (counter: number, hash: string) => `${counter}, ${hash}…`,
  provesTitle: 'Proved by working the hashes out again',
  doesNotProveTitle: 'Not proved',
  howTo: 'To do so: npm run verify with the file, or “Check a file” in the app. No network is needed.',
  contentHash: (hash: string) => `Content of this register, SHA-256 ${hash}`,
  hashesInside: 'Whole hashes and the entries themselves are in the data inside this file.',
  signs: ['Generator, name and date', 'Authority, name and date'],
  pageWords: 'page {page} of {pages}',
  demo: 'invented demo',
} as const;
