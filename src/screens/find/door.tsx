/** The way to finding something, above a list, and behind one where the list does not hold all. */
import { useEffect, useState } from 'preact/hooks';
import type { FoundRow } from '../../ledger/found-rows';
import { putAwayRows } from '../../ledger/put-away';
import { idle } from '../../ui/idle';
import { Row, Rows } from '../../ui/row';
import { countText, dayText } from '../amounts';
import { useShell } from '../shell';
import { findWords as w } from './words';

export const FindDoor = () => (
  <Rows>
    <Row title={w.title} second={w.second} href="#/find" />
  </Rows>
);

export function LongAgo({ is }: Pick<FoundRow, 'is'>) {
  const { state } = useShell();
  const [rested, setRested] = useState(false);
  // It takes all that is put away, and stands below the list.
  useEffect(() => idle(() => setRested(true)), []);
  if (!rested) return null;
  const count = putAwayRows(state.value).filter((row) => row.is === is).length;
  if (count === 0) return null;
  return (
    <Rows>
      <Row title={w.longAgo(countText(count))} second={w.longAgoSecond} href="#/find" />
    </Rows>
  );
}

/** Behind a list of what happened, which goes no further back than the entries that are at hand. */
export function Before({ href = '#/record/history' }: { readonly href?: string }) {
  const { state, now } = useShell();
  const { earlier } = state.value;
  if (earlier === null) return null;
  return (
    <Rows>
      <Row title={w.before(dayText(earlier.from, now.value))} second={w.beforeSecond} href={href} />
    </Rows>
  );
}
