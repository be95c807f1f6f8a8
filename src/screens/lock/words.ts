/** Words of the lock of the screen. It promises what it does and no more. */
import { removalHours } from './locking';

const minutes = (count: number): string =>
  count === 60 ? 'one hour' : count === 1 ? 'one minute' : `${count} minutes`;

export const lockWords = {
  rowTitle: 'Screen lock',
  rowOff: 'Off',
  rowOn: (after: number) => `On, after ${minutes(after)} out of view`,

  title: 'Screen lock',
  what: 'It keeps a passer-by from reading. It does not encrypt the record: whoever can unlock the phone and knows how can read it. The phone’s own lock protects more.',
  open: 'Emergency cards and running clocks stay open without the PIN.',
  forgotten: `A forgotten PIN loses nothing: on the locked page anybody can ask to have the lock taken off, and ${removalHours} hours later it can be.`,
  minutesLegend: 'Hide the pages',
  minutes: (count: number) => `after ${minutes(count)} out of view`,
  minutesHint:
    'And whenever the app is opened anew, or in another window. A reload changes nothing: what is locked stays locked, and a page that stands open is not asked about.',
  pin: 'PIN',
  pinHint: 'Four to twelve digits',
  again: 'The same PIN again',
  turnOn: 'Turn the lock on',
  change: 'Change the PIN',
  short: 'Four digits at the least, and nothing but digits.',
  differs: 'The two are not the same. Write the second again.',
  notKept: 'This browser keeps no settings here: the lock is not on.',
  lockNow: 'Lock now',
  off: 'Take the lock off',
  offHint: 'Asks for nothing more: who stands here has opened it.',
  isOn: 'The lock is on.',

  lockedTitle: 'Locked',
  locked: 'What was being written is kept.',
  unlock: 'Open',
  pad: 'Digits of the PIN',
  clear: 'C',
  back: 'Back one digit',
  wrong: 'Not the PIN.',
  wait: (seconds: number) =>
    seconds > 90
      ? `Too many wrong PINs. Wait ${Math.ceil(seconds / 60)} minutes.`
      : `Too many wrong PINs. Wait ${seconds} seconds.`,
  clocks: 'Clocks',
  forgot: 'PIN forgotten?',
  forgotHow: `The lock can be taken off ${removalHours} hours after it was asked for, here. Nothing of the record is lost by that.`,
  ask: 'Ask to take the lock off',
  asked: (from: string) =>
    `Somebody asked to take this lock off. It can be from ${from}. The PIN stops that.`,
  takeOff: 'Take the lock off now',
} as const;
