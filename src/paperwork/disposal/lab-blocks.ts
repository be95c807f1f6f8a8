/** What laboratories found in a container, as a table of its sheet. */
import { calendarDayText } from '../dates';
import { type Block, type Row, table } from '../document';
import { foundIn, labWords as w } from '../lab-words';
import { capital } from '../words';
import type { ContainerData } from './disposal-data';
import type { LabReportData } from './lab-data';
import { rangeText, strong } from './printed';

type Key = 'element' | 'in' | 'level' | 'report' | 'sample';
type Cells = Extract<Row<Key>, { kind: 'cells' }>['cells'];

/** Elements that a laboratory looked for in what is in it now, by their symbols. */
export const reportedNow = ({ labReports = [] }: Pick<ContainerData, 'labReports'>): ReadonlySet<string> =>
  new Set(
    labReports.filter(({ ofNow }) => ofNow).flatMap(({ results }) => results.map(({ symbol }) => symbol)),
  );

const sampleText = ({ sampledOn, ofNow }: LabReportData): string =>
  ofNow ? calendarDayText(sampledOn) : w.ofBefore(calendarDayText(sampledOn));

function rowsOf(report: LabReportData): Row<Key>[] {
  const { laboratory, number, ph, results } = report;
  const whose = { report: w.report(laboratory, number), sample: sampleText(report) };
  const row = (cells: Pick<Cells, 'element' | 'in' | 'level'>): Row<Key> => ({
    kind: 'cells',
    cells: { ...cells, ...whose },
  });
  return [
    ...(ph === undefined ? [] : [row({ element: strong(w.ph), in: capital(foundIn.total), level: ph })]),
    ...results.flatMap(({ element, in: where, level, noneFound, byWastes }): Row<Key>[] => [
      row({
        element: strong(element),
        in: capital(foundIn[where]),
        level: noneFound ? w.noneDownTo(level) : level,
      }),
      ...(byWastes ? [{ kind: 'note', text: w.disagrees(element, rangeText(byWastes)) } as const] : []),
    ]),
  ];
}

/** Nothing where no laboratory had a sample. */
export function labBlocks({ labReports = [] }: ContainerData): Block[] {
  if (labReports.length === 0) return [];
  return [
    { kind: 'heading', level: 2, text: w.title },
    table(
      [
        { key: 'element', head: w.element, share: 62 },
        { key: 'in', head: w.in, share: 84 },
        { key: 'level', head: w.level, share: 140 },
        { key: 'report', head: w.reportHead, share: 138 },
        { key: 'sample', head: w.sample, share: 86 },
      ],
      labReports.flatMap(rowsOf),
    ),
  ];
}
