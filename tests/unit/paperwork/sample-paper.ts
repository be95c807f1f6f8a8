import { type Block, type Drawing, type PaperDocument, table } from '../../../src/paperwork/document';

/** Invented people, places and figures: what a paper can hold, all of it once. */
const jerrican: Drawing = {
  width: 230,
  height: 200,
  says: 'A jerrican of 10 L, two thirds full, labelled C-07',
  printWidth: 150,
  shapes: [
    { path: 'M20 60H120V180H20Z', fill: '#3aa5a5' },
    {
      path: 'M14 30Q14 14 30 14H110Q126 14 126 30V172Q126 186 112 186H28Q14 186 14 172Z',
      stroke: '#000000',
      strokeWidth: 3,
    },
    { path: 'M20 60H120', stroke: '#000000', strokeWidth: 3 },
    { path: 'M40 100H100V130H40Z', fill: '#ffffff', stroke: '#000000', strokeWidth: 1.5 },
    { path: 'M126 40H140', stroke: '#000000', strokeWidth: 2, dash: [4, 2] },
  ],
  texts: [
    { x: 70, y: 121, text: 'C‑07', size: 17, anchor: 'middle', face: 'bold' },
    { x: 146, y: 44, text: '90 % limit', size: 13 },
    { x: 146, y: 66, text: '6.70 L', size: 18, face: 'bold' },
  ],
};

const pattern: Drawing = {
  width: 7,
  height: 7,
  says: 'A pattern that leads to C-07',
  printWidth: 42,
  shapes: [{ path: 'M0 0H7V7H0ZM1 1V6H6V1ZM2 2H5V5H2Z', fill: '#000000', fillRule: 'evenodd' }],
};

const diamond: Drawing = {
  width: 40,
  height: 40,
  says: 'Corrosive',
  printWidth: 34,
  shapes: [
    { path: 'M20 2L38 20L20 38L2 20Z', fill: '#ffffff', stroke: '#d5001c', strokeWidth: 3 },
    { path: 'M12 22H28V26H12ZM14 14L20 18L26 14', stroke: '#000000', strokeWidth: 2 },
  ],
};

const contents = table(
  [
    { key: 'substance', head: 'Substance', share: 24 },
    { key: 'low', head: 'low', share: 9, align: 'right' },
    { key: 'likely', head: 'likely', share: 9, align: 'right' },
    { key: 'high', head: 'high', share: 15, align: 'right' },
    { key: 'total', head: 'in all, likely', share: 14, align: 'right' },
    { key: 'evidence', head: 'How it is known', share: 27 },
  ],
  [
    ...(
      [
        ['Copper', '15.3', '17.6', '19.9', 'g/L', '118', 'g', 'photometer, 11 May'],
        ['Nickel', '5.0', '6.2', '7.4', 'g/L', '42', 'g', 'photometer, 11 May'],
        ['Free nitric acid', '0.52', '0.58', '0.64', 'mol/L', '3.9', 'mol', 'titration, 12 May'],
        ['Nitrate, NO₃⁻', '1.25', '1.34', '1.44', 'mol/L', '9.0', 'mol', 'worked out from the above'],
      ] as const
    ).map(([substance, low, likely, high, unit, total, totalUnit, evidence]) => ({
      kind: 'cells' as const,
      cells: {
        substance: { text: substance, strong: true },
        low,
        likely: { text: likely, strong: true },
        high: { text: high, unit },
        total: { text: total, unit: totalUnit },
        evidence,
      },
    })),
    {
      kind: 'one-answer',
      name: { text: 'Ammonia, chloride', strong: true },
      says: 'none logged; record, all entries',
    },
    {
      kind: 'one-answer',
      name: { text: 'Silver, palladium, lead, barium', strong: true },
      says: 'not determined',
    },
    {
      kind: 'note',
      text: 'Ranges hold about 19 times in 20. For copper: 17.6 g/L × 6.70 L = 117.9 g; √(13.1² + 4.5²) % = 14 %.',
    },
  ],
);

const hazards = table(
  [
    { key: 'class', head: 'Class', share: 26 },
    { key: 'statement', head: 'Statement', share: 12 },
    { key: 'rule', head: 'Rule that fired, from the high end', share: 42 },
    { key: 'nearly', head: 'Nearly', share: 20 },
  ],
  (
    [
      ['Skin corrosion 1', 'H314', 'pH 0.2 is not above 2', 'none'],
      ['Respiratory, skin sensitiser 1', 'H334, H317', 'nickel nitrate 2.1 %, limits 1 % and 0.01 %', 'none'],
      ['Carcinogen 1A', 'H350i', 'nickel nitrate 2.1 %, limit 0.1 %', 'none'],
      ['Aquatic, acute 1', 'H400', '10 × 5.4 % copper nitrate + 2.1 % = 56 %, limit 25 %', 'none'],
      ['Aquatic, chronic 2', 'H411', '10 × (5.4 % + 2.1 %) = 75 %, limit 25 %', 'chronic 1: 7.5 of 25 %'],
    ] as const
  ).map(([name, statement, rule, nearly]) => ({
    kind: 'cells' as const,
    cells: { class: { text: name, strong: true }, statement, rule, nearly },
  })),
);

const entries = table(
  [
    { key: 'entry', head: 'Entry', share: 8, align: 'right' },
    { key: 'when', head: 'When', share: 20 },
    { key: 'what', head: 'What', share: 44 },
    { key: 'volume', head: 'Volume', share: 14, align: 'right' },
    { key: 'who', head: 'Who', share: 14 },
  ],
  Array.from({ length: 60 }, (_, index) => ({
    kind: 'cells' as const,
    cells: {
      entry: String(1101 + index),
      when: '11 May 2026, 14:20',
      what:
        index % 7 === 3
          ? `Row ${index}: barren liquor of batch B‑17 poured in after the second cementation, clear, blue-green, no solids seen`
          : `Row ${index}: barren liquor of batch B‑17`,
      volume: { text: (0.25 + index / 100).toFixed(2), unit: index % 5 === 0 ? 'mL' : 'L' },
      who: 'Maren',
    },
  })),
);

const parts: readonly Block[] = [
  {
    kind: 'columns',
    shares: [1, 2],
    left: [
      {
        kind: 'drawing',
        drawing: jerrican,
        caption: 'Drawn to its outer size, 230 × 310 mm. Colour worked out for 10 cm of liquor.',
      },
    ],
    right: [
      {
        kind: 'facts',
        facts: [
          {
            term: 'What it is',
            says: 'Barren liquor: copper and nickel nitrates in dilute nitric acid, after cementation of silver on copper',
          },
          {
            term: 'How it arose',
            says: 'Batches B‑16 and B‑17, precious-metal and mixed ceramic capacitors, leached in nitric acid, filtered, cemented 4 and 5 days. Four transfers, 30 March to 11 May.',
          },
          {
            term: 'State',
            says: 'Clear liquid, blue-green. No solids seen 12 May. No second layer.',
          },
          { term: 'pH', says: '0.2 by paper, 12 May (0 to 0.5)' },
          { term: 'Container', says: 'HDPE jerrican, vented cap, label read 12 May' },
          {
            term: 'Must leave by',
            says: '26 September 2026 (180 days, county office, 3 March 2026)',
          },
        ],
      },
    ],
  },
  { kind: 'heading', level: 1, text: 'What is in it' },
  contents,
  { kind: 'heading', level: 1, text: 'Hazard candidates', beside: [diamond, diamond, diamond] },
  hazards,
  {
    kind: 'columns',
    left: [
      { kind: 'heading', level: 2, text: 'Codes, candidates' },
      {
        kind: 'facts',
        facts: [
          {
            term: 'Transport',
            says: 'UN 3264, waste corrosive liquid, acidic, inorganic, n.o.s. (nitric acid, copper nitrate), 8, II',
          },
          { term: 'Waste list', says: '11 02 07*, or 06 03 13* if the authority sees it so' },
        ],
      },
    ],
    right: [
      { kind: 'heading', level: 2, text: 'Must not meet' },
      {
        kind: 'paragraph',
        text: 'Ammonia waste, bleach, solvents, rags or sawdust, metal vessels, chalk or soda in a closed vessel. Do not seal tight.',
      },
    ],
  },
  {
    kind: 'caution',
    text: [
      { text: 'Candidates only. ', strong: true },
      {
        text: 'Worked out from the evidence named, by texts read on 24 March 2026. The authority confirms the waste code, the collector the class and transport entry. “Not determined” means not measured, not zero.',
      },
    ],
  },
  {
    kind: 'signatures',
    lines: [{ label: 'Generator, name and date' }, { label: 'Collector, name and date' }],
  },
  { kind: 'page-break' },
  { kind: 'heading', level: 1, text: 'Hydrated lime to pH 9.2, working' },
  {
    kind: 'working',
    lines: [
      {
        sentence: 'Free acid takes one each',
        formula: '0.58 mol/L × 6.70 L',
        result: { text: '3.89', unit: 'mol' },
        source: 'titration 12 May, ± 0.06 mol/L',
      },
      {
        sentence: 'Copper takes two',
        formula: '2 × 117.9 g ÷ 63.546 g/mol',
        result: { text: '3.71', unit: 'mol' },
        source: 'photometer 11 May, ± 16 g',
      },
      {
        sentence: 'Nickel takes two',
        formula: '2 × 41.5 g ÷ 58.693 g/mol',
        result: { text: '1.42', unit: 'mol' },
        source: 'photometer 11 May, ± 8 g',
      },
      { sentence: 'Base needed in all', result: { text: '9.01', unit: 'mol' } },
      {
        sentence: 'Into grams of lime as sold',
        formula: '9.01 mol × 37.046 g/mol ÷ 0.95 × 1.10',
        result: { text: '387', unit: 'g' },
        source: '95 % on the bag; 10 % for coated grit',
      },
    ],
  },
  { kind: 'heading', level: 1, text: 'What is open' },
  {
    kind: 'mark',
    mark: 'stop',
    text: [{ text: 'Stop. ', strong: true }, { text: 'No local rules: treatment is for planning only.' }],
  },
  {
    kind: 'mark',
    mark: 'wrong',
    text: 'C‑04 is too full: 9.4 L of 9.0 L. Move 0.4 L into a container that may take it, and write the transfer down before anything else is added to either of the two.',
  },
  { kind: 'mark', mark: 'due', text: 'Inspection due 18 May.' },
  { kind: 'mark', mark: 'overdue', text: 'Proof of disposal, since 2 May.' },
  { kind: 'mark', mark: 'unknown', text: 'Lead: not determined.' },
  {
    kind: 'mark',
    mark: 'candidate',
    text: 'Waste code 11 02 07*: candidate. The authority confirms.',
  },
  { kind: 'mark', mark: 'confirmed', text: 'Storage time: county office, 3 March 2026.' },
  { kind: 'mark', mark: 'clearance', text: 'Cleared until 11:05 for batch B‑17.' },
  { kind: 'heading', level: 2, text: 'Characters' },
  {
    kind: 'paragraph',
    text: 'H₂SO₄, SO₄²⁻, [Cu(NH₃)₄]²⁺, CuSO₄·5H₂O, 2 → 3, A ⇌ B, ≥ ≤ ± × ÷ − √ ≈, µg, Ω, α β Δ, 10⁻³, 1 214, 20 °C, C‑07, Привет, Łódź, Ångström, ß, €',
  },
  {
    kind: 'list',
    numbered: true,
    items: ['Open the vent.', 'Read the label aloud.', 'Write it down.'],
  },
  { kind: 'heading', level: 1, text: 'Record of entries' },
  entries,
  {
    kind: 'together',
    parts: [{ kind: 'rule' }, { kind: 'paragraph', size: 'small', text: 'End of the record.' }],
  },
];

export const samplePaper: PaperDocument = {
  title: 'Characterisation sheet',
  language: 'en',
  subject: 'Container C-07',
  author: 'Weir Yard shed',
  createdAt: '2026-05-14T09:58:00Z',
  paper: 'A4',
  masthead: {
    line: 'Weir Yard shed, Weir Yard 6, Ostermill. Made 14 May 2026, 09:58, by Maren.',
    code: 'C‑07',
    corner: pattern,
  },
  runningHead: 'Characterisation sheet C‑07, Weir Yard shed, 14 May 2026',
  footLines: ['Record entry 1 214 of 14 May 2026, SHA-256 5e1b 90c4 7da2 …'],
  pageWords: 'page {page} of {pages}',
  parts,
};

/** A label of 105 by 148 mm. */
export const sampleLabel: PaperDocument = {
  title: 'Label C-07',
  language: 'en',
  subject: 'Container C-07',
  author: 'Weir Yard shed',
  createdAt: '2026-05-14T09:58:00Z',
  paper: 'A6',
  runningHead: '',
  footLines: [],
  parts: [
    {
      kind: 'columns',
      shares: [7, 3],
      left: [
        { kind: 'paragraph', text: [{ text: 'Hazardous waste', strong: true }], size: 'large' },
        { kind: 'paragraph', text: 'C‑07', size: 'code' },
      ],
      right: [{ kind: 'drawing', drawing: { ...pattern, printWidth: 70 } }],
    },
    { kind: 'heading', level: 1, text: 'Copper and nickel nitrate in dilute nitric acid' },
    { kind: 'paragraph', text: 'barren liquor from silver recovery, liquid, pH under 1' },
    {
      kind: 'drawings',
      drawings: [diamond, diamond, diamond].map((one) => ({ ...one, printWidth: 62 })),
    },
    {
      kind: 'paragraph',
      text: 'H314 Causes severe skin burns and eye damage. H317 May cause an allergic skin reaction. H341, H372, H400, H411.',
    },
    { kind: 'rule' },
    {
      kind: 'mark',
      mark: 'stop',
      text: [
        { text: 'Never add ', strong: true },
        { text: 'ammonia waste, bleach or solvent. ' },
        { text: 'Vented cap: ', strong: true },
        { text: 'never seal tight.' },
      ],
    },
    { kind: 'rule' },
    {
      kind: 'columns',
      left: [
        { kind: 'paragraph', text: 'first waste in' },
        { kind: 'paragraph', text: '30 Mar 2026', size: 'display' },
      ],
      right: [
        { kind: 'paragraph', text: 'must leave by' },
        { kind: 'paragraph', text: '26 Sep 2026', size: 'display' },
      ],
    },
    {
      kind: 'paragraph',
      text: 'Weir Yard shed, Weir Yard 6, Ostermill. Maren, 0555 0142.',
      size: 'small',
    },
  ],
};
