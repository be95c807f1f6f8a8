/** What went in and out of a container, the newest first. */

import type { ContainerFigures } from '../../ledger/container-figures';
import { codeOfContainer } from '../../ledger/put-away';
import type { ContainerMovement, ContainerState, State } from '../../ledger/state';
import type { DecimalSign } from '../../quantities/format';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { amountText, dayText, heldText, leadDayText, streamTitle } from '../amounts';
import { stepWords } from '../batches/words';
import { useShell } from '../shell';
import { lifeWords } from './life-words';
import { containerWords as w } from './words';

type Props = {
  readonly state: State;
  readonly container: ContainerState;
  readonly figures: ContainerFigures;
};

function movementTitle(state: State, m: ContainerMovement): string {
  const other = m.otherId === null ? undefined : codeOfContainer(state, m.otherId);
  if (m.purpose === 'determined') return `${w.out.determined}: ${streamTitle(state, m.streamId ?? '')}`;
  if (m.way === 'in')
    return m.streamId === null ? w.pouredFrom(unbroken(other ?? '')) : streamTitle(state, m.streamId);
  if (m.purpose === 'placed') return '';
  return other === undefined ? w.out[m.purpose] : `${w.out[m.purpose]} ${unbroken(other)}`;
}

/** What was determined is not added: it is all that is in it from then on. */
const signOf = ({ way, purpose }: ContainerMovement): string => {
  if (purpose === 'determined') return '= ';
  return way === 'in' ? '+' : '−';
};

/** The step that gave it, whether it was the first in, and what the container held afterwards. */
function movementSecond(
  state: State,
  { streamId, after }: ContainerMovement,
  first: boolean,
  sign: DecimalSign,
  now: string,
): string {
  const stepId = streamId === null ? null : (state.streams.get(streamId)?.body.stepId ?? null);
  const step = stepId === null ? undefined : state.steps.get(stepId);
  return [
    step && lifeWords.step(stepWords[step.body.step] ?? step.body.step, dayText(step.at, now)),
    first ? w.firstIn : undefined,
    lifeWords.holdsThen(heldText(after, sign)),
  ]
    .filter(Boolean)
    .join(', ');
}

export function ContainerMovements({ state, container }: Omit<Props, 'figures'>) {
  const { sign, now } = useShell();
  const movements = container.movements.toReversed();
  // Of one that stood here before not all that was in it is at hand.
  const isOlder = state.earlier !== null && container.at < state.earlier.from;
  const first = isOlder ? undefined : container.movements[0];
  return (
    <Part rule title={w.ledgerTitle} width="edge">
      <Rows>
        {movements.length === 0 && !isOlder && <Row title={w.ledgerNone} />}
        {movements.map((m) => (
          <Row
            key={`${m.entryId}${m.way}`}
            lead={leadDayText(m.at, now.value)}
            title={movementTitle(state, m)}
            second={movementSecond(state, m, m === first, sign.value, now.value)}
            figure={`${signOf(m)}${amountText(m.amount, sign.value)}`}
            href={`#/record/entry/${m.entryId}`}
          />
        ))}
        {isOlder && (
          <Row
            title={w.ledgerBefore}
            second={w.ledgerBeforeSecond}
            href={`#/containers/${container.body.containerId}/history`}
          />
        )}
      </Rows>
    </Part>
  );
}
