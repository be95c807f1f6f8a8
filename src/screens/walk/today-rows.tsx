/** The walk on Today: under way, due, or only the way to it; and what the last one could not see. */
import { notSeenSince, stillToSee, walkDue, walkUnderWay } from '../../ledger/walks';
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

export function NotSeenRows() {
  const { state } = useShell();
  return (
    <>
      {notSeenSince(state.value).map(({ containerId, why }) => (
        <Row
          key={containerId}
          mark={<Mark kind="wrong" />}
          title={w.today.notSeen(unbroken(state.value.containers.get(containerId)?.body.code ?? ''))}
          second={w.today.lookNow(why)}
          marked
          href={`#/walk/${containerId}`}
        />
      ))}
    </>
  );
}
