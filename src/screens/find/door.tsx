/** The way to finding something, above a list, and behind one where the list does not hold all. */
import type { FoundRow } from '../../ledger/found-rows';
import { putAwayRows } from '../../ledger/put-away';
import { Row, Rows } from '../../ui/row';
import { countText } from '../amounts';
import { useShell } from '../shell';
import { findWords as w } from './words';

export const FindDoor = () => (
  <Rows>
    <Row title={w.title} second={w.second} href="#/find" />
  </Rows>
);

export function LongAgo({ is }: Pick<FoundRow, 'is'>) {
  const { state } = useShell();
  const count = putAwayRows(state.value).filter((row) => row.is === is).length;
  if (count === 0) return null;
  return (
    <Rows>
      <Row title={w.longAgo(countText(count))} second={w.longAgoSecond} href="#/find" />
    </Rows>
  );
}
