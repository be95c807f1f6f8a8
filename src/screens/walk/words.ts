/** Words of the walk along the containers, and of what it finds. */
import { sentence } from '../checklist/words';

const of = (n: number, one: string, many: string): string => (n === 1 ? `1 ${one}` : `${n} ${many}`);

export const walkWords = {
  inOrder: 'As it should be',
  wrong: 'Something is wrong',
  cannotSee: 'Cannot see it',
  pause: 'Pause',
  looks: 'What to look at',
  back: 'Back',
  stands: {
    place: 'Stands',
    tray: 'Tray',
    holds: 'Holds',
    unknown: 'not written down',
    of: (held: string, capacity: string) => `${held} of ${capacity}`,
  },
  damaged: (day: string) => `Damaged since ${day}.`,
  stillOpen: (ask: string, answer: string) => `Found before, still open: ${ask} ${sentence(answer)}.`,
  undo: (what: string) => `Undo: ${what}`,
  /** Why an entry was withdrawn that was taken back at once. */
  takenBack: 'Taken back at once: tapped by mistake.',
  cannotSeeTitle: 'Why can it not be seen?',
  cannotSeeReasons: [
    'not where it should be',
    'behind others, out of reach',
    'somebody works with it',
    'place locked or barred',
  ],
  late: {
    second: 'Each container is written down for the hour at which it was seen.',
    go: 'Go on',
    missing: 'Write the day and hour of the walk.',
    line: (when: string) => `Written down later: made ${when}`,
  },
  which: 'What is wrong?',
  none: 'No container to look at',
  noneSecond: 'Nothing stands on the shelf that holds waste, is damaged or is in doubt.',
  oneSeen: 'It is looked at',
  toToday: 'To Today',
  found: {
    title: 'What was found',
    note: 'More to it',
    write: 'Write it down, go on',
    more: 'Something else is wrong',
    photos: 'Photos of it',
  },
  stop: {
    write: 'Write it down',
    goOn: 'Go on with the walk',
    goOnSecond: 'It stays open until somebody says what was done.',
  },
  all: {
    title: 'Everything is looked at',
    second: 'The walk is done when it is written down.',
    write: 'Write the walk down',
  },
  end: {
    seen: (n: number) => of(n, 'container seen', 'containers seen'),
    notSeen: (n: number) => `${n} not seen`,
    found: (n: number) => (n === 0 ? 'nothing found' : `${n} found`),
    next: 'Next walk',
    by: (day: string) => `by ${day}`,
    every: (days: number, stated: boolean) =>
      `Every ${days === 1 ? 'day' : `${days} days`}: ${stated ? 'your local rule' : 'the careful one; your authority’s is not entered'}.`,
    lost: 'This walk is not in the record.',
    goOn: (title: string) => `Go on: ${title}`,
    caution: 'A walk is no proof that all is in order.',
  },
  today: {
    title: 'Walk along the containers',
    underWay: (seen: number, all: number) => `Under way: ${seen} of ${all} seen. Go on.`,
    by: (day: string) => `Next by ${day}`,
    since: (day: string) => `Was due by ${day}`,
    days: (n: number) => (n === 1 ? 'day' : 'days'),
    notSeen: (code: string) => `${code} was not seen`,
    look: 'Look at it',
    lookBy: (day: string) => `Look at it by ${day}`,
    lookNow: (why: string, by: string) => `${sentence(why)}. ${by}.`,
  },
} as const;
