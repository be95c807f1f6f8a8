/** Words of what a laboratory reported of a container: the form, and the report on the container's page. */
import type { LabResult } from '../../ledger/entries/lab-reports';
import { foundIn } from '../../paperwork/lab-words';
import { capital } from '../../paperwork/words';

export const labWords = {
  title: (code: string) => `${code}: what a laboratory found`,
  second: 'It counts as measured of all that is in it, until something else goes in.',
  laboratory: 'Laboratory',
  document: 'Number of the report',
  sampledOn: 'Day of the sample',
  sampledHint: 'when it was taken out of the container, not the day of the report',
  notYet: 'Choose a day that has come.',
  ph: 'pH',
  phRange: 'A pH lies between 0 and 14.',
  results: 'What was found',
  resultsSecond: 'One line for each element. Lines without a level are left out.',
  lines: 'Lines',
  where: 'Next lines: found in',
  eight: 'The eight of the federal table',
  another: 'One more element',
  told: (n: number) => (n === 1 ? '1 line has a level' : `${n} lines have a level`),
  noLevel: 'no level yet',
  foundIn: 'Found in',
  level: (name: string) => `${name}, level`,
  below: 'None found down to this',
  belowSecond: 'The report has “<”, “n.d.” or “not detected”',
  zero: 'A laboratory finds no nothing: tick “none found”, and write down to which level.',
  twice: 'It stands above already.',
  next: 'Next line',
  done: 'Close the line',
  remove: (name: string) => `Take ${name} out`,
  photos: 'Photos of the report',
  files: 'The report as PDF',
  nothing: 'Write down one level at least, or the pH.',
  keep: 'Keep the report',
  // On the page of the container
  part: 'What a laboratory found',
  number: (document: string) => `no. ${document}`,
  sampled: (day: string) => `sample of ${day}`,
  stale: 'Of what was in it before',
  staleSecond: (day: string) =>
    `Since ${day} something else is in it, or less water. It says nothing of what is in it now.`,
  noneDownTo: (where: string) => `in ${where}, none found down to`,
  in: (where: string) => `in ${where}`,
  byWastes: (range: string, unit: string) => `its wastes come to ${range}\u202f${unit}`,
  all: (n: number) => `All ${n} results`,
} as const;

/** With whose law asks for it, where the name does not say so. */
export const whereWords: Readonly<Record<LabResult['in'], string>> = {
  total: `${capital(foundIn.total)} (mg/kg)`,
  filtered: capital(foundIn.filtered),
  tclp: capital(foundIn.tclp),
  wet: `${capital(foundIn.wet)} (California)`,
};
