/** What went in and out of a container, the newest first. */
import type { ContainerFigures } from '../../ledger/container-figures';
import type { ContainerMovement, ContainerState, State } from '../../ledger/state';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { amountText, dayText, streamTitle } from '../amounts';
import { useShell } from '../shell';
import { containerWords as w } from './words';

type Props = {
  readonly state: State;
  readonly container: ContainerState;
  readonly figures: ContainerFigures;
};

function movementTitle(state: State, m: ContainerMovement): string {
  const other = m.otherId === null ? undefined : state.containers.get(m.otherId)?.body.code;
  if (m.way === 'in')
    return m.streamId === null ? w.pouredFrom(unbroken(other ?? '')) : streamTitle(state, m.streamId);
  if (m.purpose === 'placed') return '';
  return other === undefined ? w.out[m.purpose] : `${w.out[m.purpose]} ${unbroken(other)}`;
}

export function ContainerMovements({ state, container }: Omit<Props, 'figures'>) {
  const { sign, now } = useShell();
  const movements = container.movements.toReversed();
  return (
    <Part rule title={w.ledgerTitle} width="edge">
      <Rows>
        {movements.length === 0 && <Row title={w.ledgerNone} />}
        {movements.map((m) => (
          <Row
            key={`${m.entryId}${m.way}`}
            lead={dayText(m.at, now.value)}
            title={movementTitle(state, m)}
            second={m === container.movements[0] ? w.firstIn : undefined}
            figure={`${m.way === 'in' ? '+' : '−'}${amountText(m.amount, sign.value)}`}
            href={`#/record/entry/${m.entryId}`}
          />
        ))}
      </Rows>
    </Part>
  );
}
