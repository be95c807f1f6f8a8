/** Words of what is due by the calendar, and of how much waste there is. */
import { format } from 'date-fns';
import type { Due } from '../../ledger/due';
import type { CountingSaid } from '../../ledger/entries/streams';
import type { AmountNear } from '../../ledger/pressing';
import type { Retention } from '../../rules/clocks/retention';
import type { Category } from '../../rules/quantities/generator-limits';
import type { StartingPoint } from '../../rules/starting-points';
import { calendarDayText } from '../amounts';

const dayOf = (day: string): Date => {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number);
  return new Date(year, month - 1, date, 12);
};

/** "Saturday 23 May"; of another year with it. */
export const weekday = (day: string, now: string): string =>
  `${format(dayOf(day), 'EEEE')} ${calendarDayText(day, now)}`;

/** "February 2028" of "2028-02". */
export const monthText = (month: string): string => format(dayOf(`${month}-01`), 'MMMM yyyy');
export const shortMonth = (month: string): string => format(dayOf(`${month}-01`), 'MMM');

const days = (n: number): string => (n === 1 ? '1 day' : `${n} days`);

export const dueTitle = ({ kind, unsure }: Pick<Due, 'kind' | 'unsure'>, code: string): string => {
  switch (kind) {
    case 'leave':
      return `${code} must leave`;
    case 'proof':
      return `${code}: proof of disposal`;
    case 'walk':
      return 'Walk along the containers';
    case 'look':
      return `Look at ${code}`;
    case 'move-excess':
      return unsure ? 'Perhaps too much beside the work' : 'Too much beside the work';
  }
};

type When = { readonly today: string; readonly now: string; readonly both: boolean };

/** By when, or since when; with the later day too where it is asked for, or has not passed when the careful one has. */
export function dueWhen({ day, lastDay, daysLeft }: Due, { today, now, both }: When): string {
  const careful = weekday(day, now);
  const over = daysLeft < 0;
  const told = over ? `Was due by ${careful}` : daysLeft === 0 ? `Today, ${careful}` : `By ${careful}`;
  if (lastDay === day || (!both && (!over || lastDay < today))) return told;
  const other = lastDay === today ? 'today' : calendarDayText(lastDay, now);
  return `${told}. By the longer count ${other}`;
}

/** What the days of each kind count from. */
export const countsFrom: Readonly<Record<Due['kind'], string>> = {
  leave: 'The first waste in it',
  proof: 'The day it left',
  walk: 'The last walk, or the first waste since',
  look: 'When it was last seen, or its first waste',
  'move-excess': 'The day on which the limit beside the work was passed',
};

export const dueWords = {
  title: 'Dates and amounts',
  second: 'What must be done by when, and how much there is',
  rowSecond: 'Last days, waste of the month, calendar file',
  dates: 'By the calendar',
  none: 'No last day runs.',
  days: (n: number) => (Math.abs(n) === 1 ? 'day' : 'days'),
  /** Days over the end are told by the words beside them, never by a minus. */
  count: (n: number) => String(Math.abs(n)),
  open: 'Open the container',
  code: (code: string | undefined) => code ?? '?',
  walk: 'Walk along the containers',
  lost: 'This is not due any more.',
  brought: 'The day it was brought to the store',
  doubted: 'Since when nobody knows what is in it',
  notEntered: {
    leave: 'Storage time not entered',
    proof: 'Time for proofs not entered',
  },
  stands: {
    leave: (code: string, n: number, more: number) =>
      `Waste in ${code} has stood ${days(n)}${more > 0 ? `, and ${more} more stand` : ''}. `,
    proof: (code: string, n: number, more: number) =>
      `${code} left ${n === 0 ? 'today' : `${days(n)} ago`}, no proof yet${more > 0 ? `; ${more} more` : ''}. `,
  },
  comparison: ({ value, unit, cite }: StartingPoint) => `For comparison: ${value} ${unit} (${cite}).`,
  noLimit: 'No limit entered',
  enter: 'Enter it',
  // One date
  both: {
    from: 'Counted from',
    limit: 'Days that are allowed',
    single: 'Last day',
    careful: 'Last day, the careful one',
    last: 'Last day by the longer count',
    left: 'Left to the careful one',
    over: 'Over the careful one',
    carefulHow: (from: string, n: number) => `${from} is day 1: ${from}\u00a0+\u00a0${n}\u00a0−\u00a01`,
    lastHow: (from: string, n: number) => `${from} is day 0: ${from}\u00a0+\u00a0${n}`,
    oneHow: (from: string, n: number) => `${from}\u00a0+\u00a0${n}`,
    said: (who: string, day: string) => `${who}, ${day}`,
    careful0: 'Nobody has said: the careful number',
    why: 'Rules say “no more than so many days” and not how they are counted. Whoever keeps the earlier day keeps both.',
    unsure: 'By what is read off the vessels it may be over. Then the days run.',
  },
  toContainer: (code: string) => `Container ${code}`,
  toRule: 'The local rule',
  toWalk: 'To the walk',
  file: 'File the proof',
  // Amounts
  amounts: 'How much',
  month: (month: string) => `Waste of ${month}`,
  onSite: 'Waste on site',
  nearWork: 'Beside the work',
  nearWorkEmpty: 'Nothing stands there',
  nearWorkOf: (limit: string) => `Limit ${limit}`,
  atLeast: (n: number) => `At least: ${n === 1 ? '1 has' : `${n} have`} no mass`,
  against: (limit: string) => `Limit ${limit}`,
  reference: (limit: string) => `No limit entered. For comparison: ${limit}`,
  noReference: 'No limit entered',
  standing: {
    over: 'Over the limit',
    'may be over': 'May be over the limit',
    near: 'Near the limit',
    under: 'Under the limit',
    'not determined': 'Not determined',
  },
  /** What to do about an amount on Today. */
  amountDo: {
    month: {
      over: 'Ask your authority what follows.',
      'may be over': 'Weigh what was read on a vessel.',
      near: '',
      'not determined': 'Some of it has no mass.',
    },
    'on-site': {
      over: 'Have some of it fetched.',
      'may be over': 'Weigh it, or have some of it fetched.',
      near: '',
      'not determined': 'Some of it has no mass.',
    },
  } satisfies Record<AmountNear['of'], Record<AmountNear['standing'], string>>,
  all: 'Month by month',
  allSecond: 'The last twelve, what is counted and why not',
  kept: 'Records',
  keptThrough: (day: string) => `Kept through ${day}`,
  keptOver: (day: string) => `Had to be kept through ${day}. Nothing is thrown away here.`,
  keptOpen: 'How long they are kept is not entered: nothing may be thrown away',
  keptOf: (code: string) => `${code}, gone`,
  // Month
  monthsTitle: 'Month by month',
  monthsSecond: 'Waste that its month counts',
  plotTitle: 'Waste counted, month by month',
  plotSummary: (most: string, month: string) => `The most in a month was ${most} kg, in ${month}.`,
  plotMonth: 'month',
  plotWaste: 'waste counted',
  plotLikely: 'as weighed or worked out',
  plotHigh: 'high end',
  plotLimit: 'own limit',
  counted: 'Counted',
  notCounted: 'Not counted',
  nothing: 'No waste was logged for this month.',
  lacks: (what: readonly string[]) => `Not determined ${what.join(', nor ')}: it counts.`,
  noMass: 'no mass',
  category: 'Category',
  categories: {
    VSQG: 'Very small generator',
    SQG: 'Small generator',
    LQG: 'Large generator',
  } satisfies Record<Category, string>,
  candidate: 'Candidate, for this month alone. Your authority confirms.',
  atHigh: (category: string) => `By the high end: ${category.toLowerCase()}.`,
  foundIn: (code: string) => `${code}: found, not determined`,
  unweighed: 'What has no mass is not in it: it may be higher.',
  entered: (what: string) => `Entered: ${what}`,
  // One waste
  wasteTitle: 'Waste in its month',
  wasteOf: (what: string, month: string) => `${what}, ${month}`,
  mass: 'Mass',
  massOpen: 'Neither weighed, nor a volume with a density',
  rule: 'Rule',
  ask: 'How does its month count it?',
  saidBy: 'Who says so',
  saidByHint: 'An office, a letter, a person',
  note: 'More to it',
  sayIt: 'Write it down',
  saidThen: (who: string) => `Said by ${who}`,
  inAll: 'In all',
  inNone: 'In no container yet',
  onSiteTitle: 'Waste on site',
  onSiteSecond: 'What stands here now',
  // Beside the work
  nearTitle: 'Beside the work',
  nearThere: 'What stands there',
  nearNotEntered: 'The local rules know no such place',
  nearUnknown: 'Contents not known: how much it is may be read on it',
  nearMove: 'Tap one to say that it was brought to the store.',
  // Calendar
  calendar: 'Dates as a calendar file',
  calendarSecond: 'For the calendar of this phone, or of anybody you give it to',
  calendarNone: 'No last day runs: there is nothing to put into a calendar.',
  calendarIn: (n: number) => (n === 1 ? '1 day is in the file' : `${n} days are in the file`),
  calendarAll: 'Make the calendar file',
  calendarMaking: 'Making the file …',
  calendarSave: 'Save the file',
  calendarHow:
    'It is made on this phone; no network is used. What a calendar does with it is up to that calendar: some send it to a server.',
  calendarAgain:
    'Read in a newer file and the dates move along. What is done or gone stays in the calendar until you delete it there.',
  calendarCareful: 'Each day is the careful one, the earlier of two. The calendar calls some days before.',
  calendarFault: 'The file could not be made. Nothing is lost. Try again.',
  calendarNotHere:
    'A part of Leesbook that makes calendar files is not on this phone yet. Open Leesbook once with a network, then make it again.',
  calendarFile: (day: string) => `due-days-${day}.ics`,
  calendarName: (workshop: string, invented: boolean) =>
    `${invented ? 'Invented: ' : ''}${workshop}, due days`,
  calendarTitle: (title: string, invented: boolean) => (invented ? `Invented: ${title}` : title),
  calendarText: (from: string, limit: string, lastDay: string | null) =>
    [
      `Counted from ${from}: ${limit}.`,
      lastDay === null ? '' : `The careful last day. By the longer count ${lastDay}.`,
      'For planning; your authority decides.',
    ]
      .filter(Boolean)
      .join('\n'),
  calendarLimit: (n: number, stated: boolean) => `${days(n)}${stated ? '' : ', a careful number'}`,
} as const;

export const amountTitle = ({ of, standing }: Pick<AmountNear, 'of' | 'standing'>): string => {
  const what = of === 'month' ? 'Waste of this month' : 'Waste on site';
  switch (standing) {
    case 'over':
      return `${what}: over the limit`;
    case 'may be over':
      return `${what}: may be over`;
    case 'near':
      return `${what}: near the limit`;
    case 'not determined':
      return `${what}: not determined`;
  }
};

export type Counted = CountingSaid['counted'];

/** What may be said of a waste, in our own words; the rule stands under each. */
export const countedWords: Readonly<Record<Counted, string>> = {
  counted: 'Counted, as any waste',
  'straight-into-neutralisation': 'Straight into neutralisation',
  'straight-into-water-treatment': 'Straight into waste water treatment',
  'straight-into-enclosed-unit': 'Straight into an enclosed unit',
  'recycled-at-once': 'Recycled here at once',
  'residue-of-counted': 'Left of treating waste that was counted',
  'reused-on-site': 'Reclaimed and used again here',
  'under-rules-of-its-own': 'Under rules of its own',
  'not-hazardous': 'Not hazardous',
};

/** Until when records are kept; null while nobody has said for how long. */
export function keptText(kept: Retention | null, now: string): string {
  if (kept === null) return dueWords.keptOpen;
  const day = calendarDayText(kept.keepThrough, now);
  return kept.daysLeft < 0 ? dueWords.keptOver(day) : dueWords.keptThrough(day);
}
