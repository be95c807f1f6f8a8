/** What left: each load with what was in it, and the same by waste code and who took it where. */
import type { Load } from '../../ledger/year-masses';
import { codeStanding, schemeName } from '../../paperwork/year/account-words';
import { Row, Rows } from '../../ui/row';
import { dayText } from '../amounts';
import { useShell } from '../shell';
import { codeOf, partSays, sentences } from './sayings';
import { Edge, MassRow, workingAt, type YearPart } from './waste-rows';
import { yearWords as w } from './words';

function LoadRow({ year, load }: { readonly year: string; readonly load: Load }) {
  const { state, now } = useShell();
  const { handOver, parts, mass } = load;
  const { handOverId, collector } = handOver.body;
  const back = parts.filter(({ counts }) => !counts);
  const says = sentences(
    ...parts.filter(({ counts }) => counts).map((part) => partSays(state.value, part)),
    back.length === 0
      ? ''
      : w.cameBack(back.map(({ containerId }) => codeOf(state.value, containerId)).join(', ')),
  );
  return (
    <MassRow
      title={w.took(dayText(handOver.at, now.value), collector.name)}
      second={says}
      mass={mass}
      href={mass.sum ? workingAt(year, `load-${handOverId}`) : `#/hand-overs/${handOverId}`}
    />
  );
}

export function LeftRows({ year, account }: YearPart) {
  const { state } = useShell();
  const { went, handedOver } = account;
  return (
    <Edge title={w.left} says={went.loads.length === 0 ? w.nothingLeft : undefined}>
      <Rows label={w.left}>
        {went.loads.length > 0 && (
          <MassRow title={w.inAll} mass={handedOver} href={workingAt(year, 'handed-over')} />
        )}
        {went.loads.map((load) => (
          <LoadRow key={load.handOver.entryId} year={year} load={load} />
        ))}
        {went.otherwise
          .filter(({ counts }) => counts)
          .map((part) => (
            <Row
              key={part.containerId}
              title={w.otherwise(codeOf(state.value, part.containerId))}
              second={partSays(state.value, part)}
              href={`#/containers/${part.containerId}`}
            />
          ))}
      </Rows>
    </Edge>
  );
}

export function CodeRows({ year, account: { codes } }: YearPart) {
  if (codes.length === 0) return null;
  return (
    <Edge title={w.codes} says={w.codesSecond}>
      <Rows label={w.codes}>
        {codes.map((row, i) => (
          <MassRow
            key={i}
            title={row.code ?? w.noCode}
            second={sentences(
              ...(row.code === null
                ? []
                : [schemeName[row.scheme] ?? row.scheme, codeStanding[row.standing]]),
              [row.collector, row.destination].filter(Boolean).join(', '),
            )}
            mass={row.mass}
            href={workingAt(year, `code-${i + 1}`)}
          />
        ))}
      </Rows>
    </Edge>
  );
}
