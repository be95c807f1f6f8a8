/** Today: the shelf, what is wrong or due, most pressing first, and the way to start a step. */
import { clearancesHolding } from '../../ledger/clearance';
import { fillPercent } from '../../ledger/fill';
import { type Flag, flags } from '../../ledger/flags';
import type { ContainerState, State } from '../../ledger/state';
import { formatNumber } from '../../quantities/format';
import { isDue, storageClock } from '../../rules/storage-clock';
import { minutesLeft } from '../../safety/clearance';
import { Button } from '../../ui/button';
import { FigureValue, unbroken } from '../../ui/figure-value';
import { Mark, type MarkKind, type MarkProps } from '../../ui/marks';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { Shelf, type ShelfTray } from '../../ui/shelf';
import { calendarDayText, contentsTitle, dayText, heldText, streamTitle } from '../amounts';
import { stepWords } from '../batches/words';
import { Frame, hour } from '../frame';
import { useShell } from '../shell';
import { vesselDrawing } from '../vessel-drawing';
import { flagWords, todayWords as w } from './words';

const markOf = (flag: Flag): MarkKind => {
  if (flag.pressing === 'now') return 'wrong';
  return flag.code === 'contents-doubtful' || flag.pressing === 'know' ? 'unknown' : 'wrong';
};

/** What a flag is about, by its name, and where it is looked at. */
function subjectOf(state: State, { about, code }: Flag): { readonly name: string; readonly href: string } {
  const container = about.containerId && state.containers.get(about.containerId)?.body;
  if (container) return { name: unbroken(container.code), href: `#/containers/${container.containerId}` };
  const stream = about.streamId && state.streams.get(about.streamId);
  if (stream) {
    const { batchId, streamId } = stream.body;
    return {
      name: streamTitle(state, streamId),
      href: batchId ? `#/batches/${batchId}` : `#/record/entry/${stream.entryId}`,
    };
  }
  const step = about.stepId && state.steps.get(about.stepId)?.body;
  if (step) {
    const batch = step.batchId === null ? undefined : state.batches.get(step.batchId)?.body;
    const name = stepWords[step.step] ?? step.step;
    return batch
      ? { name: `${name}, ${unbroken(batch.code)},`, href: `#/batches/${batch.batchId}` }
      : { name, href: '#/batches' };
  }
  if (about.entryId) return { name: '', href: `#/record/entry/${about.entryId}` };
  return { name: '', href: code === 'workshop-not-described' ? '#/record/workshop' : '#/record/rules' };
}

function FlagRow({ state, flag }: { readonly state: State; readonly flag: Flag }) {
  const { sign } = useShell();
  const { name, href } = subjectOf(state, flag);
  const { title, second } = flagWords(flag, name);
  const container = flag.about.containerId ? state.containers.get(flag.about.containerId) : undefined;
  const share =
    container && (flag.code === 'over-fill-limit' || flag.code === 'over-capacity')
      ? formatNumber(fillPercent(container), 0, sign.value)
      : undefined;
  return (
    <Row
      mark={<Mark kind={markOf(flag)} />}
      title={title}
      second={second}
      marked={markOf(flag) === 'wrong'}
      href={href}
      figure={share === undefined ? undefined : <FigureValue value={share} unit="%" />}
    />
  );
}

/** Containers whose storage time is counted, the shortest first. */
function StorageRows({ state }: { readonly state: State }) {
  const { now, zone } = useShell();
  const rule = state.rules.get('storage-days')?.body.stated;
  if (rule?.rule !== 'storage-days') return null;
  const clocks = [...state.containers.values()]
    .flatMap((c) =>
      c.firstWasteIn === null
        ? []
        : [{ c, clock: storageClock(c.firstWasteIn, Number(rule.value.value), now.value, zone) }],
    )
    .filter(({ clock }) => isDue(clock))
    .sort((a, b) => a.clock.daysLeft - b.clock.daysLeft);
  return (
    <>
      {clocks.map(({ c, clock }) => {
        const over = clock.daysLeft < 0;
        const day = calendarDayText(clock.lastDay, now.value);
        return (
          <Row
            key={c.body.containerId}
            mark={<Mark kind={over ? 'overdue' : 'due'} share={clock.shareLeft} />}
            title={w.mustLeave(unbroken(c.body.code))}
            second={over ? w.over(day) : w.by(day)}
            href={`#/containers/${c.body.containerId}`}
            figure={
              over ? undefined : <FigureValue value={String(clock.daysLeft)} unit={w.days(clock.daysLeft)} />
            }
          />
        );
      })}
    </>
  );
}

/** Clearances that still hold, and steps that run. */
function RunningRows({ state }: { readonly state: State }) {
  const { now } = useShell();
  const cleared = clearancesHolding(state, now.value);
  const running = [...state.steps.values()].filter(({ endedAt }) => endedAt === null);
  const batchCode = (id: string | null) =>
    id === null ? '' : unbroken(state.batches.get(id)?.body.code ?? '');
  return (
    <>
      {running.map(({ body, at }) => (
        <Row
          key={body.stepId}
          start="text"
          title={[stepWords[body.step] ?? body.step, batchCode(body.batchId)].filter(Boolean).join(', ')}
          second={w.running(`${dayText(at, now.value)} ${hour(at)}`)}
          href={body.batchId === null ? '#/batches' : `#/batches/${body.batchId}`}
        />
      ))}
      {cleared.map(({ entryId, body }) => (
        <Row
          key={entryId}
          mark={<Mark kind="clearance" />}
          title={[body.checklist.title, batchCode(body.batchId)].filter(Boolean).join(', ')}
          second={w.clearedUntil(hour(body.validUntil ?? now.value))}
          href={`#/clearance/${entryId}`}
          figure={
            <FigureValue value={String(minutesLeft(body.validUntil ?? now.value, now.value))} unit={w.min} />
          }
        />
      ))}
    </>
  );
}

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
  const containers = [...state.value.containers.values()];
  const flagged = new Set(all.flatMap(({ about }) => about.containerId ?? []));
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
          .map((f) => flagWords(f, c.body.code).title),
      )
      .filter(Boolean)
      .join(', ');
  const pressing = all.filter(({ pressing }) => pressing !== 'know');
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
          {pressing.map((flag, i) => (
            <FlagRow key={`${flag.code}${i}`} state={state.value} flag={flag} />
          ))}
          <RunningRows state={state.value} />
          <StorageRows state={state.value} />
          {know.map((flag) => (
            <FlagRow key={flag.code} state={state.value} flag={flag} />
          ))}
        </Rows>
      </Part>
    </Frame>
  );
}
