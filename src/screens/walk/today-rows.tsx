/** The walk on Today: under way, due, or only the way to it; and what the last one could not see. */
import type { ContainerState } from '../../ledger/state';
import { lookDue, notSeenSince, stillToSee, walkDue, walkUnderWay } from '../../ledger/walks';
import { FigureValue, unbroken } from '../../ui/figure-value';
import { Mark } from '../../ui/marks';
import { Row } from '../../ui/row';
import { calendarDayText } from '../amounts';
import { useShell } from '../shell';
import { isWalkNear, shareOfWalk } from './near';
import { walkWords as w } from './words';

function UnderWay() {
  const { state, now } = useShell();
  const walk = walkUnderWay(state.value, now.value);
  if (!walk) return null;
  const seen = new Set(walk.inspected.map(({ body }) => body.containerId)).size;
  const all = seen + stillToSee(state.value, walk.walkId, []).length;
  return (
    <Row
      mark={<Mark kind="due" share={0} />}
      title={w.today.title}
      second={w.today.underWay(seen, all)}
      href="#/walk"
    />
  );
}

/** @param near those that are due or near it, or the others */
export function WalkRows({ near }: { readonly near: boolean }) {
  const { state, now, zone } = useShell();
  const due = walkDue(state.value, now.value, zone);
  const underWay = walkUnderWay(state.value, now.value) !== null;
  if (!due || near !== (underWay || isWalkNear(due))) return null;
  const day = calendarDayText(due.due, now.value);
  const over = due.daysLeft < 0;
  return (
    <>
      {underWay ? (
        <UnderWay />
      ) : (
        <Row
          {...(near
            ? { mark: <Mark kind={over ? 'overdue' : 'due'} share={shareOfWalk(due)} /> }
            : { start: 'text' as const })}
          title={w.today.title}
          second={over ? w.today.since(day) : w.today.by(day)}
          href="#/walk"
          figure={
            near && !over ? (
              <FigureValue value={String(due.daysLeft)} unit={w.today.days(due.daysLeft)} />
            ) : undefined
          }
        />
      )}
    </>
  );
}

type Missed = { readonly container: ContainerState; readonly why: string };

/** A container that a walk could not see, with why, and by when it must be seen. */
export function MissedRow({ container, why }: Missed) {
  const { state, now, zone } = useShell();
  const { containerId, code } = container.body;
  const due = lookDue(state.value, container, now.value, zone);
  const day = due && calendarDayText(due.due, now.value);
  const over = due !== null && due.daysLeft < 0;
  const by = day === null ? w.today.look : over ? w.today.since(day) : w.today.lookBy(day);
  return (
    <Row
      mark={<Mark kind={over ? 'overdue' : 'due'} share={due ? shareOfWalk(due) : 0} />}
      title={w.today.notSeen(unbroken(code))}
      second={w.today.lookNow(why, by)}
      href={`#/walk/${containerId}`}
    />
  );
}

/** One that the last walk could not see. */
export function NotSeenRow({ containerId }: { readonly containerId: string }) {
  const { state } = useShell();
  const missed = notSeenSince(state.value).find((one) => one.containerId === containerId);
  const container = state.value.containers.get(containerId);
  return missed && container ? <MissedRow container={container} why={missed.why} /> : null;
}
