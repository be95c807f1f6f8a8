/** All checklists, with what this workshop has made its own in each. */
import { changedLists } from '../../ledger/workshop-lists';
import type { ChangedList } from '../../safety/own-lists';
import { Mark } from '../../ui/marks';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { listsWords as w } from './words';

/** "2 own, 1 loosened", or that it is as it came. */
function ownText({ list, lapsed }: ChangedList): string {
  const marked = (mark: 'tightened' | 'loosened'): number =>
    list.items.filter((item) => item.kind === 'reading' && item.range === mark).length;
  const said = [
    [list.items.filter(({ own }) => own).length, w.own],
    [marked('tightened'), w.tightened],
    [marked('loosened'), w.loosened],
    [lapsed.length, w.lapsed],
  ] as const;
  const own = said.filter(([n]) => n > 0).map(([n, words]) => words(n));
  return own.length === 0 ? w.asIs : own.join(', ');
}

const isLoosened = ({ list }: ChangedList): boolean =>
  list.items.some((item) => item.kind === 'reading' && item.range === 'loosened');

export function ListsScreen() {
  const { state } = useShell();
  return (
    <Frame place="record" title={w.title} second={w.second}>
      <Part rule width="edge">
        <Rows label={w.title}>
          {[...changedLists(state.value)].map(([id, changed]) => (
            <Row
              key={id}
              {...(isLoosened(changed)
                ? { mark: <Mark kind="wrong" /> }
                : changed.lapsed.length > 0
                  ? { mark: <Mark kind="unknown" /> }
                  : { start: 'text' as const })}
              title={changed.list.title}
              second={`${w.questions(changed.list.items.length)}, ${ownText(changed)}`}
              href={`#/record/lists/${id}`}
            />
          ))}
        </Rows>
      </Part>
    </Frame>
  );
}
