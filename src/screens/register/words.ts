/** Words of the register of a period, and of checking a file. */
export const registerPageWords = {
  title: 'Register of a period',
  second: 'Every entry of a month, a quarter, a year, for an inspector',
  formSecond: 'All that happened or was written in it, with its hashes',
  which: 'Which period',
  spans: {
    'last-month': 'Last month',
    'this-month': 'This month, so far',
    'last-quarter': 'Last quarter',
    'this-quarter': 'This quarter, so far',
    'last-year': 'Last year',
    'this-year': 'This year, so far',
  },
  days: 'Other days',
  first: 'First day',
  last: 'Last day',
  dayOpen: 'Enter a day, as on a calendar.',
  wrongWay: 'The last day is before the first.',
  nothing: 'Nothing is written down yet.',
  make: 'Make the register',
  making: 'Making the register …',
  says: {
    title: 'The register is made',
    confirm: 'It is confirmed by nobody yet. The authority that asks for it decides.',
    keep: 'Save it or share it now: Leesbook keeps its hash, not the file. “Check a file” on the Record page shows later whether it is still as it was made.',
    open: 'Open it',
  },
  checkTitle: 'Check a file',
  checkSecond: 'Whether a register or paper is still as it was made',
  checkWhat:
    'Choose a register or a disposal paper, as JSON, PDF or archive. Every hash in it is worked out again on this phone; nothing is written down or sent.',
  choose: 'Choose a file',
  another: 'Choose another file',
  checking: (name: string) => `Checking ${name} …`,
  cancel: 'Leave it',
  notLoaded:
    'A part of Leesbook that checks files is not on this phone yet. Open Leesbook once with a network, then try again.',
  notChecked:
    'The file could not be checked: this phone has not enough room for it, or could not read it. Try it again, or on a computer: npm run verify.',
  whole: 'Whole',
  wrong: 'Not whole',
  unreadable: 'Not checked',
} as const;
