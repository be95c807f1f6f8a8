/** What would be lost with this phone: a row that leads to a backup. It presses more the more there is. */
import { useEffect, useState } from 'preact/hooks';
import { type Presses, type WouldBeLost, wouldBeLost } from '../../ledger/would-be-lost';
import { Mark, type MarkKind } from '../../ui/marks';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { useShell } from '../shell';
import { lostWords as w } from './words';

/** Asked anew when something was written; null until it is known, and where nobody can say. */
function useWouldBeLost(): WouldBeLost | null {
  const { backups, state, now } = useShell();
  const [lost, setLost] = useState<WouldBeLost | null>(null);
  // Not asked for what it says: it changes when something was written.
  const { value } = state;
  useEffect(() => {
    let wanted = true;
    void backups.since().then((since) => {
      if (wanted) setLost(since && wouldBeLost(since, now.peek()));
    });
    return () => {
      wanted = false;
    };
  }, [backups, value, now]);
  return lost;
}

const marks: Readonly<Record<Presses, MarkKind | undefined>> = {
  nothing: undefined,
  quiet: undefined,
  due: 'due',
  pressing: 'overdue',
};

const LostRow = ({ lost }: { readonly lost: WouldBeLost }) => {
  const mark = marks[lost.presses];
  return (
    <Row
      {...(mark
        ? { mark: <Mark kind={mark} share={lost.presses === 'due' ? 0.25 : undefined} /> }
        : { start: 'text' })}
      title={w.title(lost)}
      second={w.second(lost)}
      href="#/record/backup"
    />
  );
};

/** On the page where one is made: when the last was, and what is in none. */
export function LastBackup() {
  const lost = useWouldBeLost();
  return (
    lost && (
      <Part width="edge">
        <Rows>
          <Row start="text" title={w.title(lost)} second={w.second(lost)} />
        </Rows>
      </Part>
    )
  );
}

/** On the Record page, always; and the way back from a backup. */
export function BackupRows() {
  const lost = useWouldBeLost();
  return (
    <>
      {lost ? (
        <LostRow lost={lost} />
      ) : (
        <Row start="text" title={w.unknown} second={w.unknownSecond} href="#/record/backup" />
      )}
      <Row start="text" title={w.restore} second={w.restoreSecond} href="#/record/restore" />
    </>
  );
}

/** On Today, where it is due by now. The invented workshop is nobody's loss. */
export function BackupDueRow({ pressing }: { readonly pressing: boolean }) {
  const { record } = useShell();
  const lost = useWouldBeLost();
  if (record === 'demo' || !lost || lost.presses !== (pressing ? 'pressing' : 'due')) return null;
  return <LostRow lost={lost} />;
}
