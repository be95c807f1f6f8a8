/** Words of the labels' pages. */
import type { LabelHazards, LabelShipment } from '../../paperwork/labels/label-data';
import type { LabelSheetId } from '../../paperwork/labels/label-sizes';

const sheets: Readonly<Record<LabelSheetId, readonly [label: string, second: string]>> = {
  A6: ['A6', '105 × 148 mm, one a page'],
  '105x74': ['Small', '105 × 74 mm, one a page'],
  '4x6in': ['4 × 6 in', 'a roll of a label printer'],
  'A4-of-4': ['A4 with four of A6', 'cut along the marks'],
  'A4-of-8': ['A4 with eight small ones', 'cut along the marks'],
  'Letter-of-2': ['Letter with two of 4 × 6 in', 'cut along the marks'],
};

export const labelPageWords = {
  title: (code: string) => `Label for ${code}`,
  titleSeveral: 'Labels',
  secondSeveral: 'Tick what needs a label',
  open: 'Make its label',
  openSecond: 'PDF in its real size, with the pattern that opens it',
  openSeveral: 'Make labels',
  openSeveralSecond: 'For one or several containers',
  none: 'No container yet. A label needs one.',
  sheet: 'Size',
  sheets: (id: LabelSheetId) => sheets[id][0],
  sheetSeconds: (id: LabelSheetId) => sheets[id][1],
  black: 'The printer has no red',
  blackSecond: 'The frames are then black, and the label says so',
  firstPlace: 'First free place on the sheet',
  preview: 'As it will be printed',
  previewOf: ([first, ...more]: readonly string[]) => `${first}, the first of ${more.length + 1}`,
  previewing: 'Drawing the label …',
  previewSays: (text: string) => `The label says: ${text}`,
  leftOut: (code: string, what: readonly string[]) =>
    `${code}, not in full on this size: ${what.join('; ')}.`,
  leftOutSecond: 'The label says “see sheet” there. A larger one holds more.',
  hazardsOpen: (code: string) => `${code}: hazards not determined`,
  hazardsOpenSecond: 'The label says so; it shows no pictogram.',
  doubtful: (code: string) => `${code}: contents not determined`,
  doubtfulSecond: 'The label says so, and nothing of hazards.',
  shipment: (code: string) => `${code}: a second label before it is shipped`,
  shipmentOpen: (generatorNumber: string, { wasteNumbers }: LabelShipment): readonly string[] => [
    ...(generatorNumber === 'not determined' ? ['the EPA number of the workshop'] : []),
    ...(wasteNumbers === 'not determined' ? ['waste numbers, as nobody has confirmed any'] : []),
  ],
  shipmentSecond: (open: readonly string[]) =>
    [
      'It is set aside to leave; the second has what 40 CFR 262.32 asks.',
      ...(open.length > 0 ? [`Not determined on it: ${open.join('; ')}.`] : []),
      'Write the number of the manifest on it by hand.',
    ].join(' '),
  makeIt: (n: number) => (n === 1 ? 'Make the label' : 'Make the labels'),
  makeItSecond: (n: number) => (n === 1 ? 'For 1 container' : `For ${n} containers`),
  making: 'Making the labels …',
  chooseOne: 'Tick at least one container.',
  hazards: (code: string, { standing, signal }: LabelHazards) =>
    `${code}: ${signal ?? 'no signal word'}, ${standing.is === 'candidate' ? 'candidate, not confirmed' : `confirmed by ${standing.by}`}`,
  made: (n: number) => ({
    title: n === 1 ? 'The label is made' : 'The labels are made',
    confirm: 'A label repeats the record. Where it says candidate, nobody has confirmed it yet.',
    keep: 'Print it at 100 %, not fitted to the page: only then its sizes are real. Save it or share it now: Leesbook keeps its hash, not the file.',
    open: 'Open it to print',
  }),
} as const;
