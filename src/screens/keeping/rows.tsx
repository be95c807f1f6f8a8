/** Whether the record is likely to stay: rows of the record, of its own page, and of Today where something can be done. */
import { asksSilently } from '../../storage/persist';
import { Button } from '../../ui/button';
import { Mark } from '../../ui/marks';
import { Row } from '../../ui/row';
import { useShell } from '../shell';
import { FiguresInDoubtRow } from './gone-on-without';
import { isShort, isWorthKeeping, useInstalling, useKeeping, useRoom } from './use-keeping';
import { keepingWords as w } from './words';

/** What the browser has promised; asked upon a tap. */
export function KeepingRow() {
  const { keeping, ask } = useKeeping();
  return (
    <Row
      mark={keeping === 'kept' ? undefined : <Mark kind="unknown" />}
      title={w.keeping[keeping]}
      second={w.keepingSecond[keeping]}
      start="text"
      below={keeping === 'asked-in-vain' ? <Button onTap={ask}>{w.ask}</Button> : undefined}
    />
  );
}

/** How much room is taken and left, as far as the browser tells. */
export function SpaceRow() {
  const known = useRoom();
  if (!known) return null;
  return (
    <Row
      start="text"
      mark={isShort(known) ? <Mark kind="wrong" /> : undefined}
      marked={known.room === 'full'}
      title={w.space[known.room](known.left)}
      second={known.used === null ? w.spaceUnknown : w.spaceSecond(known.used)}
      href="#/record/keeping"
    />
  );
}

export function InstallRow() {
  const { installing } = useInstalling();
  const risky = installing === 'clears-unused';
  return (
    <Row
      start="text"
      mark={risky ? <Mark kind="wrong" /> : undefined}
      title={w.install[installing].title}
      second={w.install[installing].second}
      href={installing === 'installed' ? undefined : '#/record/keeping'}
    />
  );
}

/** On the page of the record, where there is something to tell about the marker itself. */
export function MarkerRow() {
  const { state } = useShell().marker();
  if (state !== 'blocked') return null;
  return <Row mark={<Mark kind="unknown" />} title={w.markerBlocked} second={w.markerBlockedSecond} />;
}

/** Nothing until something is worth keeping, and nothing of the invented workshop. */
export function TodayKeepingRows() {
  const { record, state } = useShell();
  const { keeping, asked, ask } = useKeeping();
  const { installing } = useInstalling();
  const known = useRoom();
  if (record === 'demo' || !isWorthKeeping(state.value)) return null;
  return (
    <>
      <FiguresInDoubtRow />
      {known && isShort(known) && (
        <Row
          mark={<Mark kind="wrong" />}
          marked={known.room === 'full'}
          title={w.space[known.room](known.left)}
          second={w.spaceToday}
          href="#/record/keeping"
        />
      )}
      {installing === 'clears-unused' && (
        <Row
          mark={<Mark kind="wrong" />}
          title={w.install[installing].title}
          second={w.install[installing].second}
          href="#/record/keeping"
        />
      )}
      {keeping === 'asked-in-vain' && !asked && !asksSilently() && (
        <Row
          mark={<Mark kind="unknown" />}
          title={w.keeping[keeping]}
          second={w.askSecond}
          below={<Button onTap={ask}>{w.ask}</Button>}
        />
      )}
    </>
  );
}
