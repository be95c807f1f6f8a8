/** The words for what the checklist rules tell. Codes stay in the rules; this is the only file here with sentences. */

import type { RunFailure } from './checklist-run';
import type { Status } from './cited';
import type { Answered } from './run-schema';

export const safetyWords = {
  lookThenTap: 'Look at the thing, then tap.',
  stop: 'STOP',
  makesItRight: 'What makes it right',
  stillTrue: 'Still true?',
  /** @param what such as ['batch', 'place'] */
  endsIf: (what: readonly string[]) =>
    `It ends with another ${[...what, 'person'].join(', ').replace(/, (?=[^,]*$)/, ' or ')}. A cleared list is not proof.`,
  caution: 'The safety data sheet, local rules and a licensed practitioner come before this list.',
  until: 'until',
  notApplicable: 'Not applicable',
  yes: 'Yes',
  no: 'No',
} as const;

/** "You stopped at item 5, 22 min ago." */
export const stoppedAt = (number: number, minutes: number): string =>
  `You stopped at item ${number}, ${minutes} min ago.`;

export const failureWords: Readonly<Record<RunFailure['code'], string>> = {
  'wrong-kind': 'That is not an answer to this question.',
  'no-such-answer': 'That answer is not on the list.',
  'not-a-reading': 'Enter a number.',
  'impossible-reading': 'No meter shows that. Read it again, then key it in.',
  'not-applicable-refused': 'This item applies every time.',
  'only-worked-out': 'The app works this out. Nobody can tap it.',
  'another-station': 'The app has you at another place. Choose the place first.',
  'reason-missing': 'Say why.',
  'name-missing': 'Say who.',
  'time-missing': 'Say when they call.',
  'run-stopped': 'Make it right first, then answer again.',
  'run-complete': 'Every question has its answer.',
  'not-complete': 'Finish the questions before the step first.',
  'not-stopped': 'There is no stop here.',
  'nothing-to-undo': 'There is nothing to take back.',
  'no-such-item': 'That question is not asked now.',
  interrupted: 'You were away. Look again.',
  'out-of-date': 'The first answers are too old. Begin again.',
};

export const verdictWords: Readonly<Record<Answered['verdict'], string>> = {
  'in-order': 'in order',
  noted: 'not in order, with a reason',
  stops: 'stopped',
  'not-applicable': 'not applicable',
};

export const statusWords: Readonly<Record<Status, string>> = {
  verified: 'seen in a copy of the source',
  memory: 'from memory, to be checked',
  'common practice': 'common practice',
  reasoned: 'reasoned from the source',
};
