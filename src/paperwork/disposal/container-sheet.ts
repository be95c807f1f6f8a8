/** The sheet of one container, the list of several, and the place they stand in. */
import { calendarDayText } from '../dates';
import { type Block, type Cell, type Drawing, type Row, table } from '../document';
import { notDetermined, paperWords as w } from '../words';
import type { ContainerData, DisposalData, PaperFigure } from './disposal-data';

type Substance = ContainerData['substances'][number];
type BaseLine = ContainerData['bases'][number];
type Or<T> = T | typeof notDetermined;

const strong = (text: string): Cell => ({ text, strong: true });
const unitOf = ({ unit }: PaperFigure) => (unit === '1' ? {} : { unit });

/** A figure's likely value with its unit, as one text. */
export const figureText = (figure: Or<PaperFigure>): string =>
  figure === notDetermined ? notDetermined : w.withUnit(figure.likely, figure.unit);

export const rangeText = (figure: Or<PaperFigure>): string =>
  figure === notDetermined
    ? notDetermined
    : figure.low === figure.high
      ? figureText(figure)
      : w.range(figure.likely, figure.low, figure.high, figure.unit);

const likelyCell = (figure: PaperFigure): Cell => ({ text: figure.likely, ...unitOf(figure) });

const dayOr = (day: Or<string>): string => (day === notDetermined ? day : calendarDayText(day));

function mustLeave({ mustLeaveBy }: ContainerData): string {
  if (mustLeaveBy === notDetermined) return w.mustLeaveOpen;
  const { day, days, saidBy, saidOn } = mustLeaveBy;
  return w.mustLeave(calendarDayText(day), days, saidBy, calendarDayText(saidOn));
}

const factsOf = (c: ContainerData): Block => ({
  kind: 'facts',
  facts: [
    { term: w.whatItIs, says: c.whatItIs },
    { term: w.howItArose, says: c.howItArose.length === 0 ? notDetermined : c.howItArose.join(' ') },
    { term: w.state, says: w.stateText(c.state, c.colour, c.layers, c.ph) },
    {
      term: w.container,
      says: `${w.vessel(c.capacity, c.material, c.vessel, c.cap)} ${w.standsText(c.place, c.tray)} ${w.fillText(c.fill)}`,
    },
    { term: w.firstIn, says: w.since(dayOr(c.firstWasteIn), mustLeave(c)) },
  ],
});

type SubstanceKey = 'substance' | 'low' | 'likely' | 'high' | 'allLow' | 'all' | 'allHigh' | 'known';

const atLeast = ({ name, notToldBy }: Substance): Row<SubstanceKey>[] =>
  notToldBy.length === 0 ? [] : [{ kind: 'note', text: w.atLeast(name, notToldBy) }];

function substanceRow(substance: Substance): Row<SubstanceKey>[] {
  const { name, aLitre, inAll, howKnown } = substance;
  if (inAll === notDetermined) return [{ kind: 'one-answer', name: strong(name), says: notDetermined }];
  const litre = aLitre === notDetermined ? undefined : aLitre;
  return [
    {
      kind: 'cells',
      cells: {
        substance: strong(name),
        low: litre?.low ?? notDetermined,
        likely: strong(litre?.likely ?? notDetermined),
        high: litre ? { text: litre.high, ...unitOf(litre) } : notDetermined,
        allLow: inAll.low,
        all: strong(inAll.likely),
        allHigh: { text: inAll.high, ...unitOf(inAll) },
        known: howKnown,
      },
    },
    ...atLeast(substance),
  ];
}

/** Ammonia and chloride have a row where there is some, or where nobody can tell. */
const tested = ({ ammonia, chloride }: ContainerData): readonly (readonly [string, string])[] =>
  ammonia === w.noneLogged && chloride === w.noneLogged
    ? []
    : [
        [w.ammonia, ammonia],
        [w.chloride, chloride],
      ];

/** Copper and nickel always have a row; other metals that nobody determined share one. */
function compositionOf(c: ContainerData): Block {
  const always = new Set(['Cu', 'Ni', 'HNO3', 'NO3-']);
  const shown = c.substances.filter(({ symbol, inAll }) => always.has(symbol) || inAll !== notDetermined);
  const untold = c.substances.filter((substance) => !shown.includes(substance));
  const rows: Row<SubstanceKey>[] = [
    ...shown.flatMap(substanceRow),
    ...tested(c).map(([name, says]) => ({ kind: 'one-answer', name: strong(name), says }) as const),
  ];
  if (untold.length > 0)
    rows.push({
      kind: 'one-answer',
      name: strong(w.otherMetals),
      says: w.eachNot(untold.map(({ name }) => name.toLowerCase())),
    });
  rows.push({
    kind: 'note',
    text: w.liquorNote(
      rangeText(c.liquor),
      rangeText(c.density),
      c.residues.length > 0,
      tested(c).length === 0,
    ),
  });
  for (const { name, wetMass, heldLiquor } of c.residues)
    rows.push({ kind: 'note', text: w.residue(name, rangeText(wetMass), rangeText(heldLiquor)) });
  return table(
    [
      { key: 'substance', head: w.substance, share: 21 },
      { key: 'low', head: w.low, share: 7, align: 'right' },
      { key: 'likely', head: w.likely, share: 7, align: 'right' },
      { key: 'high', head: w.high, share: 14, align: 'right' },
      { key: 'allLow', head: w.low, share: 7, align: 'right' },
      { key: 'all', head: w.likely, share: 8, align: 'right' },
      { key: 'allHigh', head: w.high, share: 12, align: 'right' },
      { key: 'known', head: w.known, share: 37 },
    ],
    rows,
  );
}

type BaseKey = 'base' | 'low' | 'likely' | 'high' | 'purity' | 'heat' | 'rise' | 'sludge' | 'gas';

const orNot = (figure: Or<PaperFigure>): Cell => (figure === notDetermined ? figure : likelyCell(figure));

function baseRow(line: BaseLine): Row<BaseKey> {
  const { base, mass, purity, heat, rise, sludgeDrained, carbonDioxide } = line;
  if (mass === notDetermined) return { kind: 'one-answer', name: strong(base), says: notDetermined };
  return {
    kind: 'cells',
    cells: {
      base: strong(base),
      low: mass.low,
      likely: strong(mass.likely),
      high: { text: mass.high, ...unitOf(mass) },
      purity: { text: purity.percent, unit: '%' },
      heat: orNot(heat),
      rise: orNot(rise),
      sludge: orNot(sludgeDrained),
      gas: carbonDioxide === 'none' ? w.none : orNot(carbonDioxide),
    },
  };
}

/** What is said under the bases: what stays in the liquor, what was not counted, whether treating is allowed. */
function baseNotes(data: DisposalData, c: ContainerData): string {
  const leaves = c.bases.flatMap(({ base, doesNotBringDown }) =>
    doesNotBringDown.length === 0 ? [] : [w.leaves(base, doesNotBringDown)],
  );
  const untold = [...new Set(c.bases.flatMap(({ notToldBy }) => notToldBy))];
  const without = untold.length === 0 ? [] : [w.countedWithout(untold)];
  return [data.treatment, c.basesNote, ...leaves, ...without].join(' ');
}

function basesOf(data: DisposalData, c: ContainerData): Block[] {
  const open = c.bases.every(({ mass }) => mass === notDetermined);
  const rows: Row<BaseKey>[] = open
    ? [{ kind: 'one-answer', name: strong(w.anyBase), says: notDetermined }]
    : c.bases.map(baseRow);
  return [
    { kind: 'heading', level: 2, text: w.bases },
    table(
      [
        { key: 'base', head: w.base, share: 20 },
        { key: 'low', head: w.firstPortions, share: 11, align: 'right' },
        { key: 'likely', head: w.likely, share: 9, align: 'right' },
        { key: 'high', head: w.buy, share: 11, align: 'right' },
        { key: 'purity', head: w.purity, share: 10, align: 'right' },
        { key: 'heat', head: w.heat, share: 11, align: 'right' },
        { key: 'rise', head: w.rise, share: 10, align: 'right' },
        { key: 'sludge', head: w.sludge, share: 13, align: 'right' },
        { key: 'gas', head: w.gas, share: 12, align: 'right' },
      ],
      [...rows, { kind: 'note', text: baseNotes(data, c) }],
    ),
  ];
}

const mustNotMeet = (c: ContainerData): Block => ({
  kind: 'paragraph',
  text:
    c.mustNotMeet.length === 0
      ? notDetermined
      : w.nevers([...new Set(c.mustNotMeet.map(({ rule }) => rule))]),
});

const candidates = (c: ContainerData): Block => ({
  kind: 'facts',
  facts: c.candidates.map(({ what, says }) => ({ term: w.shortOf(what), says })),
});

/** Who must confirm what: the same for every container of a workshop. */
function confirmers({ containers }: DisposalData): string {
  const byWho = new Map<string, Set<string>>();
  for (const { what, confirms } of containers.flatMap(({ candidates: all }) => all))
    byWho.set(confirms, (byWho.get(confirms) ?? new Set()).add(what.toLowerCase()));
  return [...byWho].map(([who, whats]) => w.whoConfirms(who, [...whats])).join(' ');
}

const cautionOf = (data: DisposalData): Block => ({
  kind: 'caution',
  text: [...data.cautions, confirmers(data)].map((text, at) => ({
    text: at === 0 ? text : ` ${text}`,
    strong: at === 0,
  })),
});

const signatures: Block = { kind: 'signatures', labels: [w.generatorSigns, w.collectorSigns] };

/** What is wrong or doubtful stands above everything else. */
const flagLines = (c: ContainerData): Block[] =>
  c.flags.length === 0
    ? []
    : [{ kind: 'mark', mark: 'wrong', text: [{ text: c.flags.join(' '), strong: true }] }];

/** In a set of several, a sheet has its own title, and its caution says where the whole of it stands. */
const inSet = (c: ContainerData): Block[] => [
  { kind: 'heading', level: 1, text: w.sheetOf(c.code) },
  { kind: 'mark', mark: 'candidate', text: [{ text: w.seeFirstPage, strong: true }] },
];

/** The first page of a container; `single` when the paper's own head names it. */
export function sheetBlocks(
  data: DisposalData,
  c: ContainerData,
  drawing: Drawing | undefined,
  single: boolean,
): Block[] {
  const facts = factsOf(c);
  const head: Block = drawing
    ? {
        kind: 'columns',
        shares: [26, 74],
        left: [{ kind: 'drawing', drawing, caption: w.drawn }],
        right: [facts],
      }
    : facts;
  return [
    ...(single ? [] : inSet(c)),
    ...flagLines(c),
    head,
    { kind: 'heading', level: 2, text: w.composition },
    compositionOf(c),
    ...basesOf(data, c),
    {
      kind: 'columns',
      shares: [30, 70],
      left: [{ kind: 'heading', level: 2, text: w.codes }, candidates(c)],
      right: [{ kind: 'heading', level: 2, text: w.mustNotMeet }, mustNotMeet(c)],
    },
    ...(single ? [{ kind: 'together', parts: [cautionOf(data), signatures] } as const] : []),
  ];
}

/** All containers of the paper, a row each; one signing is for all of them. */
export function listBlocks(data: DisposalData): Block[] {
  return [
    { kind: 'heading', level: 1, text: w.list(data.containers.length) },
    table(
      [
        { key: 'code', head: w.code, share: 10 },
        { key: 'what', head: w.whatItIs, share: 40 },
        { key: 'holds', head: w.holds, share: 16 },
        { key: 'leave', head: w.mustLeaveBy, share: 16 },
        { key: 'open', head: w.open, share: 30 },
      ],
      data.containers.map((c) => ({
        kind: 'cells' as const,
        cells: {
          code: strong(c.code),
          what: c.whatItIs,
          holds: c.fill.holds,
          leave: c.mustLeaveBy === notDetermined ? notDetermined : calendarDayText(c.mustLeaveBy.day),
          open: openOf(c),
        },
      })),
    ),
    { kind: 'together', parts: [cautionOf(data), signatures] },
  ];
}

/** What of a container is wrong or not determined, in one cell. */
function openOf(c: ContainerData): string {
  const always = new Set(['Cu', 'Ni', 'HNO3']);
  const names = c.substances
    .filter(({ symbol, inAll }) => always.has(symbol) && inAll === notDetermined)
    .map(({ name }) => name.toLowerCase());
  const said = [...c.flags, ...(names.length > 0 ? [w.notKnown(names)] : [])];
  return said.length === 0 ? w.nothingFlagged : said.join(' ');
}

/** The workshop and its local rules. */
export function placeBlocks({ workshop, localRules }: DisposalData): Block[] {
  return [
    { kind: 'heading', level: 1, text: w.workshop },
    {
      kind: 'facts',
      facts: [
        { term: w.name, says: workshop.name },
        { term: w.address, says: workshop.address },
        { term: w.generatorNumber, says: workshop.generatorNumber },
        { term: w.authority, says: workshop.authority },
        { term: w.collector, says: workshop.collector },
        { term: w.counter, says: workshop.hazardousWasteCounter },
        { term: w.emergency, says: workshop.emergencyNumber },
      ],
    },
    { kind: 'heading', level: 1, text: w.localRules },
    table(
      [
        { key: 'rule', head: w.rule, share: 26 },
        { key: 'value', head: w.value, share: 16 },
        { key: 'by', head: w.saidBy, share: 28 },
        { key: 'on', head: w.saidOn, share: 16 },
        { key: 'document', head: w.document, share: 20 },
      ],
      localRules.map(({ rule, value, saidBy, saidOn, document }) =>
        value === notDetermined
          ? { kind: 'one-answer' as const, name: strong(rule), says: w.ruleOpen }
          : {
              kind: 'cells' as const,
              cells: { rule: strong(rule), value, by: saidBy, on: dayOr(saidOn), document },
            },
      ),
    ),
  ];
}
