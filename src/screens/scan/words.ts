/** Words of the page that reads labels. */
import type { CameraFault } from './camera';

export const scanWords = {
  title: 'Scan a label',
  second: 'Its container opens',
  door: 'Scan',
  start: 'Look through the camera',
  startSecond: 'The phone asks you first. No picture is kept.',
  asking: 'Waiting for the camera …',
  looking: 'Hold the pattern in the middle, a hand away.',
  picture: 'What the camera sees',
  stop: 'Stop the camera',
  lightOn: 'Light on',
  lightOff: 'Light off',
  lightNot: 'The light did not turn on.',
  faults: {
    none: 'There is no camera here that this page may use. Type the code.',
    refused:
      'The phone does not let Leesbook use the camera. Allow it in the settings of this page, or type the code.',
    busy: 'Another app has the camera. Close it and try again, or type the code.',
    other: 'The camera could not be opened. Type the code.',
    'not-loaded':
      'The part that reads patterns is not on this phone yet. Type the code, or open Leesbook once with a network.',
  } satisfies Record<CameraFault | 'not-loaded', string>,
  code: 'Code on the label',
  codeHint: 'As C-04, or c4',
  open: 'Open it',
  empty: 'Type the code first.',
  unknownCode: (code: string) => `No container here has the code “${code}”. Check it on the label.`,
  unknownId: 'A label of another workshop, or of a container that this record does not have.',
  notALabel: 'That is no label of a container.',
  longGone: 'Gone long ago',
  several: 'More than one looks like that. Which one is it?',
} as const;
