/** What a change of a list says in the history. */
import type { BodyOf } from '../../ledger/entries/body';
import type { State } from '../../ledger/state';
import { changedLists } from '../../ledger/workshop-lists';

/** "Start the leach: own question added: Is the radio on?" */
export function listChangeText(state: State, { change }: BodyOf<'list-changed'>): string {
  const list = changedLists(state).get(change.list)?.list;
  const title = list?.title ?? change.list;
  if (change.change === 'item-added') return `${title}: own question added: ${change.item.ask}`;
  if (change.change === 'item-dropped') return `${title}: own question dropped`;
  const ask = list?.items.find(({ id }) => id === change.item)?.ask ?? change.item;
  return `${title}: other range: ${ask}`;
}
