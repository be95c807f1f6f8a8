/** What left, load by load and by waste code, as blocks of the paper of a year. */
import { calendarDayText } from '../dates';
import { dayOr, rangeText } from '../disposal/printed';
import { type Block, table } from '../document';
import { notDetermined } from '../words';
import { atLeast, called, heading, massText, small } from './cells';
import type { YearData } from './year-data';
import { yearPaperWords as w } from './year-words';

const containerTable = (containers: YearData['otherwise']): Block =>
  table(
    [
      { key: 'code', head: w.container, share: 16 },
      { key: 'holds', head: w.holds, share: 42 },
      { key: 'mass', head: w.mass, share: 34 },
      { key: 'agreed', head: w.agreed, share: 22 },
      { key: 'proof', head: w.proof, share: 28 },
    ],
    containers.map(({ container, holds, mass, agreed, counted, proofOn }) => ({
      kind: 'cells' as const,
      cells: {
        code: { text: container.called, strong: true },
        holds,
        mass: rangeText(mass),
        agreed,
        proof: counted ? dayOr(proofOn) : w.came,
      },
    })),
  );

const loadBlocks = ({ loads }: YearData): Block[] =>
  loads.flatMap(({ on, collector, destination, document, licence, treatedHow, mass, containers }) => [
    heading(2, w.loadTitle(calendarDayText(on), collector)),
    small(w.loadText(destination, document, licence, treatedHow)),
    containerTable(containers),
    ...atLeast([{ called: w.leftMass, mass }]),
  ]);

const codeBlocks = ({ codes }: YearData): Block[] =>
  codes.length === 0
    ? []
    : [
        heading(2, w.codes),
        small(w.codesNote),
        table(
          [
            { key: 'code', head: w.code, share: 20 },
            { key: 'law', head: w.law, share: 28 },
            { key: 'standing', head: w.standing, share: 36 },
            { key: 'to', head: w.to, share: 36 },
            { key: 'container', head: w.container, share: 18 },
            { key: 'mass', head: w.kg, share: 28 },
          ],
          codes.map(({ code, law, says, collector, destination, containers, mass }) => ({
            kind: 'cells' as const,
            cells: {
              code: { text: code, strong: code !== notDetermined },
              law,
              standing: says,
              to: w.placeTo(collector, destination),
              container: called(containers).join(', '),
              mass: massText(mass),
            },
          })),
        ),
      ];

export const leftBlocks = (data: YearData): Block[] => [
  heading(1, w.left),
  ...(data.loads.length === 0 ? [small(w.noLoads)] : loadBlocks(data)),
  ...(data.otherwise.length > 0 ? [heading(2, w.otherwise), containerTable(data.otherwise)] : []),
  ...codeBlocks(data),
];
