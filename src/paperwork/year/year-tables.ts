/** The tables of the summary of a year, made of its data alone: paper and tables cannot differ. */
import type { PaperFigure } from '../disposal/paper-figure';
import { listed, textColumn } from '../tables/disposal-rows';
import { figureColumns } from '../tables/figure-columns';
import { type ColumnOf, filled, none, type Table, type TableOf } from '../tables/table';
import { lineName, type OfLine, workingColumns } from '../tables/working-columns';
import { notDetermined } from '../words';
import { called } from './cells';
import { type MassData, nothing, type YearData } from './year-data';

type Maybe = PaperFigure | typeof notDetermined | typeof none;

const sumOf = ({ sum }: MassData): Maybe => (sum === nothing ? none : sum);

/** A sum with what has no mass in it. */
const massColumns = <Row>(what: string, of: (row: Row) => MassData): readonly ColumnOf<Row>[] => [
  ...figureColumns<Row>('', what, (row) => sumOf(of(row))),
  textColumn<Row>(
    'no mass known of',
    'What is in it and has no mass: with any, the sum is at least.',
    (row) => listed(called(of(row).noMass)),
  ),
];

const yesNo = (is: boolean): string => (is ? 'yes' : 'no');

type MonthRow = { readonly month: string; readonly kind: string; readonly mass: MassData };

const months: TableOf<MonthRow> = {
  name: 'waste-by-month',
  says: 'Waste that arose, one row a month and kind of waste.',
  columns: [
    textColumn('month', 'Year and month.', ({ month }) => month),
    textColumn('kind', 'Kind of waste; "none" of a month in which none was logged.', ({ kind }) => kind),
    ...massColumns<MonthRow>('its mass', ({ mass }) => mass),
  ],
};

type WasteRow = YearData['wastes'][number];

const wastes: TableOf<WasteRow> = {
  name: 'wastes',
  says: 'Every waste that was logged in the time.',
  columns: [
    textColumn('waste', 'What it is called.', ({ waste }) => waste.called),
    textColumn('waste id', 'Identifier of the waste in the record.', ({ waste }) => waste.id),
    textColumn('kind', 'Kind of waste.', ({ kind }) => kind),
    textColumn('month', 'Year and month in which it arose.', ({ month }) => month),
    textColumn('counted', 'Whether it is counted in what arose: yes or no.', ({ counted }) => yesNo(counted)),
    ...figureColumns<WasteRow>('', 'its mass', ({ mass }) => mass),
  ],
};

type LeftRow = {
  readonly load: YearData['loads'][number] | null;
  readonly it: YearData['otherwise'][number];
};

const left: TableOf<LeftRow> = {
  name: 'handed-over',
  says: 'One row a container that left: with whom, where to, how much, and the proof of it.',
  columns: [
    {
      name: 'on',
      says: 'The day on which it was handed over.',
      kind: 'day',
      of: ({ load }) => load?.on ?? none,
    },
    textColumn(
      'collector',
      'Who took it; "none" where it went some other way.',
      ({ load }) => load?.collector,
    ),
    textColumn('licence', 'Number of their licence.', ({ load }) => load?.licence),
    textColumn('destination', 'Where it went.', ({ load }) => load?.destination),
    textColumn('document', 'Number of the paper that went with it.', ({ load }) => load?.document),
    textColumn('container', 'Code that stands on the container.', ({ it }) => it.container.called),
    textColumn('container id', 'Identifier of the container in the record.', ({ it }) => it.container.id),
    textColumn('holds', 'Kinds of waste in it as it left.', ({ it }) => it.holds),
    ...figureColumns<LeftRow>('', 'what was in it as it left, by the record', ({ it }) => it.mass),
    textColumn('agreed', 'What the collector read or wrote, with its unit.', ({ it }) => it.agreed),
    textColumn('counted', 'No where it came back, or had left already: yes or no.', ({ it }) =>
      yesNo(it.counted),
    ),
    {
      name: 'proof on',
      says: 'The day on which proof of disposal was filed.',
      kind: 'day',
      of: ({ it }) => it.proofOn,
    },
    textColumn(
      'treated how',
      'What was done with it, as the proof calls it.',
      ({ load }) => load?.treatedHow,
    ),
  ],
};

type CodeRow = YearData['codes'][number];

const codes: TableOf<CodeRow> = {
  name: 'by-waste-code',
  says: 'What was handed over by waste code and by who took it where. A container stands under each code that it has.',
  columns: [
    textColumn('law', 'The law or list that the code is of.', ({ law }) => law),
    textColumn('code', 'The waste code.', ({ code }) => code),
    textColumn('standing', 'Whether somebody confirmed it.', ({ says }) => says),
    textColumn('collector', 'Who took it.', ({ collector }) => collector),
    textColumn('destination', 'Where it went.', ({ destination }) => destination),
    textColumn('containers', 'The containers.', ({ containers }) => listed(called(containers))),
    ...massColumns<CodeRow>('its mass', ({ mass }) => mass),
  ],
};

type Balance = YearData['balances'][number];
type LineRow = {
  readonly balance: Balance;
  readonly side: 'in' | 'out' | 'in less out';
  readonly line: string;
  readonly amount: Maybe;
};

const linesOf = (balance: Balance): readonly LineRow[] => [
  ...balance.ins.map(({ called: line, sum }): LineRow => ({ balance, side: 'in', line, amount: sum })),
  { balance, side: 'in', line: 'in all', amount: balance.sumIn },
  ...balance.outs.map(({ called: line, sum }): LineRow => ({ balance, side: 'out', line, amount: sum })),
  { balance, side: 'out', line: 'in all', amount: balance.sumOut },
  { balance, side: 'in less out', line: 'in all', amount: balance.off },
];

const balances: TableOf<LineRow> = {
  name: 'balances',
  says: 'What each substance came from and went to, one row a line; "in all" has the sums.',
  columns: [
    textColumn('substance', 'The substance.', ({ balance }) => balance.called),
    textColumn('side', 'In, out, or in less out.', ({ side }) => side),
    textColumn('row', 'What the numbers of the row are.', ({ line }) => line),
    ...figureColumns<LineRow>('', 'the amount', ({ amount }) => amount),
    textColumn(
      'how it stands',
      'Whether the balance closes, as far as it is told.',
      ({ balance }) => balance.says,
    ),
    textColumn('not told by', 'What does not tell: with any, each side is at least.', ({ balance }) =>
      listed(balance.gaps.map(({ thing, says }) => `${says} ${thing.called}`)),
    ),
  ],
};

type SilverRow = {
  readonly batch: string;
  readonly silver: Maybe;
  readonly it: YearData['silver']['each'][number];
};

const silver: TableOf<SilverRow> = {
  name: 'for-a-gram-of-silver',
  says: 'Copper, nickel and waste of batches whose silver was weighed in the time, against that silver.',
  columns: [
    textColumn('batch', 'The batch, or all of them.', ({ batch }) => batch),
    ...figureColumns<SilverRow>('silver', 'silver got back, weighed dry', (row) => row.silver),
    textColumn('what', 'What went to waste.', ({ it }) => it.called),
    ...figureColumns<SilverRow>('in waste', 'it in waste', ({ it }) => it.all),
    ...figureColumns<SilverRow>('for a gram', 'it for a gram of silver', ({ it }) => it.ratio),
    textColumn('not told by', 'Wastes that do not tell: what is given is at least.', ({ it }) =>
      listed(called(it.notToldBy)),
    ),
  ],
};

const working: TableOf<OfLine> = {
  name: 'working',
  says: 'The working of every figure, one row a line: each stands on lines above it.',
  columns: [lineName, ...workingColumns],
};

const noMonth: MassData = { sum: nothing, noMass: [] };

export const yearTables = (data: YearData): readonly Table[] => [
  filled(
    months,
    data.months.flatMap(({ month, kinds }): MonthRow[] =>
      kinds.length === 0
        ? [{ month, kind: none, mass: noMonth }]
        : kinds.map(({ called: kind, mass }) => ({ month, kind, mass })),
    ),
  ),
  filled(wastes, data.wastes),
  filled(left, [
    ...data.loads.flatMap((load) => load.containers.map((it): LeftRow => ({ load, it }))),
    ...data.otherwise.map((it): LeftRow => ({ load: null, it })),
  ]),
  filled(codes, data.codes),
  filled(balances, data.balances.flatMap(linesOf)),
  filled(silver, [
    ...data.silver.batches.flatMap(({ batch, silver: got, each }) =>
      each.map((it): SilverRow => ({ batch: batch.called, silver: got, it })),
    ),
    ...(data.silver.weighed === notDetermined
      ? []
      : data.silver.each.map((it): SilverRow => ({ batch: 'all', silver: data.silver.weighed, it }))),
  ]),
  filled(
    working,
    data.working.map((line) => ({ line })),
  ),
];
