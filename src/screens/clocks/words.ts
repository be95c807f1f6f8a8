/** Words of clocks: what each is for, what to do now, how it ends. No page and no notice promises more than the phone keeps. */

import { phoneOf, stepsRunning } from '../../ledger/clock-links';
import type { RunningClock } from '../../ledger/clocks-running';
import type { ClockOf, ClockStopped } from '../../ledger/entries/clocks';
import { codeOfBatch } from '../../ledger/put-away';
import type { State } from '../../ledger/state';
import { unbroken } from '../../ui/figure-value';
import { momentText } from '../amounts';
import { stepWords } from '../batches/words';

/** What it is, by when or since when, and what to do now. */
export type Says = { readonly title: string; readonly when: string; readonly act: string };

/** "…, B-18" where it belongs to a batch. */
const ofBatch = (text: string, code: string | undefined): string =>
  code === undefined ? text : `${text}, ${unbroken(code)}`;

const lookTitle = (steps: readonly string[], code: string | undefined): string => {
  const [step] = steps;
  const what = step === undefined ? undefined : (stepWords[step] ?? step).toLowerCase();
  if (code === undefined) return 'Look again';
  return what === undefined || steps.length > 1
    ? `Look at ${unbroken(code)}`
    : `Look at ${what} ${unbroken(code)}`;
};

const ring = (name: string, phone: string | null): string =>
  phone === null ? `Ring ${name}.` : `Ring ${name}, ${phone}.`;

export function clockSays(state: State, { clock, overdue }: RunningClock, now: string): Says {
  const { of, batchId, due, name } = clock.body;
  const code = codeOfBatch(state, batchId);
  const hour = momentText(due, now);
  const by = (word: string): string => `${overdue ? 'Since' : word} ${hour}.`;
  switch (of) {
    case 'rinse':
      return overdue
        ? {
            title: 'Rinse: its time is over',
            when: by(''),
            act: 'Longer if it still hurts. A doctor must see it.',
          }
        : { title: 'Rinse with water', when: by('Until'), act: 'Lids open, keep the water running.' };
    case 'ammonia-silver':
      return {
        title: ofBatch('Ammonia and silver: destroy it', code),
        when: by('By'),
        act: overdue
          ? 'Wet and clear: acid in now. Dark or dry: hands off, open the card.'
          : 'Acid in, never let it dry.',
      };
    case 'check-in':
      return {
        title: `${name ?? 'Somebody'} checks that all is well`,
        when: by('At'),
        act: overdue
          ? `${ring(name ?? 'them', clock.body.phone ?? phoneOf(state, name))} If it is you who is waited for, tell them that you are well.`
          : 'Be where you can be reached.',
      };
    case 'purge':
      return {
        title: ofBatch(overdue ? 'Air clearing: its time is over' : 'Air clearing', code),
        when: by('Until'),
        act: overdue
          ? 'Fan on. Look from the door first: brown, stay out. No brown is no proof, a meter is.'
          : 'Fan on, stay out.',
      };
    case 'look':
      return {
        title: lookTitle(stepsRunning(state, batchId), code),
        when: by('Due'),
        act: overdue ? 'Go and look.' : 'Then look, and say so here.',
      };
    default:
      return of satisfies never;
  }
}

/** What ends a clock as it should. */
export const doneWords: Readonly<Record<ClockOf, string>> = {
  rinse: 'The rinse is over',
  'ammonia-silver': 'It is destroyed',
  'check-in': 'They rang: all well',
  purge: 'The time is over',
  look: 'I looked',
};

/** What ends it before its time, or for nothing. */
export const notNeededWords: Readonly<Record<ClockOf, string>> = {
  rinse: 'Started for nothing',
  'ammonia-silver': 'No such test was made',
  'check-in': 'Nobody needs to ring',
  purge: 'Not needed',
  look: 'Not needed',
};

const endedHow: Readonly<Record<ClockStopped['how'], string>> = { done: 'Done', 'not-needed': 'Not needed' };

export const clocksWords = {
  title: 'Clocks',
  second: (n: number) => (n === 0 ? 'None runs.' : n === 1 ? 'One runs.' : `${n} run.`),
  running: 'Clocks that run',
  none: 'A clock is started by what needs it: a rinse, a spot test, a person who rings, a next look at a step.',
  overdue: 'Overdue',
  more: (n: number) => `And ${n} more.`,
  end: 'End this clock',
  toClocks: 'All clocks',
  toToday: 'To Today',
  toCard: 'Open the card',
  ring: (name: string) => `Ring ${name}`,
  them: 'them',
  message: 'Send where you are',
  goThrough: 'Go through the list',
  nextLook: 'Next look',
  lost: 'This clock is not in the record.',
  ended: (how: ClockStopped['how'], when: string) => `${endedHow[how]}, ${when}`,
  undo: 'Undo: it still runs',
  undoReason: 'Ended by mistake: it still runs.',
  left: 'left',
  sinceBig: (when: string) => `since ${when}`,
  background:
    'A phone may stop a web page that is not in view, and this clock with it. Set a kitchen timer as well, or ask a person.',
  battery: (percent: string) => `Battery ${percent} %`,
  batterySecond: 'Clocks and calls need it. Plug the phone in, or give the time to a person.',
  tell: 'Tell me when it is due',
  telling: {
    on: 'On, while this page is alive. Tap to turn it off.',
    off: 'Off. Tap: the phone asks whether it may show notices.',
    refused: 'This phone does not let this page show notices. Its settings can.',
    unavailable: 'This browser has no notices. What is overdue shows when you open the book.',
  },
  invented: (title: string) => `Invented workshop: ${title}`,
} as const;

export const lookWords = {
  title: (code: string) => `Next look at ${code}`,
  second: 'When will somebody look again?',
  awaited: (when: string) => `A look is due ${when}. A new one takes its place.`,
  choices: [
    { minutes: 15, label: '15 min' },
    { minutes: 60, label: '1 h' },
    { minutes: 240, label: '4 h' },
  ],
  until: (when: string) => `at ${when}`,
  hour: 'Another hour',
  hourMissing: 'Write the hour, such as 11:15.',
  atHour: 'Look at this hour',
  replaced: 'A new time was set.',
  toBatch: 'Back to the batch',
} as const;

export const tellWords = {
  title: 'Tell somebody',
  second: 'Read it first. It leaves the phone only when you send it.',
  text: 'The message',
  send: 'Send it',
  sms: (name: string) => `Text message to ${name}`,
  smsOpen: 'Text message',
  copy: 'Copy it',
  copied: 'Copied. Put it into a message.',
  notCopied: 'It could not be copied. Read it aloud, or write it by hand.',
  notSent: 'It was not handed over. Try a text message, or copy it.',
  back: 'Back to the tag',
  noPlace: 'The workshop is not described: write where you are into the message.',
} as const;

export const rinseWords = {
  start: (minutes: number) => `Start ${minutes} min`,
  until: (when: string) => `Rinse until ${when}. Longer if you can.`,
  over: (when: string) => `Its time is over since ${when}. Longer if it still hurts.`,
  inView: 'Keep this page in view. A phone may stop it otherwise: set a kitchen timer as well.',
  stop: 'End this clock',
  notWritten: 'The record could not be written. The clock runs here all the same.',
  writeAgain: 'Write it into the record',
} as const;

export const clearanceClockWords = {
  part: 'Who knows of it',
  checks: (name: string, when: string) => `${name} checks at ${when}`,
  knows: (name: string) => `${name} knows of it`,
  rang: doneWords['check-in'],
  rangAt: (when: string) => `Rang: all well, ${when}`,
  notNeededAt: (when: string) => `Not needed, ${when}`,
  sinceWhen: (when: string) => `Since ${when}. Ring them, or tell them that you are well.`,
  inTime: 'Answer when it rings, then say so here.',
  message: 'Send where, what and until when',
  messageSecond: 'A message ready to send: what to do if you do not answer',
  look: 'Next look',
  lookSecond: (code: string) => `Set a clock for ${code}`,
} as const;
