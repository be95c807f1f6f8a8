/** Words of checklists, stops and clearances that do not stand in the lists themselves. */
import { format } from 'date-fns';
import type { DecimalSign } from '../../quantities/format';
import type { Item } from '../../safety/checklist-item';
import type { RunFailure } from '../../safety/checklist-run';
import type { Answered } from '../../safety/run-schema';
import { failureWords as runFailureWords, safetyWords, verdictWords } from '../../safety/words';
import { unbroken } from '../../ui/figure-value';
import type { Performed } from '../shell';
import { failureWords, numberFault, refusalWords } from '../words';

const thin = '\u2009';

/** First letter large, but "pH" stays. */
export const sentence = (text: string): string =>
  /^[a-z](?![A-Z])/.test(text) ? text.charAt(0).toUpperCase() + text.slice(1) : text;

export const written = (value: string, unit: string | undefined, sign: DecimalSign): string => {
  const digits = value.replace('.', sign).replace('-', '−');
  if (unit === undefined) return digits;
  return unit === 'pH' ? `pH${thin}${digits}` : `${digits}${thin}${unit}`;
};

type Range = {
  readonly min?: string | undefined;
  readonly max?: string | undefined;
  readonly unit?: string | undefined;
};

/** @example rangeText({ min: '5', max: '30', unit: '°C' }, '.') // '5 to 30 °C' */
export function rangeText({ min, max, unit }: Range, sign: DecimalSign): string {
  if (min !== undefined && max !== undefined)
    return `${written(min, undefined, sign)} to ${written(max, unit, sign)}`;
  if (min !== undefined) return `${written(min, unit, sign)} or more`;
  return max === undefined ? 'no limit' : `${written(max, unit, sign)} or less`;
}

/** "Wanted: 5 to 30 °C." Shown only after a number was entered. */
export const wanted = (range: Range, sign: DecimalSign): string =>
  range.min === undefined && range.max === undefined ? '' : `Wanted: ${rangeText(range, sign)}.`;

const given = (
  { kind, answer, unit }: Pick<Answered, 'kind' | 'answer' | 'unit'>,
  sign: DecimalSign,
): string => {
  if (answer === 'not-applicable') return safetyWords.notApplicable;
  return kind === 'reading' ? written(answer, unit, sign) : sentence(answer);
};

/** What was said, with its reason. */
export const saidWords = (
  one: Pick<Answered, 'answer' | 'unit' | 'reason'> & { readonly kind: string },
  sign: DecimalSign,
): string => {
  const answer = given({ ...one, kind: one.kind === 'reading' ? 'reading' : 'choice' }, sign);
  return one.reason === undefined ? answer : `${answer}: ${one.reason}`;
};

/** "What goes in? Not sure." and "Colour above the liquid: brown." @param answer with a capital where it stands alone */
export const askedAndSaid = (ask: string, answer: string): string =>
  `${ask}${ask.endsWith('?') ? '' : ':'} ${answer}.`;

/** A line that is to be confirmed, and is not so. */
export const notSo = (ask: string): string => `Not so: ${ask}`;

/** What stopped, with its figure. */
export function stopTitle(item: Item, answered: Answered, sign: DecimalSign): string {
  if (answered.kind === 'confirm') return `${notSo(item.ask)}.`;
  return askedAndSaid(item.ask, given(answered, sign));
}

/** A line that was kept with an answer, as a sentence of its own. */
const asSentence = (text: string | undefined): string =>
  text === undefined ? '' : `${sentence(text)}${/[.?!]$/.test(text) ? '' : '.'}`;

/** Why it stopped, a reading with what was wanted, a place with what is wrong there. */
export const stopWhy = (item: Item, answered: Answered, sign: DecimalSign): string =>
  [
    item.kind === 'reading' ? wanted(answered, sign) : asSentence(answered.reason),
    asSentence(item.kind === 'reading' ? answered.from : answered.byApp),
    item.why,
  ]
    .filter(Boolean)
    .join(' ');

/** Why nothing was written. */
export const performedFault = (performed: Performed & { ok: false }): string =>
  'failure' in performed ? failureWords(performed.failure) : refusalWords(performed.refusal);

export const answerFault = (failure: RunFailure): string =>
  failure.code === 'not-a-reading' ? numberFault(failure.failure) : runFailureWords[failure.code];

export const dayOf = (iso: string): string => format(new Date(iso), 'EEE d MMM');

/** @example taskLine('Filter the leach liquor', 'B-18', 'Hood 1') */
export const taskLine = (title: string, code: string | undefined, place?: string): string =>
  [title, code && unbroken(code), place].filter(Boolean).join(', ');

export const words = {
  position: (at: number, of: number) => `${at} of ${of}`,
  answers: 'Answers',
  yes: 'Yes, I looked: it is so',
  no: safetyWords.no,
  undo: (answer: string) => `Undo: ${answer}`,
  backOne: 'Back one',
  back: 'Back',
  pause: 'Pause',
  why: 'Why',
  whyAndSource: 'Why, and source',
  source: 'Source',
  keep: 'Keep',
  reading: {
    none: '\u2007',
    enter: (figure: string) => `Enter ${figure}`,
    clear: 'Clear',
    decimal: 'decimal sign',
    backDigit: 'Back one digit',
    pad: 'Number pad',
    up: 'One more of the last digit',
    down: 'One less of the last digit',
    last: (figure: string) => `last ${figure}`,
  },
  reason: {
    title: 'Why is it so?',
    said: askedAndSaid,
    other: 'Another reason',
    notApplicable: 'Why does it not apply?',
  },
  who: {
    title: 'Who is it?',
    other: 'Someone else',
    when: (name: string) => `When does ${name} call?`,
    hour: 'Hour',
    hourMissing: 'Write the hour, such as 11:15.',
  },
  personSecond: 'A clearance holds for one person only.',
  required: {
    title: 'First the walk round',
    second: (title: string) => `${title} must be in date before this list.`,
    after: 'Then this list goes on by itself.',
    notNow: 'Not now',
  },
  resume: {
    stillTrue: safetyWords.stillTrue,
    yes: 'Yes, still true. Go on.',
    askAgain: 'No. Ask these again.',
    goOn: 'Go on',
    restartTitle: 'Begin this list again',
    tooOld: (minutes: number) => `The last answer is ${minutes} min old, and the first is too old to count.`,
    otherList: 'The list was changed since. It begins with its first question.',
    otherPerson: (name: string) => `${name} answered so far. A clearance holds for one person only.`,
    nobody: 'Somebody else',
    restart: 'Begin again',
  },
  changed: {
    title: 'This list has changed since you last went through it',
    read: 'I have read it. Begin.',
    new: 'New question',
    newOwn: 'New question of this workshop',
    gone: 'Not asked any more',
    before: (ask: string) => `Before: ${ask}`,
    range: (now: string, before: string) => `Wanted: ${now}. Before: ${before}`,
  },
  later: {
    task: { during: 'While it runs', after: 'After it' },
    row: (when: 'during' | 'after', ask: string) =>
      when === 'during' ? `Asked while it runs: ${ask}` : `Asked after it: ${ask}`,
    notYet: 'Not answered yet',
    notAsked: (asks: readonly string[]) => `Not answered yet: ${asks.join('; ')}.`,
    notNow: 'Not now',
    doNow: 'What to do now',
    toStep: 'To the step',
    gone: 'This question is not in the list any more.',
    heading: 'While it ran and after it',
  },
  late: {
    line: (when: string) => `Late: the step began at ${when}`,
    title: 'Written down as late',
    second: 'It clears nothing. The step stays marked, and the list stands beside it.',
    stopped: 'It ended in a stop, and is written down so.',
    began: 'The step began',
    gone: 'The list was gone through',
    answers: 'What was answered',
  },
  passed: (name: string, hour: string) => `${name} was to call at ${hour}. That has passed.`,
  complete: {
    title: 'Every question is answered',
    second: 'The clearance is given when the list is written down.',
    write: 'Write the list down',
  },
  already: {
    second: 'Without a clearance: it stays marked in the record.',
    when: 'When did it begin?',
    day: 'Day',
    hour: 'Hour',
    whenFault: 'Write a day and an hour that have been.',
    note: 'What happened',
    write: 'Write it down',
  },
  clearance: {
    batch: 'Batch',
    container: 'Container',
    place: 'Place',
    placeUnknown: 'not written down',
    clearedIt: 'cleared it',
    someone: 'Somebody',
    second: 'knows of it',
    ends: { batch: 'batch', container: 'container', place: 'place', acid: 'acid' },
    checks: (hour: string) => `checks at ${hour}`,
    until: (day: string | null) => (day === null ? safetyWords.until : `${safetyWords.until} ${day}`),
    since: (day: string | null) => (day === null ? 'since' : `since ${day}`),
    putOff: 'Put off',
    showAnswers: 'Show answers',
    hideAnswers: 'Back to the tag',
    answersTitle: 'What was answered',
    ranOut: 'The clearance has run out.',
    doesNotHold: 'This clearance does not hold.',
    goThrough: 'Go through the list again',
    begun: 'It has begun.',
    toBatch: 'To the batch',
    goOn: 'Go on',
    toList: (title: string) => `Go on: ${title}`,
    lost: 'This clearance is not in the record.',
    toToday: 'To Today',
    toTreatment: 'To the treatment',
    toSilverCheck: 'To the silver check',
    askedLater: 'Asked while it runs and after',
    stopped: 'The list ended in a stop.',
    stoppedAnswer: verdictWords.stops,
    quick: 'answered quickly',
  },
  step: {
    title: 'Start a step',
    likely: 'Next in order stands below.',
    first: (title: string) => `First: ${title}`,
    questions: (count: number) => `${count} questions first`,
    paused: (at: number, of: number) => `Paused at question ${at} of ${of}`,
    answered: 'Every question answered, not written down',
    stopped: 'Stopped. Make it right, then go on.',
    cleared: (hour: string) => `Cleared until ${hour}`,
    runs: (since: string) => `Runs since ${since}`,
    others: 'Other steps',
    already: 'Begun already, without its list',
    alreadySecond: 'Write it down. It stays marked.',
    noBatch: 'This batch is not in the record.',
    noContainer: 'This list is gone through for one container. Choose it first.',
    toWalk: 'To the walk',
    toContainers: 'Choose the container',
    noList: 'There is no such checklist.',
    toBatches: 'To the batches',
    back: 'Back to the batch',
  },
} as const;
