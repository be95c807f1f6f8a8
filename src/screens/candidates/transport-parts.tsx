/** What only a transport entry has: the lines of the paper, names, packing group, mark, reportable quantities. */

import { joined } from '../../paperwork/words';
import type { Transport, TransportCandidate } from '../../rules/transport/candidates';
import { Mark } from '../../ui/marks';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { FigureRow } from '../figure-row';
import { words } from '../words';
import styles from './candidates.module.css';
import { CitedRules } from './cited-rules';
import { LimitRow } from './limit-row';
import { candidateWords as w } from './words';

const Line = ({ by, says }: { readonly by: string; readonly says: string | undefined }) =>
  says === undefined ? null : (
    <div>
      <h3>{by}</h3>
      <p class={styles.paper}>{says}</p>
    </div>
  );

type Props = {
  readonly transport: Transport;
  readonly candidate: TransportCandidate;
  /** Address of a figure's working. */
  readonly workingOf: (key: string) => string;
};

function Reportables({ transport, workingOf }: Omit<Props, 'candidate'>) {
  if (transport.reportable.length === 0) return null;
  return (
    <Part rule title={w.reportable} width="edge">
      <Rows label={w.reportable}>
        {transport.reportable.flatMap(({ of, held, limit, reached }, at) => [
          <Row
            key={of}
            {...(reached === 'not determined'
              ? { mark: <Mark kind="unknown" /> }
              : { start: 'text' as const })}
            title={of}
            second={w.reached[reached]}
          />,
          ...(held
            ? [
                <FigureRow
                  key={`held ${of}`}
                  title={held.sentence}
                  figure={held}
                  href={workingOf(`held-${at}`)}
                />,
              ]
            : []),
          <LimitRow key={`limit ${of}`} limit={limit} href={workingOf(`reportable-${at}`)} />,
        ])}
      </Rows>
    </Part>
  );
}

export function TransportParts({ transport, candidate, workingOf }: Props) {
  const { described, packingGroup, technicalNames, environmentallyHazardous, why, citation } = candidate;
  return (
    <>
      <Part rule title={w.described}>
        <Line by={w.adr} says={described.adr} />
        <Line by={w.adrKnown} says={described.adrByKnowledge} />
        <Line by={w.usa} says={described.usa} />
        <p>
          <b>{w.group}:</b> {packingGroup}
        </p>
        <p>
          <b>{w.namesTitle}:</b> {technicalNames.length === 0 ? words.notDetermined : joined(technicalNames)}
        </p>
        <p>
          <b>{w.environment}:</b> {w.marks[environmentallyHazardous]}
        </p>
      </Part>
      <Reportables transport={transport} workingOf={workingOf} />
      <Part rule title={w.whyThis}>
        <CitedRules rules={why.filter(({ rule }) => rule !== citation.rule)} />
      </Part>
      {transport.heed.length > 0 && (
        <Part rule title={w.heed}>
          <CitedRules rules={transport.heed} />
        </Part>
      )}
    </>
  );
}
