/** What laboratories found in a container, on its page: the last report with its results, earlier ones as a line each. */
import type { LabResult } from '../../ledger/entries/lab-reports';
import { bySample } from '../../ledger/lab-levels';
import { type ReportDisagrees, reportDisagreements } from '../../ledger/report-disagrees';
import type { ContainerState, ReportState, State } from '../../ledger/state';
import { nameOfElement } from '../../paperwork/element-names';
import { foundIn } from '../../paperwork/lab-words';
import { capital } from '../../paperwork/words';
import { formatWritten } from '../../quantities/format';
import { FigureValue } from '../../ui/figure-value';
import { Mark } from '../../ui/marks';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { calendarDayText, dayText, shown } from '../amounts';
import { useShell } from '../shell';
import { labWords as w } from './words';

/** As many as are read at a glance; the others open with a tap. */
const atOnce = 6;

function ReportRow({ report: { body, entryId } }: { readonly report: ReportState }) {
  const { now, sign } = useShell();
  const { laboratory, document, sampledOn, ph } = body;
  const second = [
    w.sampled(calendarDayText(sampledOn, now.value)),
    ...(document === undefined ? [] : [w.number(document)]),
    ...(ph ? [`${w.ph} ${formatWritten(ph, sign.value)}`] : []),
  ];
  return <Row title={laboratory} second={second.join(', ')} href={`#/record/entry/${entryId}`} />;
}

type ResultProps = { readonly result: LabResult; readonly against: ReportDisagrees | undefined };

function ResultRow({ result: { element, in: where, level, below }, against }: ResultProps) {
  const { sign } = useShell();
  const byWastes = against && shown(against.byWastes, sign.value);
  const second = below ? w.noneDownTo(foundIn[where]) : w.in(foundIn[where]);
  return (
    <Row
      mark={against && <Mark kind="wrong" />}
      marked={against !== undefined}
      title={capital(nameOfElement(element) ?? element)}
      second={
        byWastes ? `${second}; ${w.byWastes(byWastes.range ?? byWastes.value, byWastes.unit ?? '')}` : second
      }
      figure={<FigureValue value={formatWritten(level, sign.value)} unit={level.unit} />}
    />
  );
}

export function Reported({
  state,
  container,
}: {
  readonly state: State;
  readonly container: ContainerState;
}) {
  const { now } = useShell();
  const [last, ...earlier] = bySample(container.reports).toReversed();
  if (!last) return null;
  const { entryId, staleSince, body } = last;
  const against = reportDisagreements(state, container).filter((one) => one.entryId === entryId);
  const rows = body.results.map((result, i) => (
    <ResultRow
      key={i}
      result={result}
      against={result.in === 'filtered' ? against.find((one) => one.element === result.element) : undefined}
    />
  ));
  return (
    <Part rule title={w.part} width="edge">
      {staleSince !== null && (
        <Notice mark="unknown" second={w.staleSecond(dayText(staleSince, now.value))}>
          {w.stale}
        </Notice>
      )}
      <Rows>
        <ReportRow report={last} />
        {rows.length <= atOnce && rows}
      </Rows>
      {rows.length > atOnce && (
        <details>
          <summary>{w.all(rows.length)}</summary>
          <Rows label={w.part}>{rows}</Rows>
        </details>
      )}
      {earlier.length > 0 && (
        <Rows>
          {earlier.map((report) => (
            <ReportRow key={report.entryId} report={report} />
          ))}
        </Rows>
      )}
    </Part>
  );
}
