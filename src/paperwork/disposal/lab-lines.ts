/** Gathers what laboratories found in a container, the newest sample first. */
import { bySample, phReport } from '../../ledger/lab-levels';
import { type ReportDisagrees, reportDisagreements } from '../../ledger/report-disagrees';
import type { ContainerState, ReportState } from '../../ledger/state';
import { formatWritten } from '../../quantities/format';
import { calendarDayText } from '../dates';
import { nameOfElement } from '../element-names';
import { labWords as w } from '../lab-words';
import { capital, notDetermined, withUnit } from '../words';
import type { Asked } from './asked';
import type { LabReportData } from './lab-data';
import { phOf } from './origins';
import type { WorkedLines } from './worked-lines';

type Told = {
  readonly asked: Asked;
  readonly lines: WorkedLines;
  readonly containerId: string;
  readonly against: readonly ReportDisagrees[];
};

function reportOf({ asked: { sign }, lines, containerId, against }: Told, told: ReportState): LabReportData {
  const { laboratory, document, sampledOn, ph, results } = told.body;
  return {
    laboratory,
    ...(document === undefined ? {} : { number: document }),
    sampledOn,
    ofNow: told.staleSince === null,
    ...(ph ? { ph: formatWritten(ph, sign) } : {}),
    results: results.map(({ element, in: where, level, below }) => {
      const other = against.find(
        (one) => one.entryId === told.entryId && one.element === element && where === 'filtered',
      );
      return {
        element: capital(nameOfElement(element) ?? element),
        symbol: element,
        in: where,
        level: withUnit(formatWritten(level, sign), level.unit),
        amount: { value: level.value, unit: level.unit },
        noneFound: below === true,
        ...(other ? { byWastes: lines.of(other.byWastes, containerId) } : {}),
      };
    }),
  };
}

export function labReportsOf(asked: Asked, lines: WorkedLines, container: ContainerState): LabReportData[] {
  const { containerId } = container.body;
  const against = reportDisagreements(asked.state, container);
  return bySample(container.reports)
    .toReversed()
    .map((told) => reportOf({ asked, lines, containerId, against }, told));
}

/** The pH as last known of all of it: what was read in a treatment before what a laboratory found, that before what was logged. */
export function phTold(asked: Asked, container: ContainerState): string {
  const logged = phOf(asked, container);
  const body = phReport(container.reports)?.body;
  const treated = container.contents.some(({ treatedBy }) => treatedBy.length > 0);
  if (!body?.ph || (treated && logged !== notDetermined)) return logged;
  const value = formatWritten(body.ph, asked.sign);
  return w.phBy(value, body.laboratory, calendarDayText(body.sampledOn));
}
