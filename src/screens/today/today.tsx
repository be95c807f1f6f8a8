import { containersCodedTwice } from '../../ledger/codes-twice';
import { isDoubted, lifeOf } from '../../ledger/container-life';
import { daysPressing, type Pressed, pressing, type Rank, rankOf } from '../../ledger/pressing';
import type { ContainerState, State } from '../../ledger/state';
import { withoutLimit } from '../../ledger/without-limit';
import type { DecimalSign } from '../../quantities/format';
import { Button } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Mark, type MarkProps } from '../../ui/marks';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { Shelf, type ShelfTray } from '../../ui/shelf';
import { heldText } from '../amounts';
import { BackupDueRow } from '../backup/rows';
import { ClockRows } from '../clocks/rows';
import { contentsText } from '../containers/contents-text';
import { lifeStates } from '../containers/life-words';
import { AmountRow, DueRow, markOfDue, WithoutLimitRows } from '../due/rows';
import { dueWords } from '../due/words';
import { Frame } from '../frame';
import { TodayKeepingRows } from '../keeping/rows';
import { NobodyHoldsRow } from '../record/holder';
import { useShell } from '../shell';
import { HoodsDueRows } from '../stations/due';
import { vesselDrawing, vesselOutline } from '../vessel-drawing';
import { NotSeenRow, WalkRows } from '../walk/today-rows';
import { ClockBehindRow } from './clock-behind-row';
import { FlagRow, markOf, RunningRows } from './rows';
import { useAllTold } from './use-all-told';
import { flagWords, todayWords as w } from './words';

/** What is wrong with a container comes before what is due of it. */
function shelfMark(
  all: readonly Pressed[],
  containerId: string,
  codedTwice: ReadonlySet<string>,
): MarkProps | undefined {
  const own = all.filter((one) => aboutOf(one) === containerId);
  const wrong = own.find((one) => one.what === 'flag');
  if (wrong) return { kind: markOf(wrong.flag) };
  if (codedTwice.has(containerId)) return { kind: 'wrong' };
  const due = own.find((one) => one.what === 'due')?.due;
  return due && { kind: markOfDue(due), share: due.shareLeft };
}

/** Where it is in its life, where nothing presses more. */
function lifeMark(state: State, container: ContainerState): MarkProps | undefined {
  const { mark } = lifeStates[lifeOf(state, container).is];
  return mark && { kind: mark };
}

const aboutOf = (one: Pressed): string | null | undefined =>
  one.what === 'flag' ? one.flag.about.containerId : one.what === 'due' ? one.due.containerId : null;

/** What is in it and its state, as far as that is more than its contents say. */
function lifeNamed(state: State, container: ContainerState, sign: DecimalSign): readonly string[] {
  const { is } = lifeOf(state, container);
  const { word, mark } = lifeStates[is];
  const held = isDoubted(state, container) ? '' : heldText(container.holds, sign);
  return [contentsText(state, container), held, mark && is !== 'not-determined' ? word : ''];
}

/** About twice as many as a phone shows at once. */
const firstOnShelf = 8;

/** Vessels by the tray they stand in; those without a tray stand on the floor. @param most so many of them, from the left */
function traysOf(
  state: State,
  mark: (c: ContainerState) => MarkProps | undefined,
  drawing: typeof vesselOutline,
  name: (c: ContainerState) => string,
  most: number,
): readonly ShelfTray[] {
  const byTray = new Map<string, ContainerState[]>();
  for (const c of state.containers.values()) {
    if (c.goneSince !== null) continue;
    const tray = c.body.tray ?? '';
    byTray.set(tray, [...(byTray.get(tray) ?? []), c]);
  }
  let left = most;
  const drawn = [...byTray].flatMap(([tray, containers]): [string, ContainerState[]][] => {
    const some = containers.slice(0, left);
    left -= some.length;
    return some.length === 0 ? [] : [[tray, some]];
  });
  return drawn.map(([tray, containers]) => ({
    key: tray,
    word: tray,
    tray: tray !== '',
    vessels: containers.map((c) => ({
      key: c.body.containerId,
      drawing: drawing(state, c),
      name: name(c),
      href: `#/containers/${c.body.containerId}`,
      mark: mark(c),
    })),
  }));
}

/** One thing that is wrong or due; a walk and what it could not see have rows of their own. */
function PressedRow({ state, pressed }: { readonly state: State; readonly pressed: Pressed }) {
  if (pressed.what === 'flag') return <FlagRow state={state} flag={pressed.flag} />;
  if (pressed.what === 'amount') return <AmountRow amount={pressed.amount} />;
  const { due } = pressed;
  if (due.kind === 'walk') return <WalkRows near />;
  return due.kind === 'look' && due.containerId !== null ? (
    <NotSeenRow containerId={due.containerId} />
  ) : (
    <DueRow due={due} />
  );
}

const keyOf = (pressed: Pressed, i: number): string =>
  pressed.what === 'due'
    ? pressed.due.id
    : pressed.what === 'flag'
      ? `${pressed.flag.code}${i}`
      : pressed.amount.of;

/** Containers that something is wrong with, or due of; so is a code that two have. */
const concerned = (all: readonly Pressed[], codedTwice: ReadonlySet<string>): ReadonlySet<string> =>
  new Set([...all.flatMap((one) => (rankOf(one) === 'know' ? [] : (aboutOf(one) ?? []))), ...codedTwice]);

/** Containers that something is told of which presses nobody: they are not called in order all the same. */
const noted = (all: readonly Pressed[]): ReadonlySet<string> =>
  new Set(all.flatMap((one) => (rankOf(one) === 'know' ? (aboutOf(one) ?? []) : [])));

export function Today() {
  const { state, now, zone, sign, corrupted, trouble } = useShell();
  const told = useAllTold();
  const all = (told ? pressing : daysPressing)(state.value, now.value, zone);
  const flags = all.flatMap((one) => (one.what === 'flag' ? [one.flag] : []));
  const here = [...state.value.containers.values()].filter(({ goneSince }) => goneSince === null);
  const codedTwice = told ? containersCodedTwice(state.value) : new Set<string>();
  const look = concerned(all, codedTwice);
  const toLookAt = here.filter(({ body }) => look.has(body.containerId)).length;
  const others = told ? here.filter(({ body }) => !look.has(body.containerId)) : [];
  const endless = new Set(withoutLimit(state.value, now.value, zone).map(({ containerId }) => containerId));
  // Nothing presses of it, and all the same nobody knows what is in it, or how long it may stand.
  const isUnknown = (c: ContainerState): boolean =>
    endless.has(c.body.containerId) || isDoubted(state.value, c);
  const unknown = others.filter(isUnknown).length;
  const remarks = noted(all);
  const fine = others.filter((c) => !isUnknown(c) && !remarks.has(c.body.containerId)).length;
  const newest = [...state.value.batches.values()].at(-1)?.body;
  const second =
    here.length === 0
      ? w.noContainers
      : !told
        ? w.looking
        : [
            toLookAt > 0 ? w.look(toLookAt) : '',
            unknown > 0 ? w.notDetermined(unknown) : '',
            fine > 0 ? w.inOrder(fine) : '',
          ]
            .filter(Boolean)
            .join(' ');
  const markFor = (c: ContainerState) =>
    shelfMark(all, c.body.containerId, codedTwice) ?? lifeMark(state.value, c);
  const nameOf = (c: ContainerState) =>
    [c.body.code, ...lifeNamed(state.value, c, sign.value)]
      .concat(
        flags
          .filter(({ about }) => about.containerId === c.body.containerId)
          .map((f) => flagWords(f, c.body.code, sign.value).title),
      )
      .filter(Boolean)
      .join(', ');
  const rows = (...ranks: readonly Rank[]) =>
    all.flatMap((pressed, i) =>
      ranks.includes(rankOf(pressed))
        ? [<PressedRow key={keyOf(pressed, i)} state={state.value} pressed={pressed} />]
        : [],
    );
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
      {here.length > 0 && (
        <Shelf
          trays={
            told
              ? traysOf(state.value, markFor, vesselDrawing, nameOf, Number.POSITIVE_INFINITY)
              : traysOf(state.value, markFor, vesselOutline, nameOf, firstOnShelf)
          }
          label={w.shelf}
        />
      )}
      <Part rule width="edge">
        <Rows label={w.due}>
          {corrupted.value.length > 0 && trouble.value.length === 0 && (
            <Row
              mark={<Mark kind="wrong" />}
              title={w.damaged(corrupted.value.length)}
              second={w.damagedSecond}
              href="#/record"
              marked
            />
          )}
          <ClockBehindRow />
          <NobodyHoldsRow />
          {!told && <Row start="text" title={w.lookingRow} second={w.lookingRowSecond} />}
          <ClockRows pressing />
          {rows('hurt', 'over', 'today', 'wrong')}
          <BackupDueRow pressing />
          <ClockRows pressing={false} />
          {rows('near')}
          <BackupDueRow pressing={false} />
          <RunningRows state={state.value} />
          <HoodsDueRows />
          <WalkRows near={false} />
          <WithoutLimitRows />
          {rows('know')}
          <TodayKeepingRows />
          <Row start="text" title={dueWords.title} second={dueWords.rowSecond} href="#/due" />
        </Rows>
      </Part>
    </Frame>
  );
}
