import { type Flag, flags } from '../../ledger/flags';
import type { ContainerState, State } from '../../ledger/state';
import { Button } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Mark, type MarkProps } from '../../ui/marks';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { Shelf, type ShelfTray } from '../../ui/shelf';
import { contentsTitle, heldText } from '../amounts';
import { ClockRows } from '../clocks/rows';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { HoodsDueRows } from '../stations/due';
import { vesselDrawing } from '../vessel-drawing';
import { NotSeenRows, WalkRows } from '../walk/today-rows';
import { FlagRow, markOf, RunningRows, StorageRows } from './rows';
import { flagWords, todayWords as w } from './words';

const shelfMark = (own: readonly Flag[]): MarkProps | undefined => {
  const [first] = own;
  return first && { kind: markOf(first) };
};

/** Vessels by the tray they stand in; those without a tray stand on the floor. */
function traysOf(
  state: State,
  all: readonly Flag[],
  name: (c: ContainerState) => string,
): readonly ShelfTray[] {
  const byTray = new Map<string, ContainerState[]>();
  for (const c of state.containers.values()) {
    const tray = c.body.tray ?? '';
    byTray.set(tray, [...(byTray.get(tray) ?? []), c]);
  }
  return [...byTray].map(([tray, containers]) => ({
    key: tray,
    word: tray,
    tray: tray !== '',
    vessels: containers.map((c) => ({
      key: c.body.containerId,
      drawing: vesselDrawing(state, c),
      name: name(c),
      href: `#/containers/${c.body.containerId}`,
      mark: shelfMark(all.filter(({ about }) => about.containerId === c.body.containerId)),
    })),
  }));
}

export function Today() {
  const { state, now, sign, corrupted } = useShell();
  const all = flags(state.value);
  const pressing = all.filter(({ pressing }) => pressing !== 'know');
  const containers = [...state.value.containers.values()];
  const flagged = new Set(pressing.flatMap(({ about }) => about.containerId ?? []));
  const fine = containers.length - flagged.size;
  const newest = [...state.value.batches.values()].at(-1)?.body;
  const second =
    containers.length === 0
      ? w.noContainers
      : [flagged.size > 0 ? w.look(flagged.size) : '', fine > 0 ? w.inOrder(fine) : '']
          .filter(Boolean)
          .join(' ');
  const nameOf = (c: ContainerState) =>
    [c.body.code, contentsTitle(state.value, c.body.containerId), heldText(c.holds, sign.value)]
      .concat(
        all
          .filter(({ about }) => about.containerId === c.body.containerId)
          .map((f) => flagWords(f, c.body.code, sign.value).title),
      )
      .filter(Boolean)
      .join(', ');
  const know = all.filter(({ pressing }) => pressing === 'know');
  return (
    <Frame
      place="today"
      title={w.title(now.value)}
      second={second}
      actions={
        newest ? (
          <Button
            look="primary"
            voice="serif"
            href={`#/batches/${newest.batchId}/step`}
            second={w.nextFor(unbroken(newest.code))}
          >
            {w.startStep}
          </Button>
        ) : (
          <Button look="primary" voice="serif" href="#/batches/new" second={w.firstBatchSecond}>
            {w.firstBatch}
          </Button>
        )
      }
    >
      {containers.length > 0 && <Shelf trays={traysOf(state.value, all, nameOf)} label={w.shelf} />}
      <Part rule width="edge">
        <Rows label={w.due}>
          {corrupted.value.length > 0 && (
            <Row
              mark={<Mark kind="wrong" />}
              title={w.damaged(corrupted.value.length)}
              second={w.damagedSecond}
              href="#/record"
              marked
            />
          )}
          <ClockRows pressing />
          {pressing.map((flag, i) => (
            <FlagRow key={`${flag.code}${i}`} state={state.value} flag={flag} />
          ))}
          <ClockRows pressing={false} />
          <NotSeenRows />
          <WalkRows near />
          <RunningRows state={state.value} />
          <StorageRows state={state.value} />
          <HoodsDueRows />
          <WalkRows near={false} />
          {know.map((flag) => (
            <FlagRow key={`${flag.code} ${flag.about.containerId ?? ''}`} state={state.value} flag={flag} />
          ))}
        </Rows>
      </Part>
    </Frame>
  );
}
