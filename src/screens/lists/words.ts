/** Words of the checklists as this workshop asks them, and of changing them. */
import type { Item } from '../../safety/checklist-item';
import type { OwnItem } from '../../safety/own-lists';

const questions = (n: number): string => (n === 1 ? '1 question' : `${n} questions`);

export const listsWords = {
  title: 'Checklists',
  second: 'As this workshop asks them. Ours stay; you can add to them and make ranges tighter.',
  gone: 'There is no such checklist.',
  noItem: 'This question is not in the list.',
  asIs: 'as it came',
  own: (n: number) => `${n} own`,
  tightened: (n: number) => `${n} tightened`,
  loosened: (n: number) => `${n} loosened`,
  lapsed: (n: number) => (n === 1 ? '1 change lapsed' : `${n} changes lapsed`),
  questions,
  when: {
    before: 'Before the step',
    during: 'While it runs',
    after: 'After it',
  },
  of: { container: 'Of each container', place: 'Once, of the place as a whole' },
  kind: { confirm: 'to confirm', reading: 'reading', choice: 'to choose' } satisfies Record<
    Item['kind'],
    string
  >,
  mark: { own: 'own question', tightened: 'tightened', loosened: 'loosened' },
  ours: (range: string) => `as it came: ${range}`,
  noRange: 'no limit',
  stops: 'can stop the step',
  stopsNot: 'does not stop; goes in with a reason',
  look: 'What to look at',
  answers: 'Answers',
  answerStops: 'stops',
  range: 'Wanted',
  fromApp: 'worked out by the app for each run',
  source: 'Source',
  versionOf: (version: number) => `Version ${version}`,
  lapsedTitle: 'Changes that apply no longer',
  review: 'Always in order',
  reviewRow: (times: number, orMore: boolean) =>
    `${orMore ? 'At least ' : ''}${times} times in a row. Does it still catch anything? Move it to the walk round, or leave it out.`,
  add: 'Add a question of our own',
  addSecond: 'It is marked, here and in every answer',
  change: 'Change the range',
  changeSecond: 'Tighter at any time; wider with a reason',
  drop: 'Drop this question',
  dropSecond: 'What was answered to it stays',
} as const;

export const addWords = {
  title: 'A question of our own',
  kind: 'How is it answered?',
  kinds: {
    confirm: { label: 'Looked at: it is so, or not' },
    reading: { label: 'A reading', second: 'A number from a meter, a scale, a strip' },
    choice: { label: 'One of several answers', second: 'Which glove, which colour' },
  } satisfies Record<OwnItem['kind'], { label: string; second?: string }>,
  ask: 'The question',
  askHint: 'Nine words at most.',
  look: 'What to look at',
  lookHint: 'Twelve words at most; may stay empty.',
  yes: 'The answer that is in order',
  yesHint: 'What is seen then, such as “dry to the corners”; may stay empty.',
  when: 'When is it asked?',
  of: 'What is it asked of?',
  stop: 'If it is not in order',
  stops: { label: 'It stops the step' },
  noted: { label: 'It goes in with a reason' },
  unit: 'Unit',
  lowest: 'Lowest in order',
  highest: 'Highest in order',
  limitHint: 'Empty: no limit on this side.',
  answers: 'The answers',
  answer: (n: number) => `Answer ${n}`,
  answerStops: (n: number) => `Answer ${n} stops the step`,
  moreAnswers: 'One more answer',
  twoAnswers: 'Write two answers at least.',
  reason: 'Why we ask it',
  reasonHint: 'So that nobody drops it without knowing.',
  keep: 'Add it',
} as const;

export const rangeWords = {
  title: (ask: string) => `Range: ${ask}`,
  second: (ours: string) => `As it came: ${ours}.`,
  lowest: 'Lowest',
  highest: 'Highest',
  oursAgain: 'Take ours again',
  note: 'Why',
  notAsked: 'may stay empty',
  tightened: 'Tighter than ours. It is marked “tightened”.',
  loosened: 'Wider than ours: more gets through. It is marked “loosened” wherever it is asked.',
  same: 'As it came. No mark.',
  whyMissing: 'Say why it may be wider.',
  keep: 'Keep this range',
} as const;

export const dropWords = {
  title: 'Drop this question?',
  second: 'It is not asked any more. What was answered to it stays in the record.',
  note: 'Why',
  stopped: 'It could stop the step, so say why it falls away.',
  keep: 'Drop it',
} as const;
