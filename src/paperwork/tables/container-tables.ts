/** Tables of what is in the containers: the containers, what is dissolved, wet solids, bases, what must not meet. */
import type { ContainerData, DisposalData } from '../disposal/disposal-data';
import { foundIn } from '../lab-words';
import { notDetermined } from '../words';
import { each, type In, listed, textColumn, whichContainer } from './disposal-rows';
import { figureColumns } from './figure-columns';
import { type ColumnOf, filled, none, type Table, type TableOf } from './table';

type Row = { readonly c: ContainerData };
type Amounts = NonNullable<ContainerData['fill']['amounts']>;

const text = textColumn<Row>;

/** A number of the ledger with its unit beside it. */
const amountColumns = (key: keyof Amounts, name: string, says: string): readonly ColumnOf<Row>[] => [
  {
    name,
    says,
    kind: 'number',
    unit: { in: `${name} unit` },
    of: ({ c }) => c.fill.amounts?.[key].value ?? notDetermined,
  },
  text(
    `${name} unit`,
    `Unit of the column "${name}".`,
    ({ c }) => c.fill.amounts?.[key].unit ?? notDetermined,
  ),
];

function leaveBy({ mustLeaveBy }: ContainerData, key: 'day' | 'otherDay' | 'from' | 'saidOn'): string {
  return typeof mustLeaveBy === 'string' ? mustLeaveBy : (mustLeaveBy[key] ?? none);
}

const containers: TableOf<Row> = {
  name: 'containers',
  says: 'One row a container: what it is, how full, what state it is in, by when it must have left.',
  columns: [
    ...whichContainer,
    text('what it is', 'What is in it.', ({ c }) => c.whatItIs),
    text('how it arose', 'How it came about: batches, steps, days.', ({ c }) => listed(c.howItArose, ' ')),
    text('treated', 'What was done to it, and what follows.', ({ c }) => listed(c.treated ?? [], ' ')),
    text('vessel', 'Kind of vessel.', ({ c }) => c.vessel),
    text('material', 'What the vessel is made of.', ({ c }) => c.material),
    text('cap', 'How it is closed.', ({ c }) => c.cap),
    text('place', 'Where it stands.', ({ c }) => c.place),
    text('tray', 'The tray under it.', ({ c }) => c.tray),
    text('empty', 'Whether it is empty by the record: yes or no.', ({ c }) => (c.empty ? 'yes' : 'no')),
    ...amountColumns('capacity', 'capacity', 'What it can hold, as written on it.'),
    ...amountColumns('volume', 'volume held', 'Volume of the liquid in it by the record, without its range.'),
    ...amountColumns(
      'mass',
      'wet solids held',
      'Mass of the wet solids in it by the record, without its range.',
    ),
    ...amountColumns('percent', 'filled', 'How full it is, solids counted with the liquid.'),
    ...amountColumns('limit', 'fill limit', 'How full it may be.'),
    text('state', 'Liquid, solid, slurry.', ({ c }) => c.state),
    text('colour', 'Its colour, and when it was seen.', ({ c }) => c.colour),
    text('layers', 'Its layers.', ({ c }) => c.layers),
    text('pH', 'Its pH, by what and when it was read.', ({ c }) => c.ph),
    ...figureColumns<Row>('liquor', 'the volume of the liquid', ({ c }) => c.liquor),
    ...figureColumns<Row>('density', 'the density of the liquid', ({ c }) => c.density),
    text('ammonia', 'Whether waste with ammonia was logged in it.', ({ c }) => c.ammonia),
    text('chloride', 'Whether waste with chloride was logged in it.', ({ c }) => c.chloride),
    {
      name: 'first waste in',
      says: 'The day that the first waste was put in.',
      kind: 'day',
      of: ({ c }) => c.firstWasteIn,
    },
    {
      name: 'must leave by',
      says: 'The careful day by which it must have left; "no time runs" where none does.',
      kind: 'day',
      of: ({ c }) => leaveBy(c, 'day'),
    },
    {
      name: 'must leave by, longer count',
      says: 'The day by the longer count.',
      kind: 'day',
      of: ({ c }) => leaveBy(c, 'otherDay'),
    },
    {
      name: 'time runs from',
      says: 'The day that the time began.',
      kind: 'day',
      of: ({ c }) => leaveBy(c, 'from'),
    },
    text('time said by', 'Who said how long it may stand.', ({ c }) =>
      typeof c.mustLeaveBy === 'string' ? c.mustLeaveBy : c.mustLeaveBy.saidBy,
    ),
    text(
      'hazard class, waste code, transport',
      'Candidates in short, each with who must confirm it.',
      ({ c }) =>
        listed(
          c.candidates.map(({ what, says, confirms }) => `${what}: ${says}, to be confirmed by ${confirms}`),
        ),
    ),
    text('note on bases', 'Why no base is given, or what stays to be said about it.', ({ c }) => c.basesNote),
  ],
};

type Substance = ContainerData['substances'][number];

const evidenceDay = ({ inAll, evidence = [] }: Substance, at: 0 | -1): string =>
  inAll === notDetermined
    ? notDetermined
    : (evidence
        .flatMap(({ on }) => on)
        .sort()
        .at(at) ?? none);

const composition: TableOf<In<Substance>> = {
  name: 'composition',
  says: 'One row a substance of a container: how much a litre and in all, as a range, how it is known and since when. What nobody determined has a row that says so.',
  columns: [
    ...whichContainer,
    textColumn('substance', 'Name of the substance.', ({ it }) => it.name),
    textColumn('symbol', 'Symbol of the element, or formula.', ({ it }) => it.symbol),
    ...figureColumns<In<Substance>>('a litre', 'what is in a litre of the liquid', ({ it }) => it.aLitre),
    ...figureColumns<In<Substance>>('in all', 'what is in the whole container', ({ it }) => it.inAll),
    textColumn('how known', 'What the amount goes back to.', ({ it }) => it.howKnown),
    {
      name: 'evidence from',
      says: 'The first day that it was determined on; "none" where it follows from other rows.',
      kind: 'day',
      of: ({ it }) => evidenceDay(it, 0),
    },
    {
      name: 'evidence to',
      says: 'The last day that it was determined on.',
      kind: 'day',
      of: ({ it }) => evidenceDay(it, -1),
    },
    textColumn(
      'not told by',
      'Wastes in it that do not tell how much they bring: what is given is at least there.',
      ({ it }) => listed(it.notToldBy),
    ),
  ],
};

type Report = NonNullable<ContainerData['labReports']>[number];
type Found = { readonly report: Report; readonly result: Report['results'][number] };

const found: TableOf<In<Found>> = {
  name: 'laboratory',
  says: 'One row an element that a laboratory looked for in a sample of all that is in a container.',
  columns: [
    ...whichContainer,
    textColumn('element', 'Name of the element.', ({ it }) => it.result.element),
    textColumn('symbol', 'Its symbol.', ({ it }) => it.result.symbol),
    textColumn(
      'found in',
      'What it was found in: the waste as it is, the filtered liquid, the extract of a leaching test.',
      ({ it }) => foundIn[it.result.in],
    ),
    {
      name: 'level',
      says: 'The level as reported; where none was found, the level down to which none was.',
      kind: 'number',
      unit: { in: 'level unit' },
      of: ({ it }) => it.result.amount.value,
    },
    textColumn('level unit', 'Unit of the column "level".', ({ it }) => it.result.amount.unit),
    textColumn('none found', 'Whether none was found: yes or no.', ({ it }) =>
      it.result.noneFound ? 'yes' : 'no',
    ),
    ...figureColumns<In<Found>>(
      'by its wastes',
      'what was logged of its wastes comes to, where that contradicts the report',
      ({ it }) => it.result.byWastes ?? none,
    ),
    textColumn('laboratory', 'Who found it.', ({ it }) => it.report.laboratory),
    textColumn('report number', 'Number of the report.', ({ it }) => it.report.number),
    {
      name: 'sample of',
      says: 'The day that the sample was taken.',
      kind: 'day',
      of: ({ it }) => it.report.sampledOn,
    },
    textColumn(
      'of what is in it now',
      'Whether it is of what is in the container now: yes or no.',
      ({ it }) => (it.report.ofNow ? 'yes' : 'no'),
    ),
  ],
};

type Residue = ContainerData['residues'][number];

const solids: TableOf<In<Residue>> = {
  name: 'wet-solids',
  says: 'One row a wet solid of a container, with the liquor that it holds.',
  columns: [
    ...whichContainer,
    textColumn('solid', 'What the solid is.', ({ it }) => it.name),
    ...figureColumns<In<Residue>>('wet mass', 'its mass, wet', ({ it }) => it.wetMass),
    ...figureColumns<In<Residue>>(
      'held liquor',
      'the volume of the liquor it holds',
      ({ it }) => it.heldLiquor,
    ),
  ],
};

type Base = ContainerData['bases'][number];
type OfBase = { readonly base: Base; readonly what: string; readonly figure: Base['carbonDioxide'] };

const ofBase = (base: Base): readonly OfBase[] => [
  { base, what: 'mass of the base', figure: base.mass },
  { base, what: 'heat', figure: base.heat },
  { base, what: 'rise of temperature, all at once', figure: base.rise },
  { base, what: 'sludge, dry', figure: base.sludgeDry },
  { base, what: 'sludge, drained', figure: base.sludgeDrained },
  { base, what: 'carbon dioxide', figure: base.carbonDioxide },
];

const bases: TableOf<In<OfBase>> = {
  name: 'bases',
  says: 'What neutralising a container would take and give, by each base that the workshop keeps: one row a quantity. It is no advice to treat.',
  columns: [
    ...whichContainer,
    textColumn('base', 'Name of the base.', ({ it }) => it.base.base),
    textColumn('formula', 'Its formula.', ({ it }) => it.base.formula),
    textColumn(
      'purity',
      'Per cent by mass that was reckoned with, and who says so.',
      ({ it }) => `${it.base.purity.percent} %, ${it.base.purity.saidBy}`,
    ),
    textColumn('quantity', 'What the numbers of the row are.', ({ it }) => it.what),
    ...figureColumns<In<OfBase>>('', 'the quantity', ({ it }) => it.figure),
    textColumn('does not bring down', 'Metals in it that this base leaves dissolved.', ({ it }) =>
      listed(it.base.doesNotBringDown),
    ),
    textColumn('not told by', 'Wastes in it that do not tell: they are not counted.', ({ it }) =>
      listed(it.base.notToldBy),
    ),
  ],
};

const neverMeet: TableOf<In<ContainerData['mustNotMeet'][number]>> = {
  name: 'must-not-meet',
  says: 'What must not meet the contents of a container, one row a rule.',
  columns: [
    ...whichContainer,
    textColumn('rule', 'The rule in short.', ({ it }) => it.rule),
    textColumn('never', 'What must not be done.', ({ it }) => it.never),
    textColumn('happens', 'What happens if it is.', ({ it }) => it.happens),
    textColumn('source', 'Where the rule is from.', ({ it }) => it.source),
    textColumn('status', 'How well the source is known.', ({ it }) => it.status),
  ],
};

export const containerTables = (data: DisposalData): readonly Table[] => [
  filled(
    containers,
    each(data, () => [null]),
  ),
  filled(
    composition,
    each(data, (c) => c.substances),
  ),
  filled(
    found,
    each(data, ({ labReports = [] }) =>
      labReports.flatMap((report) => report.results.map((result) => ({ report, result }))),
    ),
  ),
  filled(
    solids,
    each(data, (c) => c.residues),
  ),
  filled(
    bases,
    each(data, (c) => c.bases.flatMap(ofBase)),
  ),
  filled(
    neverMeet,
    each(data, (c) => c.mustNotMeet),
  ),
];
