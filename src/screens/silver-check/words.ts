/** Words of the test for silver that do not stand with its looks in the reference data. */
import type { Look, Seen, SilverOutcome } from '../../safety/silver-check';

export const silverWords = {
  part: 'Silver checks',
  title: 'Silver check',
  begin: 'Check for silver',
  beginSecond: 'Chloride, ammonia, acid: look by look',
  goOn: 'Go on with the silver check',
  goOnSecond: 'What was seen is kept',
  ammoniaIn: 'Ammonia is in the well',
  noBatch: 'This batch is not in the record.',
  noCheck: 'This silver check is not in the record.',
  position: (at: number, of: number) => `${at} of ${of}`,
  task: (code: string) => `Silver check, ${code}`,
  pause: 'Pause',
  backOne: 'Back one',
  breakOff: 'Break off',
  acidNow: 'Acid in now',
  again: 'Not acid yet. More dilute HCl, drop by drop. Then look again.',
  noClock: (due: string) => `The clock could not be written down. Acid in by ${due} all the same.`,
  left: (minutes: number) => (minutes === 1 ? '1 min left' : `${minutes} min left`),
  leftSecond: (due: string) => `Ammonia on silver: acid in by ${due}`,
  lessThanOne: 'Less than 1 min left',
  over: (due: string) => `Overdue since ${due}`,
  overSecond: 'Still wet? Acid in now. Dried or dark? Hands off, open the card.',
  card: 'Card: old ammonia and silver',
  gate: {
    title: (list: string) => `First: ${list}`,
    second: 'The test goes on when its list is cleared and begun.',
    holds: (until: string) => `Cleared until ${until}. Begin it there.`,
    questions: (count: number) => `${count} questions, then it leads back here`,
    endHere: 'End without ammonia',
  },
  ammonia: {
    title: 'Ammonia goes in',
    look: 'Dilute HCl and salt water stand in reach, open. The plate is plastic, the sample cold.',
    why: 'Ammonia on silver must not age, dry or warm. It is destroyed in the same go.',
    now: 'Ammonia goes in now',
    nowSecond: (minutes: number) => `The clock starts: ${minutes} min`,
    endHere: 'No ammonia. End here.',
  },
  overdue: {
    title: (minutes: number) => `${minutes} min are over. Acid in now.`,
    why: 'Ammonia on silver turns explosive as it ages. Chloride and acid end that while it is wet.',
    oldTitle: 'Over two hours old. Hands off first.',
    oldWhy:
      'Published ceiling for silver in ammonia: 2 h. A dark film or a dry ring can go off at a touch or a rinse.',
    doors: 'What makes it right',
    acid: 'Wet, no film: acid goes in now',
    card: 'Dried or dark: open the card',
  },
  verdict: {
    working: 'What was seen, and what it speaks for',
    why: 'Why it is open',
    unlooked: 'Not looked at',
    next: 'What to do now',
    waste: 'Now its waste',
    wasteSecond: 'Then the test is written down',
    goOn: 'Go on with the test',
    standing: 'By what is written the ammonia is not destroyed. Dilute HCl now, to pH 3 or less.',
    stripAgain: 'Look at the strip again',
  },
  waste: {
    title: 'The waste of the test',
    second: 'Into a jar of its own kind, never into a can of nitrate liquor.',
    sample: 'Sample',
    drops: 'Drops of everything that went in',
    dropsWhole: 'Write a whole number of drops.',
    worked: 'Sample and drops',
    take: (volume: string) => `Take ${volume}`,
    volume: 'Volume of it',
    volumeHint: 'Acidified. As read, or worked out above.',
    chlorideHint: 'Blank, known silver and the second well. Empty: there is none.',
    keep: 'Keep the test',
    without: 'Keep the test without its waste',
    withoutSecond: 'Not logged, or logged elsewhere',
    happened: 'It is in already. Write it down.',
  },
  check: {
    sample: 'sample',
    wastes: 'Waste of the test',
    noWaste: 'No waste is logged with this test.',
    logWaste: 'Log it, where it was not logged elsewhere',
    entry: 'Its entry in the history',
    toBatch: 'To the batch',
  },
} as const;

export const outcomeTitle: Readonly<Record<SilverOutcome, string>> = {
  silver: 'Silver confirmed',
  'not-silver': 'Not silver',
  'not-conclusive': 'Not conclusive',
};

export const outcomeSecond: Readonly<Record<SilverOutcome, string>> = {
  silver: 'White curd with chloride, gone in ammonia, back in acid: all three fit.',
  'not-silver': 'No silver that an eye can find. That is no measurement.',
  'not-conclusive': 'It says neither that there is silver nor that there is none.',
};

/** What is done next, whatever else the looks ask for. */
export const outcomeNext: Readonly<Record<SilverOutcome, readonly string[]>> = {
  silver: [
    'This liquid still holds silver. Where it was cemented, cementation is not done: look at the copper, then test again.',
    'Keep it as silver-bearing. Nothing with ammonia goes to it.',
  ],
  'not-silver': ['How much is left, a laboratory says. Where a limit hangs on it, have it measured.'],
  'not-conclusive': [
    'Repeat it: clean plate, distilled water, a blank, and a known silver solution beside it.',
    'Not conclusive twice? Ask a laboratory.',
  ],
};

const speaksWords = {
  fits: 'fits silver',
  against: 'speaks against silver',
  open: 'leaves it open',
  nothing: 'says neither',
} as const;

/** Looks at plate, water and reagents: they make a test good, and say nothing of silver. */
const conditions: ReadonlySet<string> = new Set(['before', 'blank', 'known', 'alkaline', 'strip']);

export const speaksText = ({ look }: Look, { speaks }: Seen): string =>
  speaks === 'fits' && conditions.has(look) ? 'in order' : speaksWords[speaks];
