/** The two tables of a sheet: what is in a container, and the base it would take. */
import { type Block, type Cell, type Row, table } from '../document';
import { labWords } from '../lab-words';
import { notDetermined } from '../words';
import type { ContainerData, DisposalData, PaperFigure } from './disposal-data';
import { reportedNow } from './lab-blocks';
import { paperWords as w } from './paper-words';
import { likelyCell, type Or, rangeText, strong, unitOf } from './printed';

type Substance = ContainerData['substances'][number];
type BaseLine = ContainerData['bases'][number];

type SubstanceKey = 'substance' | 'low' | 'likely' | 'high' | 'all' | 'byMass' | 'known';

const atLeast = ({ name, notToldBy }: Substance): Row<SubstanceKey>[] =>
  notToldBy.length === 0 ? [] : [{ kind: 'note', text: w.atLeast(name, notToldBy) }];

/** @param reported a laboratory looked for it in all that is in the container */
function substanceRow(substance: Substance, reported: boolean): Row<SubstanceKey>[] {
  const { name, aLitre, inAll, byMass, howKnown } = substance;
  if (inAll === notDetermined)
    return [{ kind: 'one-answer', name: strong(name), says: reported ? labWords.seeBelow : notDetermined }];
  const litre = aLitre === notDetermined ? undefined : aLitre;
  const mass = byMass === notDetermined ? undefined : byMass;
  return [
    {
      kind: 'cells',
      cells: {
        substance: strong(name),
        low: litre?.low ?? notDetermined,
        likely: strong(litre?.likely ?? notDetermined),
        high: litre ? { text: litre.high, ...unitOf(litre) } : notDetermined,
        all: likelyCell(inAll),
        byMass: mass ? w.lowToHigh(mass.low, mass.high) : notDetermined,
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
export function compositionOf(c: ContainerData): Block {
  const always = new Set(['Cu', 'Ni', 'HNO3', 'NO3-']);
  const shown = c.substances.filter(({ symbol, inAll }) => always.has(symbol) || inAll !== notDetermined);
  const reported = reportedNow(c);
  const untold = c.substances.filter(
    (substance) => !shown.includes(substance) && !reported.has(substance.symbol),
  );
  const rows: Row<SubstanceKey>[] = [
    ...shown.flatMap((substance) => substanceRow(substance, reported.has(substance.symbol))),
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
      { key: 'substance', head: w.substance, share: 73 },
      { key: 'low', head: w.aLitreLow, share: 30, align: 'right' },
      { key: 'likely', head: w.likely, share: 34, align: 'right' },
      { key: 'high', head: w.high, share: 54, align: 'right' },
      { key: 'all', head: w.inAll, share: 52, align: 'right' },
      { key: 'byMass', head: w.byMass, share: 76, align: 'right' },
      { key: 'known', head: w.known, share: 121 },
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

export function basesOf(data: DisposalData, c: ContainerData): Block[] {
  const open = c.bases.every(({ mass }) => mass === notDetermined);
  const rows: Row<BaseKey>[] = open
    ? [{ kind: 'one-answer', name: strong(w.anyBase), says: notDetermined }]
    : c.bases.map(baseRow);
  return [
    { kind: 'heading', level: 1, text: w.basesOf(c.code) },
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
