/** What arose by kind and month, and what stood here, as blocks of the paper of a year. */
import { type Block, type DrawingBlock, table } from '../document';
import { atLeast, figureCells, figureColumns, heading, likelyText, small } from './cells';
import type { MassData, YearData } from './year-data';
import { yearPaperWords as w } from './year-words';

const named = (what: string) => [{ key: 'what', head: what, share: 68 }, ...figureColumns(w.kg)] as const;

type MassRow = { readonly called: string; readonly mass: MassData; readonly strong?: boolean };

const massTable = (what: string, rows: readonly MassRow[]): Block =>
  table(
    named(what),
    rows.map(({ called, mass, strong = false }) => ({
      kind: 'cells' as const,
      cells: { what: { text: called, strong }, ...figureCells(mass.sum) },
    })),
  );

export function glanceBlocks({ start, arose, handedOver, end, over }: YearData): Block[] {
  const rows: MassRow[] = [
    { called: w.startMass, mass: start },
    { called: w.aroseMass, mass: arose },
    { called: w.leftMass, mass: handedOver },
    { called: over ? w.endMass : w.endMassSoFar, mass: end },
  ];
  return [heading(1, w.atAGlance), massTable(w.what, rows), ...atLeast(rows), small(w.massNote)];
}

export function aroseBlocks(data: YearData, plots: readonly DrawingBlock[]): Block[] {
  const { kinds, months, besides, arose, found } = data;
  if (kinds.length === 0 && found.length === 0 && besides.length === 0)
    return [heading(1, w.arose), small(w.nothingArose), ...plots];
  return [
    heading(1, w.arose),
    ...(kinds.length === 0
      ? [small(w.nothingArose)]
      : [
          heading(2, w.byKind),
          massTable(w.what, [...kinds, { called: w.sumOfKinds, mass: arose, strong: true }]),
          ...atLeast(kinds),
        ]),
    ...(found.length > 0 ? [small(w.foundText(found.map(({ called }) => called)))] : []),
    ...plots,
    heading(2, w.byMonth),
    table(
      [
        { key: 'month', head: w.month, share: 32 },
        { key: 'kinds', head: w.kinds, share: 70 },
        ...figureColumns(w.kg),
      ],
      months.map(({ month, mass, kinds: of }) => ({
        kind: 'cells' as const,
        cells: {
          month: w.monthText(month),
          kinds: of.map((kind) => w.kindIn(kind.called, likelyText(kind.mass))).join('; ') || w.none,
          ...figureCells(mass.sum),
        },
      })),
    ),
    ...atLeast(months.map(({ month, mass }) => ({ called: w.monthText(month), mass }))),
    ...(besides.length > 0
      ? [
          heading(2, w.besides),
          massTable(w.what, besides),
          ...besides.map(({ called, why }) => small(`${called}: ${why}`)),
          ...atLeast(besides),
        ]
      : []),
  ];
}

function standing(title: string, here: YearData['hereAtEnd']): Block[] {
  return [
    heading(2, title),
    here.length === 0
      ? small(w.nothingHere)
      : table(
          [
            { key: 'thing', head: w.thing, share: 52 },
            { key: 'holds', head: w.holds, share: 44 },
            ...figureColumns(w.kg),
          ],
          here.map(({ thing, holds, mass }) => ({
            kind: 'cells' as const,
            cells: { thing: thing.called, holds, ...figureCells(mass) },
          })),
        ),
  ];
}

export const hereBlocks = ({ hereAtStart, hereAtEnd, over }: YearData): Block[] => [
  heading(1, w.here),
  ...standing(w.hereAtStart, hereAtStart),
  ...standing(over ? w.hereAtEnd : w.hereSoFar, hereAtEnd),
];
