/** What silver cost in waste, and what treating took. */
import type { PerSilver } from '../../ledger/year-silver';
import { perGram, perSilverName } from '../../paperwork/year/account-words';
import { FigureValue } from '../../ui/figure-value';
import { Row, Rows } from '../../ui/row';
import { shown } from '../amounts';
import { FigureRow } from '../figure-row';
import { useShell } from '../shell';
import { thingName, words } from '../words';
import { batchCode } from './sayings';
import { Edge, workingAt, type YearPart } from './waste-rows';
import { yearWords as w } from './words';

type RatioProps = { readonly title: string; readonly of: PerSilver; readonly href: string };

function Ratio({ title, of: { ratio, openIn }, href }: RatioProps) {
  const { sign } = useShell();
  const second = openIn.length > 0 ? w.openIn(openIn.length) : undefined;
  return ratio ? (
    <Row
      title={title}
      second={second}
      figure={<FigureValue {...shown(ratio, sign.value)} unit={perGram} />}
      href={href}
      equals
    />
  ) : (
    <Row title={title} second={second} figure={<span>{words.notDetermined}</span>} />
  );
}

export function SilverRows({ year, account: { silver } }: YearPart) {
  const { state } = useShell();
  const { silver: got, each, batches, notWeighed } = silver;
  const not = notWeighed.map((id) => batchCode(state.value, id)).join(', ');
  return (
    <Edge
      title={w.silver}
      says={[got ? w.silverBatches : w.silverNone, not === '' ? '' : w.silverNot(not)].join(' ')}
    >
      {got && (
        <Rows label={w.silver}>
          {each.map((one) => (
            <Ratio
              key={one.what}
              title={perSilverName[one.what]}
              of={one}
              href={workingAt(year, `silver-${one.what}`)}
            />
          ))}
          <FigureRow title={w.silverGot} figure={got} href={workingAt(year, 'silver')} />
          {batches.length > 1 &&
            batches.flatMap(({ batchId, each: own }) =>
              own
                .filter(({ what }) => what === 'Cu')
                .map((one) => (
                  <Ratio
                    key={batchId}
                    title={`${perSilverName.Cu}, ${batchCode(state.value, batchId)}`}
                    of={one}
                    href={workingAt(year, `batch-${batchId}-Cu`)}
                  />
                )),
            )}
        </Rows>
      )}
    </Edge>
  );
}

export function AgentRows({ year, account: { agents } }: YearPart) {
  if (agents.length === 0) return null;
  return (
    <Edge title={w.treating}>
      <Rows label={w.treating}>
        {agents.map(({ agent, mass, treatments }) => (
          <FigureRow
            key={agent}
            title={thingName(agent)}
            second={w.agentSecond(treatments)}
            figure={mass}
            href={workingAt(year, `agent-${agent}`)}
          />
        ))}
      </Rows>
    </Edge>
  );
}
