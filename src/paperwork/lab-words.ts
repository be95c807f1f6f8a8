/** Words of what a laboratory reported; pages and papers share them. */
import type { LabResult } from '../ledger/entries/lab-reports';

/** What it was found in. */
export const foundIn: Readonly<Record<LabResult['in'], string>> = {
  total: 'the waste as it is',
  filtered: 'the filtered liquid',
  tclp: 'the TCLP extract',
  wet: 'the WET extract',
};

/** On the sheet of a container. */
export const labWords = {
  title: 'What a laboratory found',
  element: 'Element',
  in: 'Found in',
  level: 'Level',
  reportHead: 'Report',
  sample: 'Sample of',
  ph: 'pH',
  phBy: (value: string, laboratory: string, day: string) => `${value}, by ${laboratory}, sample of ${day}`,
  noneDownTo: (level: string) => `none found down to ${level}`,
  report: (laboratory: string, number: string | undefined) =>
    number === undefined ? laboratory : `${laboratory}, no.\u00a0${number}`,
  ofBefore: (day: string) => `${day}: of what was in it before`,
  /** Where the wastes tell nothing and a laboratory does. */
  seeBelow: 'see what a laboratory found',
  disagrees: (element: string, byWastes: string) =>
    `${element}: by what is known of its wastes ${byWastes}. The two disagree beyond their uncertainty.`,
} as const;
