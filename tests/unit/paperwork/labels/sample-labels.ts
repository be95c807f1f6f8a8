/** Labels of an invented workshop: a usual one, one of contents that nobody knows, and one with too much to say. */
import type { LabelData, LabelHazards, LabelsData } from '../../../../src/paperwork/labels/label-data';

const sentences = {
  H314: 'Causes severe skin burns and eye damage.',
  H334: 'May cause allergy or asthma symptoms or breathing difficulties if inhaled.',
  H317: 'May cause an allergic skin reaction.',
  H350i: 'May cause cancer by inhalation.',
  H360D: 'May damage the unborn child.',
  H341: 'Suspected of causing genetic defects.',
  H372: 'Causes damage to organs through prolonged or repeated exposure.',
  H400: 'Very toxic to aquatic life.',
  H411: 'Toxic to aquatic life with long lasting effects.',
  H302: 'Harmful if swallowed.',
  H272: 'May intensify fire; oxidiser.',
  H331: 'Toxic if inhaled.',
} as const;

type Code = keyof typeof sentences;

export const statements = (...codes: readonly Code[]) =>
  codes.map((code) => ({ code, text: sentences[code] }));

export const precautions = [
  { code: 'P260', text: 'Do not breathe mist or vapours.' },
  { code: 'P280', text: 'Wear protective gloves and eye protection.' },
  { code: 'P310', text: 'Immediately call a POISON CENTER/doctor.' },
  { code: 'P273', text: 'Avoid release to the environment.' },
  { code: 'P391', text: 'Collect spillage.' },
  { code: 'P405', text: 'Store locked up.' },
  { code: 'P501', text: 'Dispose of contents as your authority says.' },
];

export const hazards: LabelHazards = {
  standing: { is: 'candidate' },
  signal: 'Danger',
  pictograms: ['GHS05', 'GHS08', 'GHS09'],
  statements: statements('H314', 'H317', 'H350i', 'H411'),
  precautions: precautions.slice(0, 2),
  indication: ['corrosive', 'toxic'],
};

const containerId = '019a2b3c-4d5e-7f60-8a1b-2c3d4e5f6071';

export const label = (more: Partial<LabelData> = {}): LabelData => ({
  containerId,
  code: 'C\u201107',
  link: `https://leesbook.example.org/book/#/containers/${containerId}`,
  law: 'us',
  contents: {
    are: 'known',
    name: 'Barren liquor: nitrates after cementation on copper',
    second: 'pH:\u00a00.2 by paper, 12\u00a0May\u00a02026. Liquid. Batch B\u201117.',
  },
  hazards,
  codes: [
    { list: 'rcra', code: 'D002', standing: { is: 'candidate' } },
    {
      list: 'waste-list',
      code: '11\u00a002\u00a007*',
      standing: { is: 'confirmed', by: 'A. Marsh', on: '2026-05-12' },
    },
  ],
  codesNot: [],
  nevers: ['Never add ammonia waste', 'Never add bleach', 'Never let it dry'],
  gas: 'vented',
  start: '2026-03-30',
  startIs: 'accumulation',
  mustLeaveBy: '2026-09-25',
  ...more,
});

export const labels = (each: readonly LabelData[], more: Partial<LabelsData> = {}): LabelsData => ({
  v: 1,
  kind: 'container-labels',
  language: 'en',
  demo: false,
  madeAt: '2026-05-14T09:58:00.000Z',
  zone: 'Europe/Paris',
  madeBy: 'Maren',
  workshop: {
    name: 'Weir Yard shed',
    address: 'Weir Yard 6\nOstermill',
    telephone: '0555 0142 (Maren)',
    generatorNumber: 'not determined',
  },
  labels: each,
  contentHash: '0'.repeat(64),
  ...more,
});

/** More of everything than any label holds. */
export const overfull = label({
  code: `C${'\u2011123456789'.repeat(20)}`,
  contents: {
    are: 'known',
    name: 'Leach liquor and wash water, '.repeat(20),
    second: 'Batch B. '.repeat(60),
  },
  hazards: {
    standing: { is: 'confirmed', by: `The collector ${'of hazardous waste '.repeat(6)}`, on: '2026-05-12' },
    signal: 'Danger',
    pictograms: ['GHS03', 'GHS05', 'GHS06', 'GHS08', 'GHS09'],
    statements: statements(...(Object.keys(sentences) as Code[])),
    precautions,
    indication: ['corrosive', 'toxic', 'ignitable (oxidiser)'],
  },
  codes: [
    { list: 'rcra', code: 'D001, D002, D004, D005, D006, D007, D008, D011', standing: { is: 'candidate' } },
    { list: 'state', code: '791', standing: { is: 'candidate' } },
    {
      list: 'transport',
      code: 'UN 3264, waste corrosive liquid, acidic, inorganic, n.o.s. (nitric acid, copper nitrate), 8, II',
      standing: { is: 'confirmed', by: 'A. Marsh', on: '2026-05-12' },
    },
  ],
  nevers: Array.from({ length: 12 }, (_, at) => `Never add the thing with the number ${at}`),
});

export const doubtful = label({
  contents: { are: 'doubtful', since: '2026-05-12', byRecord: 'Barren liquor' },
  hazards: 'not determined',
  codes: [],
  codesNot: ['rcra', 'waste-list'],
});

const confirmed = { is: 'confirmed', by: 'A. Marsh', on: '2026-05-12' } as const;

/** Set aside to leave, where the law of the United States was chosen. */
export const leavingWith = (...numbers: readonly string[]): LabelData => {
  const wasteNumbers = numbers.map((code) => ({ list: 'rcra', code, standing: confirmed }) as const);
  return label({
    codes: wasteNumbers,
    shipment: {
      manifestNumber: 'to be written in',
      wasteNumbers: wasteNumbers.length > 0 ? wasteNumbers : 'not determined',
    },
  });
};
