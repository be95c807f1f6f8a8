/** Findings as rows: of a walk, of a container. */
import { codeOfContainer } from '../../ledger/put-away';
import type { FindingState } from '../../ledger/state';
import { findingsAt } from '../../ledger/walks';
import { unbroken } from '../../ui/figure-value';
import { Mark } from '../../ui/marks';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { dayText } from '../amounts';
import { sentence } from '../checklist/words';
import { useShell } from '../shell';
import { findingWords as w } from './words';

/** @param named with the code of its container before it */
export function FindingRow({
  finding,
  named = true,
}: {
  readonly finding: FindingState;
  readonly named?: boolean;
}) {
  const { state, now } = useShell();
  const { found, closed, containerId, at } = finding;
  const code = named ? unbroken(codeOfContainer(state.value, containerId) ?? '') : '';
  return (
    <Row
      {...(closed
        ? { start: 'text' as const }
        : { mark: <Mark kind={found.stops ? 'stop' : 'wrong'} />, marked: true })}
      title={[code, found.ask].filter(Boolean).join(': ')}
      second={`${sentence(found.answer)}. ${dayText(at, now.value)}`}
      figure={closed ? w.closedRow(dayText(closed.at, now.value)) : w.openRow}
      href={`#/findings/${found.findingId}`}
    />
  );
}

/** What walks found at a container and somebody closed; what is open stands with all else that is wrong with it. */
export function ClosedFindings({ containerId }: { readonly containerId: string }) {
  const { state } = useShell();
  const found = findingsAt(state.value, containerId).filter(({ closed }) => closed);
  if (found.length === 0) return null;
  return (
    <Part rule width="edge" title={w.list}>
      <Rows label={w.list}>
        {found.map((finding) => (
          <FindingRow key={finding.found.findingId} finding={finding} named={false} />
        ))}
      </Rows>
    </Part>
  );
}
