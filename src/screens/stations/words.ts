/** Words of the places where acid is worked. */
import type { ReadingDue } from '../../safety/ventilation/reading-due';
import type { WrittenStation } from '../../safety/ventilation/station-schema';
import { words } from '../words';

export const kindWords: Readonly<Record<WrittenStation['is'], string>> = {
  'ducted-hood': 'Hood with a duct to outside',
  outdoors: 'Outdoors',
  room: 'Room without a hood',
  'ductless-hood': 'Hood that filters and blows back',
};

export const stationWords = {
  title: 'Working places',
  second: 'Where acid is worked, and what carries its gas away.',
  none: 'No place is described yet.',
  inUse: (n: number) => (n === 0 ? 'None described yet' : n === 1 ? '1 in use' : `${n} in use`),
  dueOf: (n: number) => (n === 1 ? '1 to be measured' : `${n} to be measured`),
  givenUp: 'Given up',
  givenUpSince: (day: string) => `given up ${day}`,
  add: 'Describe a place',
  newTitle: 'A new place',
  gone: 'This place is not in the record.',
  here: 'The phone is here',
  name: 'Name',
  nameHint: 'As you call it: Hood 1, yard.',
  kind: 'What is it?',
  kindSecond: {
    'ducted-hood': 'A fan throws the air out of the building',
    outdoors: 'Two sides open, wind from behind',
    room: 'Door and window, or a fan in the wall',
    'ductless-hood': 'No duct, whatever its filter',
  } satisfies Record<WrittenStation['is'], string>,
  neverEnough:
    'Nothing that gives off nitrous gas may be worked there. Describe it all the same: it says why.',
  opening: 'The opening, sash at its mark',
  width: 'Width of the opening',
  height: 'Height of the opening',
  heightHint: 'From the worktop to the sash at its mark.',
  air: 'Air in the opening',
  speed: 'Mean speed',
  speedHint: 'Empty: nobody has measured it. Then nothing may be worked there.',
  measuredOn: 'Measured on',
  changed: 'Last change',
  changedHint: 'To hood, fan, filter, duct or the air that comes in. May stay empty.',
  certificate: 'Certificate of a containment test',
  certificateHint: 'Empty: the usual window of face speeds holds.',
  slowest: 'Slowest speed at which it held',
  fastest: 'Fastest speed at which it held',
  certifiedOn: 'Tested on',
  room: 'The room',
  roomVolume: 'Volume of the room',
  hoodRoomHint: 'Tells what happens when the fan fails. May stay empty.',
  airflow: 'Air that goes through',
  airflowHint: 'Empty: nobody knows.',
  note: 'Note',
  keep: 'Keep this place',
  takeUp: 'Take it into use again',
  giveUp: 'Give it up',
  giveUpSecond: 'It stays in the record. No list offers it any more.',
  change: 'Change the description',
  measured: 'We measured again',
  measuredSecond: 'Speed and day only',
  measuredTitle: (name: string) => `${name}: measured again`,
  last: (speed: string, day: string) => `Last: ${speed}, ${day}`,
  lastNone: 'Never measured before.',
  keepReading: 'Keep this reading',
  check: 'Ventilation for a charge',
  checkSecond: 'What it makes against what this place carries away',
  chooseHere: 'Work here now',
  chooseHereSecond: 'The phone is somewhere else',
  checks: 'Worked out for this place',
  facts: 'As it is described',
  openingShort: 'Opening, sash at its mark',
  face: 'Speed of the air in it',
  readOn: (day: string) => `measured ${day}`,
  airflowOf: 'Air that it takes away',
  window: 'Counted on between',
  windowBy: { usual: 'the usual window', certificate: 'by its certificate' },
  certificateOut:
    'Its certificate does not count: older than the last change, or outside what any hood may have.',
  changedOn: 'Last change',
  roomOf: 'Room that it stands in',
  notMeasured: words.notDetermined,
  times: (width: string, height: string) => `${width} × ${height}`,
  fault: {
    dateMissing: 'Choose the day.',
    dateAhead: 'That day is still to come.',
    speedMissing: 'Write the speed that was measured on that day, or clear the day.',
    windowMissing: 'A certificate has two speeds and a day: write all three, or none.',
    windowTurned: 'The fastest is below the slowest. Change them round.',
  },
} as const;

/** Why it has to be measured, and what to do. @param day the day of it, as text */
export function dueWords(due: ReadingDue, day: (iso: string) => string): string {
  switch (due.why) {
    case 'not-measured':
      return 'Nobody has measured its air. Have it measured before work.';
    case 'changed-since':
      return `Due again: changed ${day(due.since)}, not measured since.`;
    case 'too-old':
      return `Due again: the reading held until ${day(due.since)}.`;
    case 'soon':
      return `Measure again by ${day(due.by)}.`;
  }
}
