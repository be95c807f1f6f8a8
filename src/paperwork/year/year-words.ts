/** Words of the paper of a year, around those of the account itself (`account-words.ts`). */
import { calendarDayText } from '../dates';
import { capital, joined, notDetermined } from '../words';

const days = (first: string, last: string): string =>
  first.slice(5) === '01-01' && last.slice(5) === '12-31' && first.slice(0, 4) === last.slice(0, 4)
    ? first.slice(0, 4)
    : `${calendarDayText(first)} to ${calendarDayText(last)}`;

const monthNames =
  'January February March April May June July August September October November December'.split(' ');

export const yearPaperWords = {
  title: 'Summary of the year',
  days,
  monthText: (month: string) => `${monthNames[Number(month.slice(5)) - 1] ?? ''} ${month.slice(0, 4)}`,
  subject: (first: string, last: string) =>
    `Waste of ${days(first, last)}: what arose, what left, what is here`,
  mastheadLine: (
    { name, address, generatorNumber }: { name: string; address: string; generatorNumber: string },
    made: string,
    by: string,
  ) => `${name}, ${address}. Generator number: ${generatorNumber}. Made ${made}; by: ${by}.`,
  runningHead: (time: string, name: string, made: string) => `Summary of ${time}. ${name}, ${made}`,
  footCaution: 'Not confirmed until the authority that asks for it has accepted it.',
  footHashes: (n: number | null, last: string, content: string) =>
    `${n === null ? 'No entry in the record' : `Entry ${n} of the record, SHA-256 ${last}…`}; this paper ${content}…; whole at its end.`,
  pageWords: 'page {page} of {pages}',
  demo: 'invented demo',
  attachment: 'Everything this paper says, as data; its hash is over the canonical JSON (RFC 8785).',
  cautions: [
    'Nobody has confirmed this. Your authority says what a report must hold, by which codes and in which form; confirm with it before you send anything.',
    '“Not determined” means not measured or not said, not zero. Ranges hold about 19 times in 20.',
  ],
  confirms: (authority: string) =>
    authority === notDetermined
      ? 'The authority that asks for a report; which one: not determined. Waste codes: the authority or the collector.'
      : `The authority that asks for a report: ${authority}. Waste codes: the authority or the collector.`,
  period: 'Time',
  periodText: (first: string, last: string, over: boolean, made: string, zone: string) =>
    `${calendarDayText(first)} to ${calendarDayText(last)}, both days with it, by the days of ${zone}${over ? '' : `. It was not over when this was made, ${made}`}.`,
  authority: 'Authority',
  confirmsTerm: 'Who confirms',
  atAGlance: 'At a glance',
  what: 'What',
  kg: 'Mass',
  likely: 'likely',
  low: 'low',
  high: 'high',
  startMass: 'Here before the first day',
  aroseMass: 'Arose',
  leftMass: 'Handed over',
  endMass: 'Here after the last day',
  endMassSoFar: 'Here as this was made',
  massNote:
    'By mass, as weighed or from volume and density. The four do not have to add up: mass changes with the water and the base that come and go. Metals are accounted for below.',
  atLeast: (called: string, names: readonly string[]) =>
    `${called}: at least. No mass known of ${joined(names)}.`,
  arose: 'Waste that arose',
  byKind: 'By kind',
  byMonth: 'By month',
  month: 'Month',
  kinds: 'Of these',
  kindIn: (called: string, mass: string) => `${called} ${mass}`,
  sumOfKinds: 'In all',
  none: 'none',
  foundText: (names: readonly string[]) =>
    `Found here, and nobody knows what is in it: ${joined(names)}. No mass known.`,
  nothingArose: 'No waste was logged in this time.',
  besides: 'Logged, and not counted in what arose',
  left: 'Handed over',
  noLoads: 'Nothing was handed over in this time.',
  container: 'Container',
  holds: 'What was in it',
  mass: 'By the record',
  agreed: 'Agreed',
  proof: 'Proof of disposal',
  came: 'came back, not counted',
  loadTitle: (on: string, who: string) => `${on}: ${who}`,
  loadText: (destination: string, document: string, licence: string, how: string) =>
    `To: ${destination}. Paper: ${document}. Licence: ${licence}. What became of it: ${how}.`,
  otherwise: 'Gone some other way than by a hand-over',
  codes: 'Handed over by waste code and place',
  codesNote:
    'What reports by waste code and chronological records by destination ask for. A container stands under each code that it has, so that rows of one law may overlap. Codes are candidates unless somebody confirmed them.',
  code: 'Code',
  law: 'Law',
  standing: 'Standing',
  to: 'Taken by, to',
  placeTo: (collector: string, destination: string) => `${collector}; to: ${destination}`,
  here: 'What stood here',
  hereAtStart: 'Before the first day',
  hereAtEnd: 'After the last day',
  hereSoFar: 'As this was made',
  nothingHere: 'Nothing, by the record.',
  thing: 'Container or waste',
  doubted: (kinds: string) => `nobody knows; by the record ${kinds}`,
  balances: 'What each substance came to',
  balancesNote:
    'What was here and came in, against what went and is here. Readings that both sides rest on cancel. What does not tell is on neither side, and is named. What a laboratory found in a container is not in it: amounts are what was logged of the wastes.',
  substance: 'Substance',
  in: 'In',
  out: 'Out',
  off: 'In less out',
  how: 'How it stands',
  line: 'Line',
  sumIn: 'In all, in',
  sumOut: 'In all, out',
  amount: 'Amount',
  gaps: (says: string, names: readonly string[]) => `${capital(says)}: ${names.join('; ')}.`,
  toldNowhere: (names: readonly string[]) =>
    `${capital(joined(names.map((name) => name.toLowerCase())))}: no waste of the time tells of it.`,
  noBalances: 'No waste of the time tells of any metal or acid.',
  wrong: 'What contradicts itself or was not followed',
  silver: 'For a gram of silver',
  silverNote:
    'Batches whose silver was first weighed in this time, with all of their wastes, whenever they were logged. Copper and nickel as measured in what the batch ended in.',
  noSilver: 'Not determined: no silver was weighed in this time.',
  batch: 'Batch',
  allBatches: 'All of them',
  silverGrams: 'Silver',
  perSilver: { Cu: 'Copper to waste', Ni: 'Nickel to waste', waste: 'Waste' },
  notWeighed: (names: readonly string[]) =>
    `Silver not weighed: ${joined(names)}. Nothing of it is counted here.`,
  openIn: (called: string, known: boolean, names: readonly string[]) =>
    `${called}: ${known ? 'at least' : notDetermined}. Not told by ${joined(names)}.`,
  agents: 'Used for treating',
  agent: 'As sold',
  treatments: 'treatments',
  counting: 'How it was counted',
  notDeterminedTitle: 'What is not determined',
  noneOpen: 'What happened and nobody wrote down.',
  lastEntry: (n: number, hash: string) => `Last entry of the record: ${n}, SHA-256 ${hash}`,
  contentHash: (hash: string) => `Content of this paper, SHA-256 ${hash}`,
  working:
    'The working of every figure, with readings, published values and sources, and every waste one by one, is in the data inside this file.',
  signs: ['Generator, name and date', 'Authority, name and date'],
  wasteOf: (kind: string, day: string, batch: string | null) =>
    `${kind} of ${day}${batch === null ? '' : `, ${batch}`}`,
  treatmentIn: (code: string, day: string) => `treatment in ${code}, ${day}`,
  loadOf: (day: string, who: string) => `load of ${day}, ${who}`,
  open: {
    noMass: (names: readonly string[]) => `Mass of ${joined(names)}.`,
    found: (names: readonly string[]) => `What is in ${joined(names)}, found here.`,
    generator: 'Generator number of the workshop: not entered.',
    destination: (names: readonly string[]) => `Where it went: ${joined(names)}.`,
    proof: (names: readonly string[]) => `Proof of disposal: ${joined(names)}.`,
    code: (names: readonly string[]) => `Waste code of ${joined(names)}.`,
    gaps: (called: string, n: number) =>
      `${called} of ${n === 1 ? '1 waste or container' : `${n} wastes or containers`}.`,
    silver: (names: readonly string[]) => `Silver got back of ${joined(names)}.`,
  },
  wrongs: {
    overPlaced: (name: string) => `${capital(name)}: more was put into containers than was logged.`,
    notFollowed: (code: string, day: string) => `${code}, ${day}: a movement that the record cannot follow.`,
    upset: (code: string, day: string, says: string) => `${code}, ${day}: ${says}.`,
  },
} as const;
